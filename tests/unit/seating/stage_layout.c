/* Desks on the stage. */
#include "support/scores/evening.h"
#include "spezzato/stage.h"
#include "support/memory.h"
#include "support/suite.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char *const standard[] = {"violins opposed, cellos inside left", "violins opposed, violas inside left",
                                       "violins together, cellos outside", "violins together, violas outside"};
static const spz_section sections[] = {SPZ_VN1, SPZ_VN2, SPZ_VA, SPZ_VC, SPZ_DB};

static spz_plan *plan_of(const spz_settings *settings, const char *name, bool thirds)
{
    spz_plan *plan = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_stage_plan(settings, name, thirds, NULL, &plan), SPZ_OK);
    return plan;
}

static void set(spz_settings *settings, const char *name, double value)
{
    char text[32];
    snprintf(text, sizeof text, "%.3f", value);
    CU_ASSERT_EQUAL_FATAL(spz_settings_set(settings, name, text, NULL), SPZ_OK);
}

static int seated(const spz_plan *plan, spz_section section)
{
    int players = 0;
    for (size_t i = 0; i < spz_plan_desks(plan); i++)
        players += spz_plan_desk(plan, i)->section == section ? spz_plan_desk(plan, i)->players : 0;
    return players;
}

/* Everybody has a seat on the stage, nobody sits on another's. */
static void check_seats(const spz_plan *plan)
{
    double half = spz_plan_stage_width(plan) / 2, back = spz_plan_stage_depth(plan) - spz_plan_front(plan);
    for (size_t i = 0; i < spz_plan_desks(plan); i++) {
        const spz_stage_desk *desk = spz_plan_desk(plan, i);
        CU_ASSERT(fabs(desk->x) + 0.69 <= half && desk->y + 0.69 <= back && desk->y >= -1e-9);
        for (size_t j = 0; j < i; j++) {
            const spz_stage_desk *other = spz_plan_desk(plan, j);
            CU_ASSERT(hypot(desk->x - other->x, desk->y - other->y) > 1.1);
        }
    }
}

static void every_player_has_a_seat_of_their_own(void)
{
    for (size_t a = 0; a < COUNT(standard); a++) {
        spz_plan *plan = plan_of(NULL, standard[a], false);
        static const int players[] = {14, 12, 10, 8, 6};
        for (size_t i = 0; i < COUNT(sections); i++) {
            CU_ASSERT_EQUAL(seated(plan, sections[i]), players[i]);
            CU_ASSERT_EQUAL(spz_plan_players(plan, sections[i]), players[i]);
        }
        check_seats(plan);
        spz_plan_free(plan);
    }
}

static void an_orchestra_of_any_strength_is_seated_whole_or_refused(void)
{
    unsigned seed = 20170401;
    spz_settings *settings = NULL;
    static const char *const keys[] = {"players.first violins", "players.second violins", "players.violas", "players.cellos",
                                       "players.basses"};
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    int fitted = 0, refused = 0;
    set(settings, "stage.width", 13);
    set(settings, "stage.depth", 9);
    for (int trial = 0; trial < 80; trial++) {
        int players[5];
        set(settings, "stage.aisle", trial % 4 ? 0 : 0.9);
        for (size_t i = 0; i < 5; i++) {
            seed = seed * 1664525u + 1013904223u;
            players[i] = (int)(seed >> 16) % 22 + 2;
            set(settings, keys[i], players[i]);
        }
        spz_plan *plan = NULL;
        spz_status status = spz_stage_plan(settings, standard[trial % 4], false, NULL, &plan);
        refused += status == SPZ_BAD_SETTINGS;
        if (status != SPZ_OK) {
            CU_ASSERT_EQUAL(status, SPZ_BAD_SETTINGS);
            continue;
        }
        fitted++;
        for (size_t i = 0; i < 5; i++)
            CU_ASSERT_EQUAL(seated(plan, sections[i]), players[i]);
        check_seats(plan);
        spz_plan_free(plan);
    }
    CU_ASSERT(fitted > 10 && refused > 5);
    spz_settings_free(settings);
}

/* However wide the ways between them; where the smallest stage has no room for wide ones it is refused. */
static void four_players_are_seated_whole_or_refused(void)
{
    static const spz_section quartet[] = {SPZ_VN1, SPZ_VN2, SPZ_VA, SPZ_VC};
    spz_settings *settings = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    for (int small = 0; small < 2; small++)
        for (int tenths = 0; tenths <= 30; tenths++) {
            spz_plan *plan = NULL;
            set(settings, "stage.width", small ? 6 : 18);
            set(settings, "stage.depth", small ? 4 : 11);
            set(settings, "stage.aisle", tenths / 10.0);
            spz_status status = spz_stage_plan_single(settings, standard[tenths % 4], NULL, &plan);
            CU_ASSERT(status == SPZ_OK || (status == SPZ_BAD_SETTINGS && small && tenths > 6));
            for (size_t i = 0; i < COUNT(quartet) && status == SPZ_OK; i++)
                CU_ASSERT_EQUAL(seated(plan, quartet[i]), 1);
            spz_plan_free(plan);
        }
    spz_settings_free(settings);
}

static void the_front_desk_is_nearest_to_the_podium_and_rows_are_a_desk_apart(void)
{
    spz_plan *plan = plan_of(NULL, standard[0], false);
    for (size_t i = 0; i < spz_plan_desks(plan); i++) {
        const spz_stage_desk *desk = spz_plan_desk(plan, i);
        double radius = hypot(desk->x, desk->y);
        if (i > 0 && spz_plan_desk(plan, i - 1)->section == desk->section) {
            const spz_stage_desk *before = spz_plan_desk(plan, i - 1);
            double step = radius - hypot(before->x, before->y);
            CU_ASSERT_EQUAL(desk->number, before->number + 1);
            CU_ASSERT(fabs(step) < 1e-9 || step >= 1.4 - 1e-9);
        } else {
            CU_ASSERT_EQUAL(desk->number, 1);
        }
    }
    spz_plan_free(plan);
}

static void sections_stand_from_house_left_to_right_as_the_order_says(void)
{
    static const spz_section orders[][4] = {{SPZ_VN1, SPZ_VC, SPZ_VA, SPZ_VN2},
                                            {SPZ_VN1, SPZ_VA, SPZ_VC, SPZ_VN2},
                                            {SPZ_VN1, SPZ_VN2, SPZ_VA, SPZ_VC},
                                            {SPZ_VN1, SPZ_VN2, SPZ_VC, SPZ_VA}};
    for (size_t a = 0; a < COUNT(standard); a++) {
        spz_plan *plan = plan_of(NULL, standard[a], false);
        double before = -100;
        for (size_t k = 0; k < 4; k++) {
            double sum = 0;
            int count = 0;
            for (size_t i = 0; i < spz_plan_desks(plan); i++)
                if (spz_plan_desk(plan, i)->section == orders[a][k]) {
                    sum += spz_plan_desk(plan, i)->x;
                    count++;
                }
            CU_ASSERT(sum / count > before);
            before = sum / count;
        }
        spz_plan_free(plan);
    }
}

static void a_wider_stage_never_lowers_delays(void)
{
    spz_settings *settings = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    set(settings, "stage.depth", 16);
    for (size_t a = 0; a < COUNT(standard); a++) {
        double before[5][5][3] = {{{0}}};
        int seen = 0;
        for (double width = 12; width <= 40; width += 0.5) {
            spz_plan *plan = NULL;
            set(settings, "stage.width", width);
            if (spz_stage_plan(settings, standard[a], false, NULL, &plan) != SPZ_OK)
                continue;
            if (spz_plan_is_cut(plan)) { /* the walls hold the rows together: there the sections sit deeper, not wider */
                spz_plan_free(plan);
                continue;
            }
            seen++;
            for (size_t i = 0; i < 5; i++)
                for (size_t j = 0; j < i; j++) {
                    spz_distance way;
                    CU_ASSERT(spz_plan_distance(plan, sections[i], sections[j], &way));
                    double now[3] = {way.front_delay, way.centre_delay, way.back_delay};
                    for (size_t k = 0; k < 3; k++) {
                        CU_ASSERT(now[k] >= before[i][j][k] - 1e-9);
                        before[i][j][k] = now[k];
                    }
                }
            spz_plan_free(plan);
        }
        CU_ASSERT(seen > 40);
    }
    spz_settings_free(settings);
}

static void opposed_violins_sit_farther_apart_than_violins_together(void)
{
    spz_plan *opposed = plan_of(NULL, standard[0], false), *together = plan_of(NULL, standard[2], false);
    spz_distance far, near;
    spz_plan_distance(opposed, SPZ_VN1, SPZ_VN2, &far);
    spz_plan_distance(together, SPZ_VN1, SPZ_VN2, &near);
    CU_ASSERT(far.front > near.front && far.centre > near.centre && far.back > near.back);
    for (size_t place = 0; place < spz_plan_places(opposed); place++) {
        spz_separation wide, narrow;
        CU_ASSERT(spz_plan_separation(opposed, SPZ_VN1, SPZ_VN2, place, &wide) &&
                  spz_plan_separation(together, SPZ_VN1, SPZ_VN2, place, &narrow));
        CU_ASSERT(wide.angle > narrow.angle && wide.ear_delay > narrow.ear_delay && wide.widths > narrow.widths);
        CU_ASSERT_EQUAL(wide.listener, narrow.listener);
    }
    CU_ASSERT(!spz_plan_separation(opposed, SPZ_VN1, SPZ_VN2, spz_plan_places(opposed), &(spz_separation){0}));
    CU_ASSERT(!spz_plan_distance(opposed, SPZ_VN1, SPZ_WINDS, &far));
    spz_plan_free(opposed);
    spz_plan_free(together);
}

static void the_farther_back_a_listener_sits_the_smaller_the_angle(void)
{
    spz_plan *plan = plan_of(NULL, standard[0], false);
    spz_separation front, middle, back, left, right;
    spz_plan_separation(plan, SPZ_VN1, SPZ_VN2, SPZ_FRONT_SEATS, &front);
    spz_plan_separation(plan, SPZ_VN1, SPZ_VN2, SPZ_MIDDLE_SEATS, &middle);
    spz_plan_separation(plan, SPZ_VN1, SPZ_VN2, SPZ_BACK_SEATS, &back);
    spz_plan_separation(plan, SPZ_VN1, SPZ_VN2, SPZ_LEFT_SEATS, &left);
    spz_plan_separation(plan, SPZ_VN1, SPZ_VN2, SPZ_RIGHT_SEATS, &right);
    CU_ASSERT(front.angle > middle.angle && middle.angle > back.angle);
    CU_ASSERT(left.angle < middle.angle && right.angle < middle.angle);
    CU_ASSERT_EQUAL(back.listener, SPZ_BACK_SEATS);
    /* By hand: two centres 7.9 m apart, about 2 m behind the podium, from 14 + 1.5 m before it: 2 atan(3.95 / 17.5) = 25.4
     * degrees. */
    CU_ASSERT_DOUBLE_EQUAL(middle.angle, 25.4, 1.5);
    spz_plan_free(plan);
}

static void warm_air_carries_sound_faster(void)
{
    spz_settings *settings = NULL;
    spz_distance cold, warm;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    set(settings, "hall.temperature", 15);
    spz_plan *plan = plan_of(settings, standard[0], false);
    spz_plan_distance(plan, SPZ_VN1, SPZ_VN2, &cold);
    spz_plan_free(plan);
    set(settings, "hall.temperature", 30);
    plan = plan_of(settings, standard[0], false);
    spz_plan_distance(plan, SPZ_VN1, SPZ_VN2, &warm);
    spz_plan_free(plan);
    CU_ASSERT_DOUBLE_EQUAL(cold.centre, warm.centre, 1e-12);
    CU_ASSERT(warm.centre_delay < cold.centre_delay);
    spz_settings_free(settings);
}

typedef struct Heard {
    char text[512];
} Heard;

static void hear(void *context, const spz_message *message)
{
    snprintf(((Heard *)context)->text, sizeof((Heard *)context)->text, "%s", message->text);
}

static void an_unknown_seating_is_refused_by_name(void)
{
    spz_plan *plan = NULL;
    Heard heard = {""};
    const spz_sink sink = {hear, &heard};
    CU_ASSERT_EQUAL(spz_stage_plan(NULL, "violins upstairs", false, &sink, &plan), SPZ_BAD_ARGUMENT);
    CU_ASSERT_PTR_NOT_NULL(
        strstr(heard.text, "there is no seating 'violins upstairs'; there are 'violins opposed, cellos inside left'; "));
    CU_ASSERT_PTR_NULL(plan);
}

static void a_mirrored_order_mirrors_every_seat(void)
{
    spz_settings *settings = evening_settings("[arrangement mirrored]\norder = Vn II, Va, Vc, Vn I\n");
    spz_plan *plan = plan_of(settings, standard[0], false), *mirror = plan_of(settings, "mirrored", false);
    CU_ASSERT_EQUAL_FATAL(spz_plan_desks(plan), spz_plan_desks(mirror));
    for (size_t i = 0; i < spz_plan_desks(plan); i++) {
        const spz_stage_desk *desk = spz_plan_desk(plan, i);
        bool found = false;
        for (size_t j = 0; j < spz_plan_desks(mirror); j++) {
            const spz_stage_desk *other = spz_plan_desk(mirror, j);
            found = found || (desk->section == other->section && desk->number == other->number &&
                              fabs(desk->x + other->x) < 1e-6 && fabs(desk->y - other->y) < 1e-6);
        }
        CU_ASSERT(found);
    }
    spz_plan_free(plan);
    spz_plan_free(mirror);
    spz_settings_free(settings);
}

static void basses_stand_where_the_house_wants_them(void)
{
    spz_settings *settings = evening_settings(
        "[arrangement left]\norder = Vn I, Db, Vc, Va, Vn II\n"
        "[arrangement back]\norder = Vn I, Vc, Va, Vn II\nbasses = along the back\n"
        "[arrangement firsts]\norder = Vn I, Vn II, Va, Vc\nbasses = behind first violins\n");
    static const struct {
        const char *name;
        double from, to;
    } wanted[] = {{"left", -10, -1}, {"back", -0.5, 0.5}, {"firsts", -10, -2}};
    for (size_t a = 0; a < COUNT(wanted); a++) {
        spz_plan *plan = plan_of(settings, wanted[a].name, false);
        double sum = 0;
        int players = 0;
        for (size_t i = 0; i < spz_plan_desks(plan); i++)
            if (spz_plan_desk(plan, i)->section == SPZ_DB) {
                sum += spz_plan_desk(plan, i)->x * spz_plan_desk(plan, i)->players;
                players += spz_plan_desk(plan, i)->players;
            }
        CU_ASSERT_EQUAL(players, 6);
        CU_ASSERT(sum / players >= wanted[a].from && sum / players <= wanted[a].to);
        check_seats(plan);
        spz_plan_free(plan);
    }
    const char *names[SPZ_ARRANGEMENT_LIMIT];
    size_t count = 0;
    CU_ASSERT_EQUAL(spz_arrangements_list(settings, NULL, names, &count), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(count, 7);
    CU_ASSERT_STRING_EQUAL(names[0], standard[0]);
    CU_ASSERT_STRING_EQUAL(names[4], "left");
    spz_settings_free(settings);
}

static void three_violin_sections_share_all_violins(void)
{
    spz_plan *plan = plan_of(NULL, standard[0], true);
    CU_ASSERT_EQUAL(seated(plan, SPZ_VN1), 9);
    CU_ASSERT_EQUAL(seated(plan, SPZ_VN2), 9);
    CU_ASSERT_EQUAL(seated(plan, SPZ_VN3), 8);
    CU_ASSERT(order_is(spz_plan_order(plan), "Vn I, Vc, Va, Vn III, Vn II"));
    check_seats(plan);
    spz_plan_free(plan);
}

static void two_orchestras_mirror_each_other(void)
{
    spz_plan *plan = NULL, *one = plan_of(NULL, standard[2], false);
    spz_distance across, within, alone;
    CU_ASSERT_EQUAL_FATAL(spz_stage_plan_double(NULL, standard[2], false, NULL, &plan), SPZ_OK);
    static const int players[] = {14, 12, 10, 8, 6};
    for (size_t i = 0; i < COUNT(sections); i++)
        CU_ASSERT_EQUAL(spz_plan_players(plan, sections[i]), players[i]);
    for (size_t i = 0; i < spz_plan_desks(plan); i++) {
        const spz_stage_desk *desk = spz_plan_desk(plan, i);
        CU_ASSERT(desk->orchestra == 1 ? desk->x < 0 : desk->x > 0);
        bool found = false;
        for (size_t j = 0; j < spz_plan_desks(plan); j++) {
            const spz_stage_desk *other = spz_plan_desk(plan, j);
            found = found ||
                    (other->orchestra != desk->orchestra && other->section == desk->section && other->number == desk->number &&
                     fabs(other->x + desk->x) < 1e-9 && fabs(other->y - desk->y) < 1e-9);
        }
        CU_ASSERT(found);
    }
    check_seats(plan);
    CU_ASSERT(spz_plan_is_double(plan) && !spz_plan_is_double(one));
    CU_ASSERT(spz_plan_distance(plan, SPZ_VN1, SPZ_VN1, &across) && spz_plan_distance(plan, SPZ_VN1, SPZ_VN2, &within));
    CU_ASSERT(across.centre > within.centre);
    CU_ASSERT(!spz_plan_distance(one, SPZ_VN1, SPZ_VN1, &alone));
    spz_plan_free(plan);
    spz_plan_free(one);
}

static void risers_lift_the_third_row_and_those_behind(void)
{
    spz_settings *settings = evening_settings("[stage]\nriser = 0.2\n");
    spz_plan *flat = plan_of(NULL, standard[0], false), *raised = plan_of(settings, standard[0], false);
    double highest = 0;
    for (size_t i = 0; i < spz_plan_desks(raised); i++) {
        const spz_stage_desk *desk = spz_plan_desk(raised, i);
        CU_ASSERT(desk->z >= 0);
        if (desk->number == 1 && desk->section != SPZ_DB)
            CU_ASSERT_DOUBLE_EQUAL(desk->z, 0, 1e-12);
        highest = fmax(highest, desk->z);
        CU_ASSERT_DOUBLE_EQUAL(spz_plan_desk(flat, i)->z, 0, 1e-12);
    }
    CU_ASSERT(highest >= 0.2);
    spz_plan_free(flat);
    spz_plan_free(raised);
    spz_settings_free(settings);
}

static void a_plan_asked_for_without_memory_says_so(void)
{
    spz_plan *plan = NULL;
    spz_status status = SPZ_NO_MEMORY;
    long requests = 0;
    while (status == SPZ_NO_MEMORY && requests < 500) {
        memory_starve_after(++requests);
        status = spz_stage_plan(NULL, standard[0], false, NULL, &plan);
        memory_starve_after(0);
        CU_ASSERT((status == SPZ_OK) == (plan != NULL));
    }
    CU_ASSERT_EQUAL(status, SPZ_OK);
    CU_ASSERT(requests > 2);
    spz_plan_free(plan);
}

static const struct Statement statements[] = {
    STATEMENT(every_player_has_a_seat_of_their_own),
    STATEMENT(an_orchestra_of_any_strength_is_seated_whole_or_refused),
    STATEMENT(four_players_are_seated_whole_or_refused),
    STATEMENT(the_front_desk_is_nearest_to_the_podium_and_rows_are_a_desk_apart),
    STATEMENT(sections_stand_from_house_left_to_right_as_the_order_says),
    STATEMENT(a_wider_stage_never_lowers_delays),
    STATEMENT(opposed_violins_sit_farther_apart_than_violins_together),
    STATEMENT(the_farther_back_a_listener_sits_the_smaller_the_angle),
    STATEMENT(warm_air_carries_sound_faster),
    STATEMENT(an_unknown_seating_is_refused_by_name),
    STATEMENT(a_mirrored_order_mirrors_every_seat),
    STATEMENT(basses_stand_where_the_house_wants_them),
    STATEMENT(three_violin_sections_share_all_violins),
    STATEMENT(two_orchestras_mirror_each_other),
    STATEMENT(risers_lift_the_third_row_and_those_behind),
    STATEMENT(a_plan_asked_for_without_memory_says_so),
};

void suite_stage_layout(void)
{
    suite_of("stage: desks", statements, COUNT(statements));
}
