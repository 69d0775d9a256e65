/* The hall as a box: images worked out by hand, delays and levels against the geometry. */
#include "seating/stage/acoustics.h"
#include "sound/cast.h"
#include "sound/hall.h"
#include "support/suite.h"
#include <math.h>

static const double turn = 3.14159265358979323846;

/* 10 m wide (x -5..5), 20 m long (y 4 down to -16), 8 m high (z 0..8). */
static const Hall box = {.width = 10, .length = 20, .height = 8, .back = 4, .floor = 0, .seconds = 1, .celsius = 20};
static const Source source = {.at = {2, 1, 1}, .facing = {0, -1, 0}};
static const Head head = {.at = {-1, -9, 2}, .front_x = 0, .front_y = 1};

static bool holds(const SoundPath *paths, double metres, int bounces)
{
    double gain = 10 / metres * pow(sqrt(1 - hall_absorption(&box)), bounces);
    for (int i = 0; i < SOUND_PATHS; i++)
        if (fabs(paths[i].delay * 343.2 - metres) < 1e-6 && fabs(paths[i].gain - gain) < 1e-9)
            return true;
    return false;
}

/* The mirrors of (2, 1, 1) behind the six walls, by hand: x 8 and -12, y 7 and -33, z -1 and 15; the head is at (-1, -9, 2). */
static void the_first_reflections_come_from_the_mirrors_behind_the_walls(void)
{
    SoundPath paths[SOUND_PATHS];
    hall_paths(&box, &source, &head, paths);
    CU_ASSERT_TRUE(holds(paths, sqrt(9 + 100 + 1), 0));
    CU_ASSERT_TRUE(holds(paths, sqrt(81 + 100 + 1), 1));
    CU_ASSERT_TRUE(holds(paths, sqrt(121 + 100 + 1), 1));
    CU_ASSERT_TRUE(holds(paths, sqrt(9 + 256 + 1), 1));
    CU_ASSERT_TRUE(holds(paths, sqrt(9 + 576 + 1), 1));
    CU_ASSERT_TRUE(holds(paths, sqrt(9 + 100 + 9), 1));
    CU_ASSERT_TRUE(holds(paths, sqrt(9 + 100 + 169), 1));
}

/* Two walls that meet: both mirrors at once (8, 7, 1); two that face each other: the box shifted by twice its width, x 22 and -18. */
static void the_second_reflections_come_from_corners_and_from_opposite_walls(void)
{
    SoundPath paths[SOUND_PATHS];
    hall_paths(&box, &source, &head, paths);
    CU_ASSERT_TRUE(holds(paths, sqrt(81 + 256 + 1), 2));
    CU_ASSERT_TRUE(holds(paths, sqrt(23 * 23 + 100 + 1), 2));
    CU_ASSERT_TRUE(holds(paths, sqrt(17 * 17 + 100 + 1), 2));
    CU_ASSERT_TRUE(holds(paths, sqrt(121 + 100 + 169), 2));
}

/* In three dimensions there are 6 images of the first and 18 of the second order (Allen and Berkley 1979: all |n| with at most two bounces). */
static void there_are_twenty_five_paths_of_two_reflections_at_most(void)
{
    SoundPath paths[SOUND_PATHS];
    hall_paths(&box, &source, &head, paths);
    for (int i = 0; i < SOUND_PATHS; i++) {
        CU_ASSERT(paths[i].gain > 0 && paths[i].gain <= paths[0].gain);
        CU_ASSERT_DOUBLE_EQUAL(paths[i].front * paths[i].front + paths[i].left * paths[i].left + paths[i].up * paths[i].up, 1, 1e-9);
        for (int k = 0; k < i; k++)
            CU_ASSERT(fabs(paths[i].delay - paths[k].delay) > 1e-7 || fabs(paths[i].left - paths[k].left) > 1e-7 || fabs(paths[i].up - paths[k].up) > 1e-7);
    }
}

static void what_sits_at_house_left_comes_from_the_left(void)
{
    SoundPath paths[SOUND_PATHS];
    Source left = source, right = source;
    left.at.x = -4;
    right.at.x = 4;
    hall_paths(&box, &left, &head, paths);
    CU_ASSERT_DOUBLE_EQUAL(atan2(paths[0].left, paths[0].front) * 180 / turn, 16.699, 0.001); /* atan(3 / 10) */
    hall_paths(&box, &right, &head, paths);
    CU_ASSERT_DOUBLE_EQUAL(atan2(paths[0].left, paths[0].front) * 180 / turn, -26.565, 0.001); /* atan(5 / 10) */
}

/* Eyring by hand: V = 1600 m3, S = 880 m2, T = 1 s: 1 - exp(-0.161 * 1600 / 880) = 0.254. Barron and Lee: 31200 T / V = 19.5 times the direct
 * sound from 10 m. */
static void the_walls_take_what_the_reverberation_time_says(void)
{
    CU_ASSERT_DOUBLE_EQUAL(hall_absorption(&box), 0.254, 0.001);
    CU_ASSERT_DOUBLE_EQUAL(hall_tail(&box, 0).energy, 19.5, 0.001);
}

typedef struct House {
    spz_settings *settings;
    Rules rules;
    Hall hall;
    spz_plan *plan;
} House;

static House house_of(const char *arrangement)
{
    House house;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&house.settings), SPZ_OK);
    rules_read(house.settings, &house.rules);
    hall_read(house.settings, &house.rules, &house.hall);
    CU_ASSERT_EQUAL_FATAL(spz_stage_plan(house.settings, arrangement, false, NULL, &house.plan), SPZ_OK);
    return house;
}

static void house_end(House *house)
{
    spz_plan_free(house->plan);
    spz_settings_free(house->settings);
}

static const SectionMap no_score = {0};

/* The direct path of a desk to the middle seats. */
static SoundPath desk_path(const House *house, spz_section section, int number)
{
    Member member = {.kind = MEMBER_DESK, .section = section, .number = number, .players = 2};
    Cast cast = {.at = &member, .count = 1};
    Source at;
    SoundPath paths[SOUND_PATHS];
    Head listener = hall_head(&house->hall, &house->rules, SPZ_SEAT_MIDDLE);
    cast_place(&cast, &no_score, house->plan, &at);
    hall_paths(&house->hall, &at, &listener, paths);
    return paths[0];
}

/* By hand from the plan: a seat 14 m from the edge, which is 1.5 m from the podium; ears 1.2 m over a floor 1 m lower, instruments 1.1 m over the stage. */
static double metres_to_seat(const House *house, spz_section section, int number)
{
    for (size_t i = 0; i < spz_plan_desks(house->plan); i++) {
        const spz_stage_desk *desk = spz_plan_desk(house->plan, i);
        if (desk->section == section && desk->number == number)
            return sqrt(desk->x * desk->x + (desk->y + 15.5) * (desk->y + 15.5) + (desk->z + 0.9) * (desk->z + 0.9));
    }
    CU_FAIL("no such desk");
    return 0;
}

static void desks_are_as_late_and_as_soft_as_they_are_far(void)
{
    static const struct {
        spz_section section;
        int number;
    } desks[] = {{SPZ_VN1, 1}, {SPZ_VN1, 6}, {SPZ_VN2, 1}, {SPZ_VA, 3}, {SPZ_VC, 2}, {SPZ_DB, 1}};
    House house = house_of("violins opposed, cellos inside left");
    SoundPath first = desk_path(&house, desks[0].section, desks[0].number);
    double near = metres_to_seat(&house, desks[0].section, desks[0].number);
    for (size_t i = 1; i < COUNT(desks); i++) {
        SoundPath path = desk_path(&house, desks[i].section, desks[i].number);
        double far = metres_to_seat(&house, desks[i].section, desks[i].number);
        CU_ASSERT_DOUBLE_EQUAL(path.delay - first.delay, (far - near) / acoustics_sound_speed(21), 1e-9);
        CU_ASSERT_DOUBLE_EQUAL(20 * log10(path.gain / first.gain), 20 * log10(near / far), 1e-9);
    }
    house_end(&house);
}

/* Power over all directions stays that of a source without a beam, whatever the beam. */
static void a_beam_neither_adds_nor_takes_power(void)
{
    for (double beam = 0; beam < 16; beam += 3) {
        Source violin = {.facing = {0.6, 0, 0.8}, .beam = beam};
        double sum = 0;
        enum { STEPS = 200 };
        for (int i = 0; i < STEPS; i++)
            for (int k = 0; k < STEPS; k++) {
                double up = 1 - (2 * i + 1.0) / STEPS, around = 2 * turn * k / STEPS, flat = sqrt(1 - up * up);
                double gain = hall_directivity(&violin, (Place){flat * cos(around), flat * sin(around), up});
                sum += gain * gain / (STEPS * STEPS);
            }
        CU_ASSERT_DOUBLE_EQUAL(sum, 1, 0.001);
    }
}

/* Meyer: the seconds at house right turn their top plates away from the hall, the firsts at house left toward it. */
static void opposed_seconds_lose_high_sound_toward_the_hall(void)
{
    House opposed = house_of("violins opposed, cellos inside left"), together = house_of("violins together, cellos outside");
    CU_ASSERT(desk_path(&opposed, SPZ_VN1, 1).high > 1);
    CU_ASSERT(desk_path(&opposed, SPZ_VN2, 1).high < 1);
    CU_ASSERT(desk_path(&together, SPZ_VN2, 1).high > desk_path(&opposed, SPZ_VN2, 1).high);
    CU_ASSERT_DOUBLE_EQUAL(desk_path(&together, SPZ_VN1, 1).high, desk_path(&opposed, SPZ_VN1, 1).high, 0.05);
    house_end(&opposed);
    house_end(&together);
}

static void the_hall_is_never_smaller_than_its_stage_and_seats(void)
{
    House house = house_of(NULL);
    CU_ASSERT_EQUAL(spz_settings_set(house.settings, "stage.width", "30", NULL), SPZ_OK);
    CU_ASSERT_EQUAL(spz_settings_set(house.settings, "hall.back", "60", NULL), SPZ_OK);
    rules_read(house.settings, &house.rules);
    hall_read(house.settings, &house.rules, &house.hall);
    CU_ASSERT(house.hall.width >= 30);
    Head back = hall_head(&house.hall, &house.rules, SPZ_SEAT_BACK);
    CU_ASSERT(back.at.y > house.hall.back - house.hall.length);
    house_end(&house);
}

static void the_conductor_faces_the_players_and_all_others_the_podium(void)
{
    House house = house_of(NULL);
    Head podium = hall_head(&house.hall, &house.rules, SPZ_SEAT_PODIUM), left = hall_head(&house.hall, &house.rules, SPZ_SEAT_LEFT);
    CU_ASSERT_DOUBLE_EQUAL(podium.front_y, 1, 1e-12);
    CU_ASSERT(left.at.x < 0 && left.front_x > 0 && left.front_y > 0);
    CU_ASSERT_DOUBLE_EQUAL(left.front_x * left.at.y - left.front_y * left.at.x, 0, 1e-9);
    house_end(&house);
}

static const struct Statement statements[] = {
    STATEMENT(the_first_reflections_come_from_the_mirrors_behind_the_walls),
    STATEMENT(the_second_reflections_come_from_corners_and_from_opposite_walls),
    STATEMENT(there_are_twenty_five_paths_of_two_reflections_at_most),
    STATEMENT(what_sits_at_house_left_comes_from_the_left),
    STATEMENT(the_walls_take_what_the_reverberation_time_says),
    STATEMENT(desks_are_as_late_and_as_soft_as_they_are_far),
    STATEMENT(a_beam_neither_adds_nor_takes_power),
    STATEMENT(opposed_seconds_lose_high_sound_toward_the_hall),
    STATEMENT(the_hall_is_never_smaller_than_its_stage_and_seats),
    STATEMENT(the_conductor_faces_the_players_and_all_others_the_podium),
};
void suite_sound_hall(void) { suite_of("sound_hall", statements, COUNT(statements)); }
