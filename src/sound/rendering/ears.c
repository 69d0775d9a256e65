#include "sound/rendering/ears.h"
#include "support/memory.h"
#include "support/message.h"
#include <math.h>
#include <mysofa.h>
#include <string.h>

enum {
    SHELF_TAPS = 64, /* what the corner of the directivity needs to die away */
    SINC_TAPS = 24,  /* to either side of a delay between two samples */
    MOST_TAPS = 4096
};
static const double pi = 3.14159265358979323846;
static const double corner = 1200;     /* Hz: above it a violin is a beam (Meyer, Acoustics and the Performance of Music; from memory) */
static const double speakers_at = 30;  /* degrees */

spz_status ears_open(const Performance *performance, const spz_sink *sink, Ears *out)
{
    int cause = 0;
    *out = (Ears){.taps = 1};
    if (!performance->loudspeakers) {
        out->set = mysofa_open(performance->ears, SOUND_RATE, &out->taps, &cause);
        if (!out->set || out->taps < 1 || out->taps > MOST_TAPS) {
            message_send(sink, &(spz_message){.severity = SPZ_ERROR, .file = performance->ears}, "it can't be used as measured responses of a head (SOFA, error %d)", cause);
            return SPZ_CANNOT_OPEN;
        }
    }
    out->left = memory_zeroed((size_t)out->taps + SHELF_TAPS, sizeof *out->left);
    out->right = memory_zeroed((size_t)out->taps + SHELF_TAPS, sizeof *out->right);
    return out->left && out->right ? SPZ_OK : SPZ_NO_MEMORY;
}

void ears_close(Ears *ears)
{
    if (ears->set)
        mysofa_close(ears->set);
    memory_free(ears->left);
    memory_free(ears->right);
    *ears = (Ears){0};
}

static void turn_speakers(Ears *ears, double front, double left)
{
    double most = speakers_at * pi / 180, angle = atan2(left, fabs(front));
    double ratio = tan(fmax(-most, fmin(most, angle))) / tan(most);
    double both = sqrt(2 + 2 * ratio * ratio);
    ears->left[0] = (float)((1 + ratio) / both);
    ears->right[0] = (float)((1 - ratio) / both);
    ears->delays[0] = ears->delays[1] = 0;
}

void ears_turn(Ears *ears, double front, double left, double up)
{
    float delays[2];
    memset(ears->left, 0, ((size_t)ears->taps + SHELF_TAPS) * sizeof *ears->left);
    memset(ears->right, 0, ((size_t)ears->taps + SHELF_TAPS) * sizeof *ears->right);
    if (!ears->set) {
        turn_speakers(ears, front, left);
        return;
    }
    mysofa_getfilter_float(ears->set, (float)front, (float)left, (float)up, ears->left, ears->right, &delays[0], &delays[1]);
    ears->delays[0] = delays[0];
    ears->delays[1] = delays[1];
}

/* What lies above the corner times `high`: one pole splits the response in two. */
static void shelve(float *response, size_t taps, double high)
{
    double share = 1 - exp(-2 * pi * corner / SOUND_RATE), low = 0;
    for (size_t i = 0; i < taps; i++) {
        low += share * (response[i] - low);
        response[i] = (float)(low + high * (response[i] - low));
    }
}

/* Between two samples: a windowed sinc, which keeps interaural delays exact. */
static void add_delayed(const float *response, size_t taps, double frames, double gain, float *out, size_t length)
{
    double whole = floor(frames), part = frames - whole;
    for (int k = -SINC_TAPS / 2 + 1; k <= SINC_TAPS / 2; k++) {
        double x = k - part, window = 0.5 + 0.5 * cos(pi * x / (SINC_TAPS / 2.0 + 1));
        double weight = gain * window * (fabs(x) < 1e-9 ? 1 : sin(pi * x) / (pi * x));
        long start = (long)whole + k;
        for (size_t i = 0; i < taps; i++)
            if (start + (long)i >= 0 && (size_t)(start + (long)i) < length)
                out[start + (long)i] += (float)(weight * response[i]);
    }
}

void ears_add(Ears *ears, const SoundPath *path, double offset, float *left, float *right, size_t length)
{
    size_t taps = (size_t)ears->taps + SHELF_TAPS;
    double frames = (path->delay - offset) * SOUND_RATE + SINC_TAPS;
    if (path->gain == 0)
        return;
    ears_turn(ears, path->front, path->left, path->up);
    shelve(ears->left, taps, path->high);
    shelve(ears->right, taps, path->high);
    add_delayed(ears->left, taps, frames + ears->delays[0] * SOUND_RATE, path->gain, left, length);
    add_delayed(ears->right, taps, frames + ears->delays[1] * SOUND_RATE, path->gain, right, length);
}

size_t ears_length(const Ears *ears, double reach)
{
    const double ear_delay = 0.002;
    return (size_t)((reach + ear_delay) * SOUND_RATE) + (size_t)ears->taps + SHELF_TAPS + 2 * SINC_TAPS;
}
