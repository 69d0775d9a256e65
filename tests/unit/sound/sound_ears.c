/* What comes to the ears, against formulas and against the measured data themselves. */
#include "support/suite.h"
#ifdef SPEZZATO_SOUND
#include "seating/stage/acoustics.h"
#include "sound/engine.h"
#include "sound/rendering/ears.h"
#include <math.h>
#include <mysofa.h>

enum { FRAMES = 1024 };
static const double turn = 3.14159265358979323846;
static const double celsius = 20;

typedef struct Heads {
    float left[FRAMES], right[FRAMES];
} Heads;

static bool ears_here(Ears *ears)
{
    Performance performance = {.ears = engine_ears()};
    if (!performance.ears) {
        skipped("the measured head of libmysofa is not at hand");
        return false;
    }
    CU_ASSERT_EQUAL_FATAL(ears_open(&performance, NULL, ears), SPZ_OK);
    return true;
}

/* A click from `degrees` to the left, 5 ms away. */
static Heads click(Ears *ears, double degrees, double high)
{
    Heads heads = {{0}, {0}};
    SoundPath path = {.delay = 0.005, .gain = 1, .high = high, .front = cos(degrees * turn / 180), .left = sin(degrees * turn / 180)};
    ears_add(ears, &path, 0, heads.left, heads.right, FRAMES);
    return heads;
}

/* Phase of a response at a frequency. */
static double phase(const float *response, double hertz)
{
    double real = 0, imaginary = 0;
    for (int i = 0; i < FRAMES; i++) {
        real += response[i] * cos(2 * turn * hertz * i / SOUND_RATE);
        imaginary -= response[i] * sin(2 * turn * hertz * i / SOUND_RATE);
    }
    return atan2(imaginary, real);
}

/* Seconds by which the right ear is late, from the phase at a frequency (at most half a period). */
static double phase_delay(const Heads *heads, double hertz)
{
    double difference = phase(heads->left, hertz) - phase(heads->right, hertz);
    return remainder(difference, 2 * turn) / (2 * turn * hertz);
}

/* When a response has first reached a share of its peak, between two frames. */
static double onset(const float *response, double share)
{
    double peak = 0;
    int i = 0;
    for (int k = 0; k < FRAMES; k++)
        peak = fmax(peak, fabs(response[k]));
    while (i < FRAMES - 1 && fabs(response[i]) < share * peak)
        i++;
    double before = i ? fabs(response[i - 1]) : 0, now = fabs(response[i]);
    return (i - (now - share * peak) / (now - before)) / SOUND_RATE;
}

static double energy(const float *response)
{
    double sum = 0;
    for (int i = 0; i < FRAMES; i++)
        sum += (double)response[i] * response[i];
    return sum;
}

/* High frequencies, and so beginnings, go round the head: (a / c)(angle + sin angle), Woodworth and Schlosberg 1954. */
static void beginnings_come_to_the_ears_as_round_a_sphere(void)
{
    Ears ears;
    if (!ears_here(&ears))
        return;
    for (int degrees = 15; degrees <= 75; degrees += 15) {
        Heads heads = click(&ears, degrees, 1);
        double late = onset(heads.right, 0.2) - onset(heads.left, 0.2), expected = acoustics_ear_delay(degrees * turn / 180, celsius);
        CU_ASSERT_DOUBLE_EQUAL(late / expected, 1, 0.1);
    }
    ears_close(&ears);
}

/* Low frequencies are delayed by more: 3 (a / c) sin angle (Kuhn, JASA 62 (1977) 157). */
static void low_tones_are_delayed_as_kuhn_found(void)
{
    Ears ears;
    if (!ears_here(&ears))
        return;
    for (int degrees = 15; degrees <= 75; degrees += 15) {
        Heads heads = click(&ears, degrees, 1);
        double expected = 3 * acoustic_figures.head_radius / acoustics_sound_speed(celsius) * sin(degrees * turn / 180);
        for (int hertz = 300; hertz <= 600; hertz += 100)
            CU_ASSERT_DOUBLE_EQUAL(phase_delay(&heads, hertz) / expected, 1, 0.1);
    }
    ears_close(&ears);
}

static void straight_ahead_both_ears_hear_the_same_moment(void)
{
    Ears ears;
    if (!ears_here(&ears))
        return;
    Heads heads = click(&ears, 0, 1);
    CU_ASSERT_DOUBLE_EQUAL(phase_delay(&heads, 500), 0, 20e-6);
    CU_ASSERT_DOUBLE_EQUAL(10 * log10(energy(heads.left) / energy(heads.right)), 0, 1);
    ears_close(&ears);
}

/* The file itself, by its own table: the measurement that lies nearest to a direction. */
static double measured_difference(double degrees)
{
    int cause;
    struct MYSOFA_HRTF *set = mysofa_load(engine_ears(), &cause);
    double nearest = 1e9, decibels = 0;
    CU_ASSERT_PTR_NOT_NULL_FATAL(set);
    for (unsigned m = 0; m < set->M; m++) {
        const float *at = set->SourcePosition.values + (size_t)m * set->C; /* azimuth, elevation, metres */
        double off = fabs(remainder(at[0] - degrees, 360)) + fabs((double)at[1]), sums[2] = {0, 0};
        if (off >= nearest)
            continue;
        nearest = off;
        for (unsigned ear = 0; ear < 2; ear++)
            for (unsigned n = 0; n < set->N; n++) {
                double value = set->DataIR.values[((size_t)m * set->R + ear) * set->N + n];
                sums[ear] += value * value;
            }
        decibels = 10 * log10(sums[0] / sums[1]);
    }
    mysofa_free(set);
    CU_ASSERT(nearest < 1);
    return decibels;
}

/* Seconds between the ears in the measurement that lies nearest to a direction, from its phase. */
static double measured_delay(const struct MYSOFA_HRTF *set, double degrees, double hertz)
{
    const double rate = set->DataSamplingRate.values[0];
    unsigned nearest = 0;
    double least = 1e9, phases[2];
    for (unsigned m = 0; m < set->M; m++) {
        const float *at = set->SourcePosition.values + (size_t)m * set->C;
        double off = fabs(remainder(at[0] - degrees, 360)) + fabs((double)at[1]);
        nearest = off < least ? m : nearest;
        least = fmin(least, off);
    }
    CU_ASSERT(least < 1);
    for (unsigned ear = 0; ear < 2; ear++) {
        const float *response = set->DataIR.values + ((size_t)nearest * set->R + ear) * set->N;
        double real = 0, imaginary = 0;
        for (unsigned n = 0; n < set->N; n++) {
            real += response[n] * cos(2 * turn * hertz * n / rate);
            imaginary -= response[n] * sin(2 * turn * hertz * n / rate);
        }
        phases[ear] = atan2(imaginary, real);
    }
    return remainder(phases[0] - phases[1], 2 * turn) / (2 * turn * hertz);
}

/* The lowest tones too are delayed as in the measured data. These have 10 to 20 % more than Kuhn's formula from 150 to 240 Hz, at all angles alike, and agree with it within
 * about 10 % below and above: that is how this head was measured, not how it is rendered. */
static void the_lowest_tones_are_delayed_as_they_were_measured(void)
{
    Ears ears;
    int cause;
    if (!ears_here(&ears))
        return;
    struct MYSOFA_HRTF *set = mysofa_load(engine_ears(), &cause);
    CU_ASSERT_PTR_NOT_NULL_FATAL(set);
    for (int degrees = 15; degrees <= 75; degrees += 15) {
        Heads heads = click(&ears, degrees, 1);
        double kuhn = 3 * acoustic_figures.head_radius / acoustics_sound_speed(celsius) * sin(degrees * turn / 180);
        for (int hertz = 120; hertz <= 300; hertz += 30)
            CU_ASSERT_DOUBLE_EQUAL(phase_delay(&heads, hertz) / measured_delay(set, degrees, hertz), 1, 0.03);
        CU_ASSERT(measured_delay(set, degrees, 180) / kuhn > 1.1 && measured_delay(set, degrees, 180) / kuhn < 1.25);
        CU_ASSERT_DOUBLE_EQUAL(measured_delay(set, degrees, 120) / kuhn, 1, 0.12);
        CU_ASSERT_DOUBLE_EQUAL(measured_delay(set, degrees, 270) / kuhn, 1, 0.1);
    }
    mysofa_free(set);
    ears_close(&ears);
}

static void levels_at_the_ears_are_those_that_were_measured(void)
{
    Ears ears;
    if (!ears_here(&ears))
        return;
    for (int degrees = -60; degrees <= 60; degrees += 15) {
        Heads heads = click(&ears, degrees, 1);
        double ours = 10 * log10(energy(heads.left) / energy(heads.right));
        CU_ASSERT_DOUBLE_EQUAL(ours, measured_difference(degrees), 0.5);
    }
    ears_close(&ears);
}
#else
static void ears_need_the_library_of_sound(void)
{
    skipped("the library of sound is not built here");
}
#endif

static const struct Statement statements[] = {
#ifdef SPEZZATO_SOUND
    STATEMENT(beginnings_come_to_the_ears_as_round_a_sphere),
    STATEMENT(low_tones_are_delayed_as_kuhn_found),
    STATEMENT(the_lowest_tones_are_delayed_as_they_were_measured),
    STATEMENT(straight_ahead_both_ears_hear_the_same_moment),
    STATEMENT(levels_at_the_ears_are_those_that_were_measured),
#else
    STATEMENT(ears_need_the_library_of_sound),
#endif
};
void suite_sound_ears(void) { suite_of("sound_ears", statements, COUNT(statements)); }
