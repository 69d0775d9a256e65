#include "sound/rendering/loudness.h"
#include <ebur128.h>
#include <math.h>

static const double highest_peak = -1; /* dBTP: EBU R 128 */

/* True peaks are measured only where somebody asks: they cost most. */
static bool measure(const float *frames, size_t count, double *loudness, double *peak)
{
    double sides[2] = {0, 0};
    ebur128_state *meter = ebur128_init(2, SOUND_RATE, peak ? EBUR128_MODE_I | EBUR128_MODE_TRUE_PEAK : EBUR128_MODE_I);
    *loudness = -INFINITY;
    if (!meter)
        return false;
    bool measured = ebur128_add_frames_float(meter, frames, count) == EBUR128_SUCCESS && ebur128_loudness_global(meter, loudness) == EBUR128_SUCCESS;
    if (peak) {
        measured = measured && ebur128_true_peak(meter, 0, &sides[0]) == EBUR128_SUCCESS && ebur128_true_peak(meter, 1, &sides[1]) == EBUR128_SUCCESS;
        *peak = 20 * log10(fmax(sides[0], sides[1]));
    }
    ebur128_destroy(&meter);
    return measured;
}

bool loudness_measure(const float *frames, size_t count, double *loudness, double *peak)
{
    *peak = -INFINITY;
    return measure(frames, count, loudness, peak);
}

static void raise(float *frames, size_t count, double decibels)
{
    float factor = (float)pow(10, decibels / 20);
    for (size_t i = 0; i < 2 * count; i++)
        frames[i] *= factor;
}

/* Where a peak would pass the highest, all versions stay as much softer. */
static spz_status match_once(Heard *heard, double wanted, bool peaks_known)
{
    double over = 0, step[SOUND_VERSIONS];
    for (int i = 0; i < SOUND_VERSIONS; i++) {
        if (!measure(heard->frames[i], heard->count, &heard->loudness[i], peaks_known ? NULL : &heard->peak[i]))
            return SPZ_NO_MEMORY;
        step[i] = isfinite(heard->loudness[i]) ? wanted - heard->loudness[i] : 0;
        over = fmax(over, heard->peak[i] + step[i] - highest_peak);
    }
    for (int i = 0; i < SOUND_VERSIONS; i++) {
        step[i] -= over;
        heard->gain[i] += step[i];
        heard->loudness[i] += step[i];
        heard->peak[i] += step[i];
        raise(heard->frames[i], heard->count, step[i]);
    }
    return SPZ_OK;
}

/* Twice: what lies under the gate of the measurement (-70 LUFS) depends on the level itself. */
spz_status loudness_match(Heard *heard, double wanted)
{
    spz_status status = match_once(heard, wanted, false);
    return status ? status : match_once(heard, wanted, true);
}
