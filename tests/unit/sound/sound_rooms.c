/* Whole passages and whole rooms, measured as standards ask. */
#include "support/suite.h"
#ifdef SPEZZATO_SOUND
#include "sound/engine.h"
#include "sound/hall.h"
#include "sound/rendering/ears.h"
#include "sound/rendering/fourier.h"
#include "sound/rendering/loudness.h"
#include "sound/rendering/tail.h"
#include "support/memory.h"
#include "support/scores/sheet_music.h"
#include "spezzato/listen.h"
#include <math.h>
#include <string.h>

static bool all_here(void)
{
    if (engine_font() && engine_ears())
        return true;
    skipped("a SoundFont or the measured head of libmysofa is not at hand");
    return false;
}

/* One octave of a response, cut out of its spectrum. */
static void keep_octave(float *response, size_t length, double hertz)
{
    Fourier fourier;
    CU_ASSERT_FATAL(fourier_open(&fourier, fourier_size(2 * length)));
    memset(fourier.signal, 0, fourier.size * sizeof *fourier.signal);
    memcpy(fourier.signal, response, length * sizeof *response);
    fourier_there(&fourier);
    for (size_t i = 0; i < fourier.bins; i++) {
        double at = (double)i * SOUND_RATE / (double)fourier.size;
        if (at < hertz / sqrt(2) || at > hertz * sqrt(2))
            fourier.spectrum[i] = 0;
    }
    fourier_back(&fourier);
    memcpy(response, fourier.signal, length * sizeof *response);
    fourier_close(&fourier);
}

/* ISO 3382-1: the squared response summed backwards (Schroeder, JASA 37 (1965) 409); a straight line through its fall from -5 to -35 dB, drawn out to
 * 60 dB. */
static double reverberation(const float *response, size_t length)
{
    double *left = memory_get(length * sizeof *left), sum = 0, n = 0, x = 0, y = 0, xx = 0, xy = 0;
    CU_ASSERT_PTR_NOT_NULL_FATAL(left);
    for (size_t i = length; i-- > 0;)
        left[i] = sum += (double)response[i] * response[i];
    for (size_t i = 0; i < length; i++) {
        double level = 10 * log10(left[i] / sum + 1e-30), seconds = (double)i / SOUND_RATE;
        if (level > -5 || level < -35)
            continue;
        n++;
        x += seconds;
        y += level;
        xx += seconds * seconds;
        xy += seconds * level;
    }
    memory_free(left);
    return -60 / ((n * xy - x * y) / (n * xx - x * x));
}

/* What one source sends to the two sides: all reflections and the tail, and from path 0 on the direct sound too. */
static void room_response(const Hall *hall, bool loudspeakers, int from_path, float *sides[2], size_t *length)
{
    Source source = {.at = {-3, 2, 1.1}, .facing = {0, -1, 0}};
    Head head = {{0, -15, 0.2}, 0, 1};
    Performance performance = {.ears = engine_ears(), .loudspeakers = loudspeakers};
    SoundPath paths[SOUND_PATHS];
    Ears ears;
    hall_paths(hall, &source, &head, paths);
    SoundTail about = hall_tail(hall, paths[0].delay);
    CU_ASSERT_EQUAL_FATAL(ears_open(&performance, NULL, &ears), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(tail_make(&ears, &about, 0, sides, length), SPZ_OK);
    for (int i = from_path; i < SOUND_PATHS; i++)
        ears_add(&ears, &paths[i], 0, sides[0], sides[1], *length);
    ears_close(&ears);
}

static void rooms_reverberate_for_as_long_as_they_are_asked_to(void)
{
    if (!all_here())
        return;
    for (double seconds = 1.2; seconds < 3; seconds += 0.6)
        for (int octave = 500; octave <= 1000; octave *= 2)
            for (int use = 0; use < 2; use++) {
                Hall hall = {.width = 22, .length = 44, .height = 16, .back = 15, .floor = -1, .seconds = seconds, .celsius = 20};
                size_t length;
                float *sides[2];
                room_response(&hall, use, 0, sides, &length);
                for (int side = 0; side < 2; side++) {
                    keep_octave(sides[side], length, octave);
                    CU_ASSERT_DOUBLE_EQUAL(reverberation(sides[side], length) / seconds, 1, 0.05); /* what is just noticed: ISO 3382-1, annex A */
                    memory_free(sides[side]);
                }
            }
}

/* Barron and Lee 1988: all reflected energy at a seat is 31200 T / V times the direct sound's from 10 m, less what has died away when the direct
 * sound arrives. Two channels without a head share it; told for the octave of 1 kHz. */
static void what_is_reflected_is_as_strong_as_barron_says(void)
{
    Hall hall = {.width = 22, .length = 44, .height = 16, .back = 15, .floor = -1, .seconds = 2, .celsius = 20};
    float *sides[2];
    size_t length;
    double energy = 0, octave = 1000 * (sqrt(2) - sqrt(0.5)) / (SOUND_RATE / 2.0);
    room_response(&hall, true, 1, sides, &length);
    for (int side = 0; side < 2; side++) {
        keep_octave(sides[side], length, 1000);
        for (size_t i = 0; i < length; i++)
            energy += (double)sides[side][i] * sides[side][i];
        memory_free(sides[side]);
    }
    double expected = 31200.0 * 2 / (22 * 44 * 16) * exp(-13.8 * 17.3 / 343 / 2);
    CU_ASSERT_DOUBLE_EQUAL(10 * log10(energy / octave / expected), 0, 1.5);
}

#define BOOK "corpus/brelisk-balconies-1.musicxml"

/* Bars 29-32 of the bundled exchange: firsts, answered by the seconds, in both seatings. */
typedef struct Visit {
    spz_settings *settings;
    spz_reading *reading;
    spz_listening *listening;
} Visit;

static const char *const seatings[] = {"violins opposed, cellos inside left", "violins together, cellos outside"};

static Visit visit(const char *reverberation, spz_players solo, bool loudspeakers)
{
    Visit visit = {0};
    spz_listen_wish wish = {.first = 28, .last = 31, .arrangements = {seatings[0], seatings[1]}, .seat = SPZ_SEAT_MIDDLE, .solo = solo, .loudspeakers = loudspeakers,
                            .engine = SPEZZATO_SOUND};
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&visit.settings), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_settings_set(visit.settings, "hall.reverberation", reverberation, NULL), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_reading_make(BOOK, visit.settings, 0, SPZ_TO_SECTIONS, NULL, &visit.reading), SPZ_OK);
    spz_movement_reading movement = spz_reading_at(visit.reading, 0);
    CU_ASSERT_STRING_EQUAL(spz_movement_bar_number(movement.movement, 28), "29");
    CU_ASSERT_EQUAL_FATAL(spz_listen(&movement, visit.settings, &wish, NULL, &visit.listening), SPZ_OK);
    return visit;
}

static void visit_end(Visit *visit)
{
    spz_listening_free(visit->listening);
    spz_reading_free(visit->reading);
    spz_settings_free(visit->settings);
}

/* ITU-R BS.1770 by libebur128, measured once more on what is handed out. */
static void both_versions_are_equally_loud_and_none_is_clipped(void)
{
    if (!all_here())
        return;
    for (int use = 0; use < 2; use++) {
        Visit hall = visit("0", 0, use);
        double loudness[2], peak[2];
        for (size_t version = 0; version < 2; version++) {
            size_t count;
            const float *samples = spz_listening_samples(hall.listening, version, &count);
            CU_ASSERT_TRUE(loudness_measure(samples, count, &loudness[version], &peak[version]));
            CU_ASSERT(peak[version] <= -0.99);
            CU_ASSERT_DOUBLE_EQUAL(loudness[version], spz_listening_level(hall.listening, version).loudness, 0.05);
            for (size_t i = 0; i < 2 * count; i++)
                if (fabs(samples[i]) >= 1)
                    CU_FAIL_FATAL("a sample is clipped");
        }
        CU_ASSERT_DOUBLE_EQUAL(loudness[0], loudness[1], 0.5);
        CU_ASSERT_DOUBLE_EQUAL(loudness[0], -23, 0.5);
        visit_end(&hall);
    }
}

/* Energy of one octave of one side. */
static double octave_energy(const float *samples, size_t count, int side, double hertz)
{
    float *own = memory_get(count * sizeof *own);
    double sum = 0;
    CU_ASSERT_PTR_NOT_NULL_FATAL(own);
    for (size_t i = 0; i < count; i++)
        own[i] = samples[2 * i + (size_t)side];
    keep_octave(own, count, hertz);
    for (size_t i = 0; i < count; i++)
        sum += (double)own[i] * own[i];
    memory_free(own);
    return sum;
}

/* The level at the left ear over that at the right, of sound that comes from the desks of a section by the plan alone, as the head was measured. */
static double level_by_angles(const spz_settings *settings, const char *seating, spz_section section, double hertz)
{
    enum { LENGTH = 1024 };
    float sides[2][LENGTH];
    double sums[2] = {0, 0};
    Performance performance = {.ears = engine_ears()};
    spz_plan *plan;
    Ears ears;
    CU_ASSERT_EQUAL_FATAL(spz_stage_plan(settings, seating, false, NULL, &plan), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(ears_open(&performance, NULL, &ears), SPZ_OK);
    for (size_t i = 0; i < spz_plan_desks(plan); i++) {
        const spz_stage_desk *desk = spz_plan_desk(plan, i);
        double far = hypot(desk->x, desk->y + 15.5); /* the middle seats are 14 m from the edge */
        if (desk->section != section)
            continue;
        memset(sides, 0, sizeof sides);
        ears_add(&ears, &(SoundPath){.delay = 0.005, .gain = 1 / far, .high = 1, .front = (desk->y + 15.5) / far, .left = -desk->x / far}, 0, sides[0], sides[1], LENGTH);
        for (int side = 0; side < 2; side++) {
            keep_octave(sides[side], LENGTH, hertz);
            for (int k = 0; k < LENGTH; k++)
                sums[side] += (double)sides[side][k] * sides[side][k];
        }
    }
    ears_close(&ears);
    spz_plan_free(plan);
    return 10 * log10(sums[0] / sums[1]);
}

static double level_heard(const Visit *visit, size_t version, double hertz)
{
    size_t count;
    const float *samples = spz_listening_samples(visit->listening, version, &count);
    return 10 * log10(octave_energy(samples, count, 0, hertz) / octave_energy(samples, count, 1, hertz));
}

/* The seconds of the exchange alone, in a hall that takes everything: they come from the right when opposed, from the left half when together, by as much
 * as the measured head makes of the angles of their desks. */
static void the_seatings_differ_at_the_ears_as_much_as_the_angles_say(void)
{
    if (!all_here())
        return;
    Visit open_air = visit("0.1", 2, false);
    for (int octave = 1000; octave <= 2000; octave *= 2) {
        double opposed = level_by_angles(open_air.settings, seatings[0], SPZ_VN2, octave), together = level_by_angles(open_air.settings, seatings[1], SPZ_VN2, octave);
        CU_ASSERT(opposed < -1.5 && together > opposed + 2);
        CU_ASSERT_DOUBLE_EQUAL(level_heard(&open_air, 0, octave), opposed, 1.5);
        CU_ASSERT_DOUBLE_EQUAL(level_heard(&open_air, 1, octave), together, 1.5);
    }
    visit_end(&open_air);
}

/* In a hall most of the energy at a seat is reflected and comes from all sides (Barron and Lee 1988), so that the levels of sustained sound tell little of
 * a place: over the octaves from 500 Hz to 4 kHz the difference keeps its side and is less than half of that in the open. */
static void a_hall_narrows_the_difference_and_keeps_its_sides(void)
{
    if (!all_here())
        return;
    Visit hall = visit("0", 2, false);
    double difference = 0, angles = 0;
    for (int octave = 500; octave <= 4000; octave *= 2) {
        difference += level_heard(&hall, 1, octave) - level_heard(&hall, 0, octave);
        angles += level_by_angles(hall.settings, seatings[1], SPZ_VN2, octave) - level_by_angles(hall.settings, seatings[0], SPZ_VN2, octave);
    }
    CU_ASSERT(difference > 0 && difference < 0.5 * angles);
    visit_end(&hall);
}

/* Level of the samples between two moments. */
static double level_between(const spz_listening *listening, double from, double to)
{
    size_t count;
    double sum = 0;
    const float *samples = spz_listening_samples(listening, 0, &count);
    size_t first = (size_t)(from * SOUND_RATE), end = (size_t)(to * SOUND_RATE);
    CU_ASSERT_FATAL(first < end && end <= count);
    for (size_t i = 2 * first; i < 2 * end; i++)
        sum += (double)samples[i] * samples[i];
    return 10 * log10(sum / (double)(end - first));
}

/* A semibreve of four seconds from piano to forte, by everybody: the SoundFont's own curve makes 40 log (96 / 48) = 12 dB of these two velocities (SoundFont Technical Specification 2.04,
 * 8.4.1), so that its last half second should be about 10 dB louder than its first after the attack. */
static void a_held_note_is_heard_to_grow(void)
{
    if (!all_here())
        return;
    SheetMusic music = sheet_music("time: 4/4  key: 0  tempo: q=60\npart: Violin I\npart: Violin II\npart: Viola; clef alto\npart: Violoncello; clef bass\n"
                                   "Violin I: <p> < c5:w | ! <f> d5:w\nViolin II: R | R\nViola: R | R\nVioloncello: R | R\n");
    spz_movement_reading movement = first_movement(&music);
    spz_listen_wish wish = {.first = 0, .last = 0, .arrangements = {seatings[0], seatings[1]}, .engine = SPEZZATO_SOUND};
    spz_settings *settings;
    spz_listening *listening;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_settings_set(settings, "hall.reverberation", "0.1", NULL), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_listen(&movement, settings, &wish, NULL, &listening), SPZ_OK);
    double grown = level_between(listening, 3.5, 4) - level_between(listening, 0.9, 1.4);
    CU_ASSERT(grown > 6 && grown < 13);
    spz_listening_free(listening);
    spz_settings_free(settings);
    sheet_music_end(&music);
}

/* Whoever listens from several seats at once hears, sample for sample, what each of them hears alone. */
static void several_seats_hear_what_each_would_alone(void)
{
    static const spz_seat seats[] = {SPZ_SEAT_PODIUM, SPZ_SEAT_LEFT, SPZ_SEAT_MIDDLE};
    spz_listening *together[3], *alone;
    if (!all_here())
        return;
    Visit hall = visit("0", 0, false);
    spz_movement_reading movement = spz_reading_at(hall.reading, 0);
    spz_listen_wish wish = {.first = 28, .last = 29, .arrangements = {seatings[0], seatings[1]}, .engine = SPEZZATO_SOUND};
    CU_ASSERT_EQUAL_FATAL(spz_listen_seats(&movement, hall.settings, &wish, seats, 3, NULL, together), SPZ_OK);
    for (int i = 0; i < 3; i++) {
        wish.seat = seats[i];
        CU_ASSERT_EQUAL_FATAL(spz_listen(&movement, hall.settings, &wish, NULL, &alone), SPZ_OK);
        CU_ASSERT_EQUAL(spz_listening_seat(together[i]), seats[i]);
        for (size_t version = 0; version < 2; version++) {
            size_t count, own_count;
            const float *samples = spz_listening_samples(together[i], version, &count), *own = spz_listening_samples(alone, version, &own_count);
            CU_ASSERT_EQUAL_FATAL(count, own_count);
            CU_ASSERT(memcmp(samples, own, 2 * count * sizeof *own) == 0);
        }
        spz_listening_free(alone);
    }
    size_t count;
    const float *first = spz_listening_samples(together[0], 0, &count), *other = spz_listening_samples(together[1], 0, &count);
    CU_ASSERT(memcmp(first, other, count * sizeof *first) != 0);
    for (int i = 0; i < 3; i++)
        spz_listening_free(together[i]);
    CU_ASSERT_EQUAL(spz_listen_seats(&movement, hall.settings, &wish, seats, 0, NULL, together), SPZ_BAD_ARGUMENT);
    visit_end(&hall);
}

static void what_plays_too_long_or_nothing_is_refused_in_one_line(void)
{
    spz_listen_wish wish = {.first = 0, .last = 0, .arrangements = {seatings[0], seatings[1]}, .engine = "nowhere/spezzato-sound.so"};
    spz_listening *listening;
    CU_ASSERT_EQUAL(spz_listen(NULL, NULL, &wish, NULL, &listening), SPZ_CANNOT_OPEN);
    CU_ASSERT_PTR_NULL(listening);
}
#else
static void rooms_need_the_library_of_sound(void)
{
    skipped("the library of sound is not built here");
}
#endif

static const struct Statement statements[] = {
#ifdef SPEZZATO_SOUND
    STATEMENT(rooms_reverberate_for_as_long_as_they_are_asked_to),
    STATEMENT(what_is_reflected_is_as_strong_as_barron_says),
    STATEMENT(both_versions_are_equally_loud_and_none_is_clipped),
    STATEMENT(the_seatings_differ_at_the_ears_as_much_as_the_angles_say),
    STATEMENT(a_hall_narrows_the_difference_and_keeps_its_sides),
    STATEMENT(a_held_note_is_heard_to_grow),
    STATEMENT(several_seats_hear_what_each_would_alone),
    STATEMENT(what_plays_too_long_or_nothing_is_refused_in_one_line),
#else
    STATEMENT(rooms_need_the_library_of_sound),
#endif
};
void suite_sound_rooms(void) { suite_of("sound_rooms", statements, COUNT(statements)); }
