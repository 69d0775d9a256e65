/* Figures of sound against what was published. */
#include "seating/stage/acoustics.h"
#include "seating/stage/geometry.h"
#include "support/suite.h"
#include <math.h>
#include <string.h>

/* ISO 9613-1 gives c = 343.2 sqrt(T / 293.15 K) m/s; dry air at 0 C is tabled everywhere at 331.3 to 331.5 m/s (331.3: ideal gas
 * with 7/5; the same formula at 35 C gives 351.9, teaching tables 351.9). */
static void sound_is_as_fast_as_the_standard_says(void)
{
    CU_ASSERT_DOUBLE_EQUAL(acoustics_sound_speed(20), 343.2, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(acoustics_sound_speed(0), 331.3, 0.1);
    CU_ASSERT_DOUBLE_EQUAL(acoustics_sound_speed(35), 351.9, 0.1);
    CU_ASSERT(acoustics_sound_speed(25) > acoustics_sound_speed(15));
}

/* (a / c)(angle + sin angle) with a = 0.0875 m and c = 343 m/s, Woodworth and Schlosberg 1954: microseconds, worked out by hand
 * from the formula; the 656 at 90 degrees is the figure that textbooks print. */
static void the_ears_hear_the_delays_of_the_spherical_head(void)
{
    static const struct {
        double degrees, microseconds;
    } table[] = {{0, 0}, {15, 132.8}, {30, 261.1}, {45, 380.7}, {60, 488.1}, {75, 580.3}, {90, 655.8}};
    for (size_t i = 0; i < COUNT(table); i++) {
        double angle = table[i].degrees * 3.14159265358979323846 / 180;
        CU_ASSERT_DOUBLE_EQUAL(1e6 * acoustics_ear_delay(angle, 19.66), table[i].microseconds, 0.6);
        CU_ASSERT_DOUBLE_EQUAL(acoustics_ear_delay(-angle, 19.66), -acoustics_ear_delay(angle, 19.66), 1e-12);
    }
}

static void what_is_behind_a_listener_counts_as_its_mirror_in_front(void)
{
    double turn = 3.14159265358979323846;
    CU_ASSERT_DOUBLE_EQUAL(acoustics_ear_delay(turn * 2 / 3, 20), acoustics_ear_delay(turn / 3, 20), 1e-12);
    CU_ASSERT_DOUBLE_EQUAL(acoustics_ear_delay(turn, 20), 0, 1e-12);
}

/* Mills 1958: about 1 degree can be noticed straight ahead. Blauert: blur 3.6 degrees in front, several times that in a hall. */
static void no_hall_tells_more_apart_than_an_ear_can(void)
{
    CU_ASSERT(acoustics_blur(0.1) >= acoustic_figures.least_angle);
    CU_ASSERT_DOUBLE_EQUAL(acoustics_blur(1), 3.6, 1e-9);
    /* One degree of angle is a difference of about 9 microseconds; 10 are known as the least that can be told (Mills 1958; cited
     * so in the interaural-time literature). */
    double one_degree = acoustic_figures.least_angle * 3.14159265358979323846 / 180;
    CU_ASSERT_DOUBLE_EQUAL(1e6 * acoustics_ear_delay(one_degree, 20), 9, 1);
}

/* Rasch 1979: asynchrony of 20 to 50 ms is normal. */
static void the_tolerance_stays_within_what_good_ensembles_play(void)
{
    CU_ASSERT_DOUBLE_EQUAL(acoustics_tolerance(0.04, 1), 0.020, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(acoustics_tolerance(0.12, 1), 0.030, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(acoustics_tolerance(2, 1), 0.050, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(acoustics_tolerance(0, 1), 0.050, 1e-9);
    CU_ASSERT(acoustics_tolerance(0.12, 0.7) < acoustics_tolerance(0.12, 1));
}

/* ISO 3382-1, annex C: players like an early support of about -16 to -12 dB. */
static void players_hear_best_where_early_support_is_as_they_like_it(void)
{
    CU_ASSERT_DOUBLE_EQUAL(acoustics_support(-14), 1, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(acoustics_support(-16), 1, 1e-9);
    CU_ASSERT(acoustics_support(-18) < 1 && acoustics_support(-18) > acoustics_support(-20));
    CU_ASSERT(acoustics_support(-9) < 1);
    CU_ASSERT_DOUBLE_EQUAL(acoustics_support(-30), acoustic_figures.hearing_worst, 1e-9);
}

/* Dammerud 2009: delays of direct sound within an orchestra reach approximately 60 ms at most. Strings alone, in the strength of
 * a large orchestra, have to stay below that and must come near half of it between the last desks of opposed violins. */
static void delays_between_opposed_violins_are_those_that_were_measured_on_stages(void)
{
    spz_plan *plan = NULL;
    spz_settings *settings = NULL;
    spz_distance distance;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    spz_settings_set(settings, "players.first violins", "16", NULL);
    spz_settings_set(settings, "players.second violins", "14", NULL);
    spz_settings_set(settings, "players.violas", "12", NULL);
    spz_settings_set(settings, "players.cellos", "10", NULL);
    spz_settings_set(settings, "players.basses", "8", NULL);
    spz_settings_set(settings, "stage.width", "22", NULL);
    spz_settings_set(settings, "stage.depth", "14", NULL);
    CU_ASSERT_EQUAL_FATAL(spz_stage_plan(settings, "violins opposed, cellos inside left", false, NULL, &plan), SPZ_OK);
    CU_ASSERT(spz_plan_distance(plan, SPZ_VN1, SPZ_VN2, &distance));
    CU_ASSERT(distance.back_delay > 30 && distance.back_delay < 60);
    double most = 0;
    for (size_t i = 0; i < spz_plan_desks(plan); i++)
        for (size_t j = 0; j < i; j++) {
            const spz_stage_desk *a = spz_plan_desk(plan, i), *b = spz_plan_desk(plan, j);
            double apart = hypot(a->x - b->x, a->y - b->y);
            most = apart > most ? apart : most;
        }
    CU_ASSERT(1000 * acoustics_delay(most, 21) < 60);
    CU_ASSERT_DOUBLE_EQUAL(1000 * acoustics_delay(20.59, 20), 60, 0.1);
    spz_plan_free(plan);
    spz_settings_free(settings);
}

static const struct Statement statements[] = {
    STATEMENT(sound_is_as_fast_as_the_standard_says),
    STATEMENT(the_ears_hear_the_delays_of_the_spherical_head),
    STATEMENT(what_is_behind_a_listener_counts_as_its_mirror_in_front),
    STATEMENT(no_hall_tells_more_apart_than_an_ear_can),
    STATEMENT(the_tolerance_stays_within_what_good_ensembles_play),
    STATEMENT(players_hear_best_where_early_support_is_as_they_like_it),
    STATEMENT(delays_between_opposed_violins_are_those_that_were_measured_on_stages),
};

void suite_stage_acoustics(void)
{
    suite_of("stage: sound", statements, COUNT(statements));
}
