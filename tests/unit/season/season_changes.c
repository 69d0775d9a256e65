/* What a change of seating takes, and other orders of works. */
#include "season/planning/changeover.h"
#include "season/planning/work_orders.h"
#include "support/suite.h"
#include <math.h>
#include <string.h>

static const char opposed[] = "violins opposed, cellos inside left", mirrored[] = "violins opposed, violas inside left",
                  together[] = "violins together, cellos outside", violas_outside[] = "violins together, violas outside";
static const char *const all[] = {opposed, mirrored, together, violas_outside};

static spz_settings *house(void)
{
    spz_settings *settings;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    return settings;
}

static spz_plan *lay_out(const spz_settings *settings, const char *name, bool thirds)
{
    spz_plan *plan;
    CU_ASSERT_EQUAL_FATAL(spz_stage_plan(settings, name, thirds, NULL, &plan), SPZ_OK);
    return plan;
}

static Carried carried(const spz_settings *settings, const char *from, const char *to)
{
    ChangeRules rules;
    change_rules_read(settings, &rules);
    spz_plan *before = lay_out(settings, from, false), *after = lay_out(settings, to, false);
    Carried result = changeover_carried(before, after, &rules);
    spz_plan_free(before);
    spz_plan_free(after);
    return result;
}

static void nothing_is_carried_where_nothing_changes(void)
{
    spz_settings *settings = house();
    for (size_t i = 0; i < COUNT(all); i++) {
        Carried result = carried(settings, all[i], all[i]);
        CU_ASSERT_EQUAL(result.chairs, 0);
        CU_ASSERT_EQUAL(result.stands, 0);
    }
    spz_settings_free(settings);
}

static void a_change_takes_as_much_as_changing_back(void)
{
    spz_settings *settings = house();
    for (size_t i = 0; i < COUNT(all); i++)
        for (size_t j = 0; j < i; j++) {
            Carried there = carried(settings, all[i], all[j]), back = carried(settings, all[j], all[i]);
            CU_ASSERT_EQUAL(there.chairs, back.chairs);
            CU_ASSERT_EQUAL(there.stands, back.stands);
            CU_ASSERT_TRUE(there.chairs > 0 && there.stands > 0);
            CU_ASSERT_TRUE(there.chairs <= 14 + 12 + 10 + 8 + 6);
        }
    spz_settings_free(settings);
}

/* How many desks of the new layout are carried by name, after a change; and whether each name stands once. */
static int carried_by_name(const spz_settings *settings, const char *from, const char *to, bool *once)
{
    ChangeRules rules;
    spz_desk_move desks[100], struck[100];
    DeskMoves moves = {.desks = desks, .struck = struck};
    int count = 0;
    change_rules_read(settings, &rules);
    spz_plan *before = lay_out(settings, from, false), *after = lay_out(settings, to, false);
    CU_ASSERT_FATAL(spz_plan_desks(after) <= COUNT(desks));
    changeover_desks(before, after, &rules, &moves);
    *once = true;
    for (size_t i = 0; i < spz_plan_desks(after); i++) {
        count += !desks[i].stays;
        for (size_t k = 0; k < i; k++)
            *once = *once && (desks[k].section != desks[i].section || desks[k].number != desks[i].number);
    }
    spz_plan_free(before);
    spz_plan_free(after);
    return count;
}

static void as_many_desks_are_carried_by_name_as_stands(void)
{
    spz_settings *settings = house();
    const char *const two[] = {together, opposed};
    for (size_t i = 0; i < COUNT(two); i++)
        for (size_t k = 0; k < COUNT(two); k++) {
            bool once;
            CU_ASSERT_EQUAL(carried_by_name(settings, two[i], two[k], &once), carried(settings, two[i], two[k]).stands);
            CU_ASSERT_TRUE(once);
        }
    spz_settings_free(settings);
}

static void the_more_a_desk_may_be_off_the_less_is_carried(void)
{
    static const char *const near[] = {"0", "0.2", "0.5", "1", "2"};
    spz_settings *settings = house();
    int before = 1000;
    for (size_t i = 0; i < COUNT(near); i++) {
        CU_ASSERT_EQUAL(spz_settings_set(settings, "concert.near", near[i], NULL), SPZ_OK);
        int stands = carried(settings, together, opposed).stands;
        CU_ASSERT_TRUE(stands <= before);
        before = stands;
    }
    spz_settings_free(settings);
}

/* 28 chairs of 15 seconds and 14 stands of 20 by four people are 175 seconds; a minute to settle: counted by hand. */
static void minutes_are_those_of_the_crew(void)
{
    spz_settings *settings = house();
    Carried result = carried(settings, together, opposed);
    double by_hand = 1 + (result.chairs * 15.0 + result.stands * 20.0) / 4 / 60;
    CU_ASSERT_DOUBLE_EQUAL(result.minutes, by_hand, 1e-9);
    CU_ASSERT_EQUAL(spz_settings_set(settings, "concert.crew", "8", NULL), SPZ_OK);
    CU_ASSERT_DOUBLE_EQUAL(carried(settings, together, opposed).minutes, 1 + (by_hand - 1) / 2, 1e-9);
    spz_settings_free(settings);
}

static const spz_section_move *move_of(const spz_section_move *moves, size_t count, spz_section section)
{
    for (size_t i = 0; i < count; i++)
        if (moves[i].section == section)
            return &moves[i];
    return NULL;
}

static void the_seconds_go_to_the_other_side_and_the_firsts_stay(void)
{
    spz_settings *settings = house();
    spz_plan *before = lay_out(settings, together, false), *after = lay_out(settings, opposed, false);
    spz_section_move moves[SPZ_SECTION_COUNT];
    size_t count = changeover_moves(before, after, moves);
    const spz_section_move *seconds = move_of(moves, count, SPZ_VN2);
    CU_ASSERT_PTR_NOT_NULL_FATAL(seconds);
    CU_ASSERT_EQUAL(seconds->from, SPZ_PLACE_INNER_LEFT);
    CU_ASSERT_EQUAL(seconds->to, SPZ_PLACE_OUTER_RIGHT);
    CU_ASSERT_EQUAL(seconds->players, 12);
    CU_ASSERT_PTR_NULL(move_of(moves, count, SPZ_VN1));
    CU_ASSERT_PTR_NOT_NULL(move_of(moves, count, SPZ_VC));
    spz_plan_free(before);
    spz_plan_free(after);
    spz_settings_free(settings);
}

static void a_house_may_forbid_a_change_or_find_it_too_long(void)
{
    spz_settings *settings = house();
    ChangeRules rules;
    Carried work = {28, 14, 4}, long_work = {28, 14, 25};
    change_rules_read(settings, &rules);
    CU_ASSERT_EQUAL(changeover_price(&rules, SPZ_BEFORE_CONCERT, &long_work), 0);
    CU_ASSERT_EQUAL(changeover_price(&rules, SPZ_AT_INTERVAL, &work), 100);
    CU_ASSERT_EQUAL(changeover_price(&rules, SPZ_AT_INTERVAL, &long_work), CONCERT_BANNED);
    CU_ASSERT_EQUAL(changeover_price(&rules, SPZ_BETWEEN_WORKS, &work), 1400); /* 10 points and 4 minutes */
    CU_ASSERT_EQUAL(changeover_price(&rules, SPZ_BETWEEN_MOVEMENTS, &work), CONCERT_BANNED);
    CU_ASSERT_EQUAL(spz_settings_set(settings, "concert.longest wait", "0", NULL), SPZ_OK);
    change_rules_read(settings, &rules);
    CU_ASSERT_EQUAL(changeover_price(&rules, SPZ_BETWEEN_WORKS, &work), CONCERT_BANNED); /* nobody waits at all */
    CU_ASSERT_EQUAL(changeover_price(&rules, SPZ_BEFORE_CONCERT, &long_work), 0);
    CU_ASSERT_EQUAL(spz_settings_set(settings, "concert.longest wait", "6", NULL), SPZ_OK);
    CU_ASSERT_EQUAL(spz_settings_set(settings, "concert.change between movements", "yes", NULL), SPZ_OK);
    CU_ASSERT_EQUAL(spz_settings_set(settings, "concert.change between works", "no", NULL), SPZ_OK);
    change_rules_read(settings, &rules);
    CU_ASSERT_EQUAL(changeover_price(&rules, SPZ_BETWEEN_MOVEMENTS, &work), 4400);
    CU_ASSERT_EQUAL(changeover_price(&rules, SPZ_BETWEEN_WORKS, &work), CONCERT_BANNED);
    spz_settings_free(settings);
}

/* Three works of a half: the first and the last want one seating, the middle one the other; changes between works cost 2. */
static void an_order_with_like_beside_like_is_found(void)
{
    ConcertStep steps[3] = {{SPZ_BEFORE_CONCERT, {0, 900}, 3}, {SPZ_BETWEEN_WORKS, {900, 0}, 3}, {SPZ_BETWEEN_WORKS, {0, 900}, 3}};
    WorkSteps works[3] = {{0, 1, false}, {1, 1, false}, {2, 1, false}};
    ConcertTask task = {.steps = steps, .count = 3, .seatings = 2, .usual = 0};
    ConcertChoice choice;
    OtherOrder other;
    int seatings[3];
    bool possible;
    for (int gap = 0; gap < SPZ_GAP_COUNT; gap++)
        task.price[gap][0][1] = task.price[gap][1][0] = gap == SPZ_BEFORE_CONCERT ? 0 : 200;
    CU_ASSERT_EQUAL(concert_choose(&task, CONCERT_ANY_CHANGES, seatings, &choice, &possible), SPZ_OK);
    CU_ASSERT_EQUAL(choice.changes, 2);
    CU_ASSERT_EQUAL(orders_find(&task, works, 3, &choice, &other), SPZ_OK);
    CU_ASSERT_TRUE_FATAL(other.found);
    CU_ASSERT_EQUAL(other.choice.changes, 1);
    CU_ASSERT_EQUAL(other.choice.loss, 0);
    CU_ASSERT_TRUE(other.works[1] != 1); /* the odd one stands first or last */
}

static void works_are_never_moved_across_the_interval(void)
{
    ConcertStep steps[3] = {{SPZ_BEFORE_CONCERT, {0, 900}, 3}, {SPZ_AT_INTERVAL, {900, 0}, 3}, {SPZ_BETWEEN_WORKS, {0, 900}, 3}};
    WorkSteps works[3] = {{0, 1, true}, {1, 1, false}, {2, 1, false}};
    ConcertTask task = {.steps = steps, .count = 3, .seatings = 2, .usual = 0};
    ConcertChoice choice;
    OtherOrder other;
    int seatings[3];
    bool possible;
    for (int gap = 0; gap < SPZ_GAP_COUNT; gap++)
        task.price[gap][0][1] = task.price[gap][1][0] = 200;
    CU_ASSERT_EQUAL(concert_choose(&task, CONCERT_ANY_CHANGES, seatings, &choice, &possible), SPZ_OK);
    CU_ASSERT_EQUAL(orders_find(&task, works, 3, &choice, &other), SPZ_OK);
    CU_ASSERT_TRUE_FATAL(other.found); /* the last two exchanged */
    CU_ASSERT_EQUAL(other.first, 1);
    CU_ASSERT_EQUAL(other.works[0], 2);
    CU_ASSERT_EQUAL(other.works[1], 1);
    CU_ASSERT_EQUAL(other.choice.changes, 1);
}

static int chairs_on(const spz_plan *plan)
{
    int chairs = 0;
    for (size_t i = 0; i < spz_plan_desks(plan); i++)
        chairs += spz_plan_desk(plan, i)->players;
    return chairs;
}

/* Every old desk stays, moves or is struck, every new one stays, moved or was carried on; and what is carried for each is the sum told. */
static void check_reconciled(const spz_plan *before, const spz_plan *after, const ChangeRules *rules)
{
    spz_desk_move desks[DESKS_MOST], struck[DESKS_MOST];
    DeskMoves moves = {.desks = desks, .struck = struck};
    Carried told = changeover_carried(before, after, rules);
    int chairs = 0, stands = 0, from_old = 0, struck_chairs = 0, struck_stands = 0, store_stands = 0;
    changeover_desks(before, after, rules, &moves);
    for (size_t i = 0; i < spz_plan_desks(after); i++) {
        chairs += desks[i].chairs;
        stands += desks[i].stands;
        from_old += desks[i].fate != SPZ_DESK_CARRIED_ON;
        store_stands += desks[i].fate == SPZ_DESK_CARRIED_ON;
        CU_ASSERT_EQUAL(desks[i].stays, desks[i].fate == SPZ_DESK_STAYS);
        if (desks[i].stays)
            CU_ASSERT(hypot(desks[i].x - desks[i].from_x, desks[i].y - desks[i].from_y) <= rules->near + 1e-9);
        for (size_t k = 0; k < i; k++) /* no old desk goes to two places */
            CU_ASSERT(desks[i].fate == SPZ_DESK_CARRIED_ON || desks[k].fate == SPZ_DESK_CARRIED_ON || desks[i].from_section != desks[k].from_section ||
                      desks[i].from_number != desks[k].from_number || desks[i].from_orchestra != desks[k].from_orchestra);
    }
    for (size_t i = 0; i < moves.struck_count; i++) {
        struck_chairs += struck[i].chairs;
        struck_stands += struck[i].stands;
        CU_ASSERT_EQUAL(struck[i].fate, SPZ_DESK_STRUCK);
    }
    CU_ASSERT(chairs == told.chairs && stands == told.stands);
    CU_ASSERT(struck_chairs == moves.struck_chairs && struck_stands == moves.struck_stands && store_stands == moves.store_stands);
    CU_ASSERT_EQUAL(from_old + struck_stands, (int)spz_plan_desks(before));
    CU_ASSERT_EQUAL(chairs_on(before) - struck_chairs + moves.store_chairs, chairs_on(after));
}

static void every_desk_of_both_layouts_is_accounted_for_and_the_sums_are_those_told(void)
{
    ChangeRules rules;
    spz_settings *settings = house(), *fewer = house();
    static const char *const keys[] = {"players.first violins", "players.second violins", "players.violas", "players.cellos", "players.basses"};
    static const char *const sizes[][5] = {{"13", "11", "9", "7", "5"}, {"8", "7", "6", "4", "3"}, {"16", "14", "12", "10", "8"}, {"7", "12", "3", "9", "1"}};
    change_rules_read(settings, &rules);
    for (size_t size = 0; size < COUNT(sizes); size++) {
        for (size_t k = 0; k < COUNT(keys); k++)
            CU_ASSERT_EQUAL_FATAL(spz_settings_set(fewer, keys[k], sizes[size][k], NULL), SPZ_OK);
        for (size_t i = 0; i < COUNT(all); i++)
            for (size_t j = 0; j < COUNT(all); j++) {
                spz_plan *before = lay_out(settings, all[i], false), *after = lay_out(fewer, all[j], j == 1), *two = NULL;
                check_reconciled(before, after, &rules);
                check_reconciled(after, before, &rules);
                CU_ASSERT_EQUAL_FATAL(spz_stage_plan_double(settings, all[j], false, NULL, &two), SPZ_OK);
                check_reconciled(before, two, &rules);
                spz_plan_free(before);
                spz_plan_free(after);
                spz_plan_free(two);
            }
    }
    spz_settings_free(settings);
    spz_settings_free(fewer);
}

static const struct Statement statements[] = {
    STATEMENT(nothing_is_carried_where_nothing_changes),
    STATEMENT(a_change_takes_as_much_as_changing_back),
    STATEMENT(as_many_desks_are_carried_by_name_as_stands),
    STATEMENT(the_more_a_desk_may_be_off_the_less_is_carried),
    STATEMENT(minutes_are_those_of_the_crew),
    STATEMENT(the_seconds_go_to_the_other_side_and_the_firsts_stay),
    STATEMENT(a_house_may_forbid_a_change_or_find_it_too_long),
    STATEMENT(an_order_with_like_beside_like_is_found),
    STATEMENT(works_are_never_moved_across_the_interval),
    STATEMENT(every_desk_of_both_layouts_is_accounted_for_and_the_sums_are_those_told),
};

void suite_season_changes(void)
{
    suite_of("changes of seating", statements, COUNT(statements));
}
