/* Orchestras on stages that are too small for whole arcs: what fits, what would, and that fewer players never need more. */
#include "spezzato/laying.h"
#include "spezzato/stage.h"
#include "support/scores/evening.h"
#include "support/suite.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { SECTIONS = 5 };
static const char *const orders[] = {"violins opposed, cellos inside left", "violins opposed, violas inside left",
                                     "violins together, cellos outside", "violins together, violas outside"};
static const char *const keys[SECTIONS] = {"players.first violins", "players.second violins", "players.violas", "players.cellos", "players.basses"};

typedef struct Dice {
    unsigned seed;
} Dice;

static int throw(Dice *dice, int least, int most)
{
    dice->seed = dice->seed * 1664525u + 1013904223u;
    return least + (int)((dice->seed >> 16) % (unsigned)(most - least + 1));
}

static void set(spz_settings *settings, const char *name, double value)
{
    char text[32];
    snprintf(text, sizeof text, "%.2f", value);
    CU_ASSERT_EQUAL_FATAL(spz_settings_set(settings, name, text, NULL), SPZ_OK);
}

static void seat(spz_settings *settings, const int players[SECTIONS])
{
    for (int i = 0; i < SECTIONS; i++)
        set(settings, keys[i], players[i]);
}

static void stage_of(spz_settings *settings, double width, double depth)
{
    set(settings, "stage.width", width);
    set(settings, "stage.depth", depth);
}

static spz_settings *house(void)
{
    spz_settings *settings = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    return settings;
}

static spz_plan *plan_of(const spz_settings *settings, const char *order)
{
    spz_plan *plan = NULL;
    return spz_stage_plan(settings, order, false, NULL, &plan) == SPZ_OK ? plan : NULL;
}

/* The least stage as asked of a plan on one that is large enough for anybody. */
typedef struct Least {
    double width, depth;
} Least;

static Least least_of(spz_settings *settings, const char *order, double width, double depth)
{
    Least least = {0, 0};
    stage_of(settings, 60, depth);
    spz_plan *plan = plan_of(settings, order);
    if (plan)
        least.width = spz_plan_least_width(plan);
    spz_plan_free(plan);
    stage_of(settings, width, 40);
    plan = plan_of(settings, order);
    if (plan)
        least.depth = spz_plan_least_depth(plan);
    spz_plan_free(plan);
    return least;
}

static void throw_players(Dice *dice, int players[SECTIONS])
{
    for (int i = 0; i < SECTIONS; i++)
        players[i] = throw(dice, i == SECTIONS - 1 ? 0 : 1, 20);
}

static void fewer_players_never_need_a_larger_stage(void)
{
    Dice dice = {20261128};
    spz_settings *settings = house();
    int compared = 0, less = 0;
    for (size_t trial = 0; trial < 30; trial++) {
        int players[SECTIONS];
        const char *order = orders[trial % COUNT(orders)];
        double width = throw(&dice, 9, 24), depth = throw(&dice, 6, 14);
        throw_players(&dice, players);
        CU_ASSERT_EQUAL(spz_settings_set(settings, "stage.aisle", trial % 2 ? "1" : "0", NULL), SPZ_OK);
        Least before = {0, 0};
        for (int step = 0; step < 6; step++) {
            seat(settings, players);
            Least now = least_of(settings, order, width, depth);
            CU_ASSERT(now.width > 0 && now.depth > 0);
            if (step) {
                CU_ASSERT(now.width <= before.width && now.depth <= before.depth);
                less += now.width < before.width || now.depth < before.depth;
                compared++;
            }
            before = now;
            for (int i = 0; i < SECTIONS; i++) /* some sections lose one or two players */
                players[i] -= players[i] > 2 ? throw(&dice, 0, 2) : 0;
        }
    }
    CU_ASSERT(compared == 150 && less > compared / 2);
    spz_settings_free(settings);
}

/* As far as people walk: between the chairs of neighbours, on stages with room and between walls. */
static void an_aisle_that_is_asked_for_is_kept_clear(void)
{
    static const char *const widths[] = {"14", "18", "30"}, *const aisles[] = {"0", "0.9", "1.2"};
    double needs[COUNT(aisles)] = {0};
    spz_settings *settings = house();
    for (size_t w = 0; w < COUNT(widths); w++)
        for (size_t o = 0; o < COUNT(orders); o++)
            for (size_t a = 0; a < COUNT(aisles); a++) {
                spz_plan *plan = NULL;
                spz_laying *laying = NULL;
                spz_way between;
                CU_ASSERT_EQUAL(spz_settings_set(settings, "stage.width", widths[w], NULL), SPZ_OK);
                CU_ASSERT_EQUAL(spz_settings_set(settings, "stage.aisle", aisles[a], NULL), SPZ_OK);
                CU_ASSERT_EQUAL_FATAL(spz_stage_plan(settings, orders[o], false, NULL, &plan), SPZ_OK);
                CU_ASSERT_EQUAL_FATAL(spz_laying_make(plan, NULL, settings, &laying), SPZ_OK);
                for (size_t way = 0; spz_laying_way(laying, way, &between); way++)
                    CU_ASSERT(a == 0 || between.clear >= spz_plan_aisle(plan) - 0.005);
                needs[a] += spz_plan_least_width(plan);
                spz_laying_free(laying);
                spz_plan_free(plan);
            }
    CU_ASSERT(needs[0] < needs[1] && needs[1] < needs[2]); /* they take room */
    spz_settings_free(settings);
}

static void the_least_stage_holds_them_and_a_hundredth_less_does_not(void)
{
    Dice dice = {4};
    spz_settings *settings = house();
    int tried = 0;
    for (size_t trial = 0; trial < 20; trial++) {
        int players[SECTIONS];
        const char *order = orders[trial % COUNT(orders)];
        double depth = throw(&dice, 5, 14);
        throw_players(&dice, players);
        seat(settings, players);
        double width = least_of(settings, order, 18, depth).width;
        if (width < 6.01) /* the settings allow no stage under 6 m */
            continue;
        tried++;
        stage_of(settings, width, depth);
        spz_plan *plan = plan_of(settings, order);
        CU_ASSERT_PTR_NOT_NULL(plan);
        spz_plan_free(plan);
        stage_of(settings, width - 0.01, depth);
        plan = plan_of(settings, order);
        CU_ASSERT_PTR_NULL(plan);
        spz_plan_free(plan);
    }
    CU_ASSERT(tried > 13);
    spz_settings_free(settings);
}

static void a_larger_stage_holds_whatever_a_smaller_one_does(void)
{
    Dice dice = {9};
    spz_settings *settings = house();
    int fitted = 0, refused = 0;
    for (size_t trial = 0; trial < 80; trial++) {
        int players[SECTIONS];
        bool held = false;
        throw_players(&dice, players);
        seat(settings, players);
        for (double side = 6; side <= 16; side += 0.5) {
            stage_of(settings, side, 0.5 * side + 2);
            spz_plan *plan = plan_of(settings, orders[trial % COUNT(orders)]);
            CU_ASSERT(plan || !held);
            held = held || plan;
            fitted += plan != NULL;
            refused += plan == NULL;
            spz_plan_free(plan);
        }
    }
    CU_ASSERT(fitted > 200 && refused > 200);
    spz_settings_free(settings);
}

/* All between the walls, nobody on another's chair, sections in their order around the podium. */
static void check_seats(const spz_plan *plan)
{
    double half = spz_plan_stage_width(plan) / 2, back = spz_plan_stage_depth(plan) - spz_plan_front(plan);
    for (size_t i = 0; i < spz_plan_desks(plan); i++) {
        const spz_stage_desk *desk = spz_plan_desk(plan, i);
        double reach = desk->section == SPZ_DB ? 0.9 : 0.7;
        CU_ASSERT(fabs(desk->x) + reach <= half + 1e-6 && desk->y + reach <= back + 1e-6 && desk->y >= -1e-9);
        for (size_t j = 0; j < i; j++) {
            const spz_stage_desk *other = spz_plan_desk(plan, j);
            CU_ASSERT(hypot(desk->x - other->x, desk->y - other->y) > 1.1);
        }
    }
}

static void check_order(const spz_plan *plan)
{
    spz_order order = spz_plan_order(plan);
    double before = -1;
    for (int s = 0; s < order.count; s++) {
        double first = 4, last = 0;
        for (size_t i = 0; i < spz_plan_desks(plan); i++) {
            const spz_stage_desk *desk = spz_plan_desk(plan, i);
            double angle = atan2(desk->y, -desk->x);
            if (desk->section == order.sections[s]) {
                first = fmin(first, angle);
                last = fmax(last, angle);
            }
        }
        CU_ASSERT(first > before);
        before = last;
    }
}

static void rows_that_the_walls_cut_seat_everybody_in_order(void)
{
    Dice dice = {77};
    spz_settings *settings = house();
    int cut = 0, moved = 0;
    for (size_t trial = 0; trial < 200; trial++) {
        int players[SECTIONS], seated = 0, all = 0;
        for (int i = 0; i < SECTIONS; i++)
            all += players[i] = throw(&dice, 1, 20);
        seat(settings, players);
        stage_of(settings, throw(&dice, 7, 18), throw(&dice, 5, 12));
        spz_plan *plan = plan_of(settings, orders[trial % COUNT(orders)]);
        if (plan && spz_plan_is_cut(plan)) {
            for (size_t i = 0; i < spz_plan_desks(plan); i++)
                seated += spz_plan_desk(plan, i)->players;
            CU_ASSERT_EQUAL(seated, all);
            check_seats(plan);
            check_order(plan);
            cut++;
            moved += spz_plan_basses_moved(plan);
        }
        spz_plan_free(plan);
    }
    CU_ASSERT(cut > 20 && moved > 0);
    spz_settings_free(settings);
}

static void a_mirrored_order_is_cut_as_a_mirror(void)
{
    spz_settings *settings = evening_settings("[stage]\nwidth = 10.5\ndepth = 11\n[arrangement mirrored]\norder = Vn II, Va, Vc, Vn I\n");
    spz_plan *plan = plan_of(settings, orders[0]), *mirror = plan_of(settings, "mirrored");
    CU_ASSERT_FATAL(plan && mirror && spz_plan_is_cut(plan) && spz_plan_desks(plan) == spz_plan_desks(mirror));
    for (size_t i = 0; i < spz_plan_desks(plan); i++) {
        const spz_stage_desk *desk = spz_plan_desk(plan, i);
        bool found = false;
        for (size_t j = 0; j < spz_plan_desks(mirror); j++) {
            const spz_stage_desk *other = spz_plan_desk(mirror, j);
            found = found || (desk->section == other->section && desk->number == other->number && fabs(desk->x + other->x) < 1e-6 &&
                              fabs(desk->y - other->y) < 1e-6);
        }
        CU_ASSERT(found);
    }
    spz_plan_free(plan);
    spz_plan_free(mirror);
    spz_settings_free(settings);
}

static void hear(void *context, const spz_message *message)
{
    snprintf(context, 512, "%s", message->text);
}

static void a_refusal_names_players_width_and_depth_that_would_do(void)
{
    spz_settings *settings = house();
    char said[512] = "";
    const spz_sink sink = {hear, said};
    int players[SECTIONS] = {14, 12, 10, 8, 6}, fewer[SECTIONS] = {0};
    double width = 0, depth = 0;
    spz_plan *plan = NULL;
    stage_of(settings, 8, 9);
    CU_ASSERT_EQUAL(spz_stage_plan(settings, orders[2], false, &sink, &plan), SPZ_BAD_SETTINGS);
    CU_ASSERT_PTR_NOT_NULL(strstr(said, "14-12-10-8-6 players do not fit on a stage of 8.00 m by 9.00 m, not even with the basses along the back; "));
    const char *ways = strstr(said, "back; ");
    CU_ASSERT_PTR_NOT_NULL_FATAL(ways);
    CU_ASSERT_EQUAL_FATAL(sscanf(ways, "back; %d-%d-%d-%d-%d players would fit; so would a stage %lf m wide, or one %lf m deep", &fewer[0], &fewer[1],
                                 &fewer[2], &fewer[3], &fewer[4], &width, &depth), 7);
    CU_ASSERT(fewer[0] < players[0] && width > 8 && depth > 9);
    stage_of(settings, width, 9);
    CU_ASSERT_EQUAL(spz_stage_plan(settings, orders[2], false, NULL, &plan), SPZ_OK);
    spz_plan_free(plan);
    stage_of(settings, 8, depth);
    CU_ASSERT_EQUAL(spz_stage_plan(settings, orders[2], false, NULL, &plan), SPZ_OK);
    spz_plan_free(plan);
    stage_of(settings, 8, 9);
    seat(settings, fewer);
    CU_ASSERT_EQUAL(spz_stage_plan(settings, orders[2], false, NULL, &plan), SPZ_OK);
    spz_plan_free(plan);
    spz_settings_free(settings);
}

static void cellos_take_more_room_than_violas_and_basses_more_than_cellos(void)
{
    spz_plan *plan = plan_of(NULL, orders[0]);
    CU_ASSERT_PTR_NOT_NULL_FATAL(plan);
    CU_ASSERT(spz_plan_desk_width(plan, SPZ_VC) > spz_plan_desk_width(plan, SPZ_VA));
    CU_ASSERT(spz_plan_desk_width(plan, SPZ_DB) > spz_plan_desk_width(plan, SPZ_VC));
    spz_plan_free(plan);
}

static const struct Statement statements[] = {
    STATEMENT(fewer_players_never_need_a_larger_stage),
    STATEMENT(an_aisle_that_is_asked_for_is_kept_clear),
    STATEMENT(the_least_stage_holds_them_and_a_hundredth_less_does_not),
    STATEMENT(a_larger_stage_holds_whatever_a_smaller_one_does),
    STATEMENT(rows_that_the_walls_cut_seat_everybody_in_order),
    STATEMENT(a_mirrored_order_is_cut_as_a_mirror),
    STATEMENT(a_refusal_names_players_width_and_depth_that_would_do),
    STATEMENT(cellos_take_more_room_than_violas_and_basses_more_than_cellos),
};

void suite_stage_room(void)
{
    suite_of("stage: what fits", statements, COUNT(statements));
}
