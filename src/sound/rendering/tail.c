#include "sound/rendering/tail.h"
#include "sound/chance.h"
#include "sound/rendering/fourier.h"
#include "support/memory.h"
#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;
static const struct TailRules {
    double length;      /* of the reverberation time */
    double corner;      /* Hz: above it sound dies away faster, by air and upholstery (common practice) */
    double high_share;  /* of the reverberation time, there */
    double fade;        /* seconds over which single reflections give way to it */
} rules = {1.2, 4000, 0.6, 0.03};
enum { DIRECTIONS = 16 };

/* Noise from one side. */
static void fill_noise(float *out, size_t length, const SoundTail *tail, double offset, double level, uint64_t seed)
{
    Chance chance = {seed};
    double share = 1 - exp(-2 * pi * rules.corner / SOUND_RATE), low = 0;
    double slow = 6.907755278982137 / tail->seconds, fast = slow / rules.high_share; /* ln 1000: 60 dB */
    for (size_t i = 0; i < length; i++) {
        double seconds = (double)i / SOUND_RATE + offset, since = seconds - tail->start;
        double noise = chance_normal(&chance) * level;
        low += share * (noise - low);
        double fade = since > 0 ? 1 - exp(-since / rules.fade) : 0;
        out[i] = (float)(fade * (low * exp(-slow * seconds) + (noise - low) * exp(-fast * seconds)));
    }
}

/* Even over the sphere: a spiral of the golden angle. */
static void direction(int index, double at[3])
{
    double up = 1 - (2 * index + 1.0) / DIRECTIONS, around = index * pi * (3 - sqrt(5)), flat = sqrt(1 - up * up);
    at[0] = flat * cos(around);
    at[1] = flat * sin(around);
    at[2] = up;
}

typedef struct Noise { /* of one direction after the other */
    const SoundTail *tail;
    double offset;
    size_t length;
    fftwf_complex *spectrum;
} Noise;

/* The responses of the head are much shorter than the noise; both are multiplied as spectra. */
static void add_direction(Ears *ears, Fourier *fourier, int index, const Noise *noise, fftwf_complex *sums[2])
{
    const SoundTail *tail = noise->tail;
    double at[3], level = sqrt(2 * 6.907755278982137 / tail->seconds * tail->energy / SOUND_RATE / DIRECTIONS);
    direction(index, at);
    memset(fourier->signal, 0, fourier->size * sizeof *fourier->signal);
    fill_noise(fourier->signal, noise->length, tail, noise->offset, level, (uint64_t)index + 1);
    fourier_there(fourier);
    memcpy(noise->spectrum, fourier->spectrum, fourier->bins * sizeof *noise->spectrum);
    ears_turn(ears, at[0], at[1], at[2]);
    for (int ear = 0; ear < 2; ear++) {
        memset(fourier->signal, 0, fourier->size * sizeof *fourier->signal);
        memcpy(fourier->signal, ear ? ears->right : ears->left, (size_t)ears->taps * sizeof *fourier->signal);
        fourier_there(fourier);
        fourier_add_product(sums[ear], noise->spectrum, fourier->spectrum, fourier->bins);
    }
}

spz_status tail_make(Ears *ears, const SoundTail *tail, double offset, float *out[2], size_t *length)
{
    Fourier fourier;
    *length = (size_t)(rules.length * tail->seconds * SOUND_RATE) + (size_t)ears->taps;
    bool room = fourier_open(&fourier, fourier_size(*length + (size_t)ears->taps));
    fftwf_complex *spectra = room ? memory_zeroed(3 * fourier.bins, sizeof *spectra) : NULL;
    out[0] = memory_zeroed(*length, sizeof *out[0]);
    out[1] = memory_zeroed(*length, sizeof *out[1]);
    room = spectra && out[0] && out[1];
    if (room) {
        fftwf_complex *sums[2] = {spectra + fourier.bins, spectra + 2 * fourier.bins};
        const Noise noise = {tail, offset, *length - (size_t)ears->taps, spectra};
        for (int i = 0; i < DIRECTIONS; i++)
            add_direction(ears, &fourier, i, &noise, sums);
        for (int ear = 0; ear < 2; ear++) {
            memcpy(fourier.spectrum, sums[ear], fourier.bins * sizeof *fourier.spectrum);
            fourier_back(&fourier);
            memcpy(out[ear], fourier.signal, *length * sizeof *out[ear]);
        }
    }
    memory_free(spectra);
    fourier_close(&fourier);
    return room ? SPZ_OK : SPZ_NO_MEMORY;
}

spz_status tail_add(const float *signal, size_t signal_frames, float *const response[2], size_t length, float *out, size_t frames)
{
    Fourier fourier;
    size_t size = fourier_size(4 * length), block = size - length + 1;
    bool room = fourier_open(&fourier, size);
    fftwf_complex *responses = room ? memory_zeroed(3 * fourier.bins, sizeof *responses) : NULL;
    for (int ear = 0; responses && ear < 2; ear++) {
        memset(fourier.signal, 0, size * sizeof *fourier.signal);
        memcpy(fourier.signal, response[ear], length * sizeof *fourier.signal);
        fourier_there(&fourier);
        memcpy(responses + (size_t)(ear + 1) * fourier.bins, fourier.spectrum, fourier.bins * sizeof *responses);
    }
    for (size_t from = 0; responses && from < signal_frames; from += block) {
        size_t now = signal_frames - from < block ? signal_frames - from : block;
        memset(fourier.signal, 0, size * sizeof *fourier.signal);
        memcpy(fourier.signal, signal + from, now * sizeof *fourier.signal);
        fourier_there(&fourier);
        memcpy(responses, fourier.spectrum, fourier.bins * sizeof *responses);
        for (size_t ear = 0; ear < 2; ear++) {
            memset(fourier.spectrum, 0, fourier.bins * sizeof *fourier.spectrum);
            fourier_add_product(fourier.spectrum, responses, responses + (ear + 1) * fourier.bins, fourier.bins);
            fourier_back(&fourier);
            for (size_t i = 0; i < size && from + i < frames; i++)
                out[2 * (from + i) + ear] += fourier.signal[i];
        }
    }
    memory_free(responses);
    fourier_close(&fourier);
    return responses ? SPZ_OK : SPZ_NO_MEMORY;
}
