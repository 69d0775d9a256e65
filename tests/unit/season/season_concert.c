/* The choice of seatings for a concert against a search through every possible row of seatings, on random concerts. */
#include "season/planning/concert_choice.h"
#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { STEPS_MOST = 7, SEATINGS_MOST = 4, ROUNDS = 3000 };

/* A small generator of our own (xorshift64*, Marsaglia 2003 and Vigna 2016), so that a seed gives the same concerts everywhere. */
static uint64_t state;

static unsigned below(unsigned limit)
{
    state ^= state >> 12;
    state ^= state << 25;
    state ^= state >> 27;
    return (unsigned)((state * 2685821657736338717ull) >> 33) % limit;
}

static void draw_prices(ConcertTask *task)
{
    for (int gap = 0; gap < SPZ_GAP_COUNT; gap++) {
        bool banned = below(4) == 0;
        for (int from = 0; from < task->seatings; from++)
            for (int to = 0; to < task->seatings; to++)
                task->price[gap][from][to] = from == to ? 0 : banned || below(9) == 0 ? CONCERT_BANNED : (Hundredths)below(5) * 100;
    }
}

/* Few different figures, so that ties are frequent; some fixed seatings. */
static void draw_concert(ConcertTask *task, ConcertStep steps[STEPS_MOST])
{
    memset(task, 0, sizeof *task);
    task->steps = steps;
    task->count = 1 + below(STEPS_MOST);
    task->seatings = 1 + (int)below(SEATINGS_MOST);
    task->usual = (int)below((unsigned)task->seatings + 1) - 1;
    for (size_t i = 0; i < task->count; i++) {
        steps[i] = (ConcertStep){.gap = i == 0 ? SPZ_BEFORE_CONCERT : (spz_gap)(1 + below(SPZ_GAP_COUNT - 1)), .open = ~0u};
        for (int a = 0; a < task->seatings; a++)
            steps[i].loss[a] = (Hundredths)below(6) * 100;
        if (below(8) == 0)
            steps[i].open = 1u << below((unsigned)task->seatings);
    }
    draw_prices(task);
}

/* Counts through all rows of seatings like the wheels of a mileometer. */
static bool next_row(const ConcertTask *task, int *row)
{
    for (size_t i = task->count; i-- > 0;) {
        if (++row[i] < task->seatings)
            return true;
        row[i] = 0;
    }
    return false;
}

static bool search_all(const ConcertTask *task, int most, int *best_row, ConcertChoice *best)
{
    int row[STEPS_MOST] = {0};
    bool found = false;
    do {
        ConcertChoice choice;
        if (!concert_cost(task, row, &choice) || (most >= 0 && choice.changes > most))
            continue;
        if (!found || concert_compare(&choice, best) < 0) { /* rows come in the order of the list: the first of equals stays */
            memcpy(best_row, row, sizeof row);
            *best = choice;
            found = true;
        }
    } while (next_row(task, row));
    return found;
}

static bool agree(const ConcertTask *task, int most)
{
    int row[STEPS_MOST], searched_row[STEPS_MOST];
    ConcertChoice choice, searched;
    bool possible;
    if (concert_choose(task, most, row, &choice, &possible) != SPZ_OK)
        return false;
    if (search_all(task, most, searched_row, &searched) != possible)
        return false;
    if (!possible)
        return true;
    return concert_compare(&choice, &searched) == 0 && choice.loss == searched.loss && choice.changes == searched.changes &&
           memcmp(row, searched_row, task->count * sizeof *row) == 0;
}

static void the_choice_is_the_best_of_all_rows_of_seatings(void)
{
    uint64_t seed = (uint64_t)time(NULL) * 2654435761u + 1;
    const char *given = getenv("SPEZZATO_SEED");
    if (given)
        seed = strtoull(given, NULL, 10);
    printf("\n    random concerts from SPEZZATO_SEED=%llu\n", (unsigned long long)seed);
    state = seed ? seed : 1;
    size_t possible = 0;
    for (int round = 0; round < ROUNDS; round++) {
        ConcertTask task;
        ConcertStep steps[STEPS_MOST];
        int row[STEPS_MOST];
        ConcertChoice choice;
        draw_concert(&task, steps);
        int most = (int)below(4) - 1;
        bool same = agree(&task, most);
        CU_ASSERT_TRUE(same);
        if (!same)
            printf("    round %d differs\n", round);
        possible += search_all(&task, most, row, &choice);
    }
    CU_ASSERT_TRUE(possible > ROUNDS / 2); /* the draw mostly gives concerts that can be played */
}

/* Two works, each best in a seating of its own; a change costs 3 points. */
static void two_works(ConcertTask *task, ConcertStep steps[2], Hundredths difference, spz_gap gap)
{
    memset(task, 0, sizeof *task);
    steps[0] = (ConcertStep){.gap = SPZ_BEFORE_CONCERT, .open = 3, .loss = {0, difference}};
    steps[1] = (ConcertStep){.gap = gap, .open = 3, .loss = {difference, 0}};
    *task = (ConcertTask){.steps = steps, .count = 2, .seatings = 2, .usual = 0};
    for (int g = 0; g < SPZ_GAP_COUNT; g++)
        task->price[g][0][1] = task->price[g][1][0] = g == SPZ_BETWEEN_WORKS ? CONCERT_BANNED : g == SPZ_BEFORE_CONCERT ? 0 : 300;
}

static void choose(const ConcertTask *task, int *row, ConcertChoice *choice)
{
    bool possible = false;
    CU_ASSERT_EQUAL(concert_choose(task, CONCERT_ANY_CHANGES, row, choice, &possible), SPZ_OK);
    CU_ASSERT_TRUE(possible);
}

static void a_change_at_the_interval_is_made_when_it_gains_more_than_it_costs(void)
{
    ConcertTask task;
    ConcertStep steps[2];
    ConcertChoice choice;
    int row[2];
    two_works(&task, steps, 301, SPZ_AT_INTERVAL);
    choose(&task, row, &choice);
    CU_ASSERT_EQUAL(row[0], 0);
    CU_ASSERT_EQUAL(row[1], 1);
    CU_ASSERT_EQUAL(choice.changes, 1);
    CU_ASSERT_EQUAL(choice.price, 300);
}

static void a_change_that_gains_just_its_price_is_left_out(void)
{
    ConcertTask task;
    ConcertStep steps[2];
    ConcertChoice choice;
    int row[2];
    two_works(&task, steps, 300, SPZ_AT_INTERVAL);
    choose(&task, row, &choice);
    CU_ASSERT_EQUAL(choice.changes, 0);
    CU_ASSERT_EQUAL(row[0], 0); /* and of the two the house's usual seating */
    CU_ASSERT_EQUAL(row[1], 0);
}

static void no_gain_buys_a_change_that_the_house_forbids(void)
{
    ConcertTask task;
    ConcertStep steps[2];
    ConcertChoice choice;
    int row[2];
    two_works(&task, steps, 1000000, SPZ_BETWEEN_WORKS);
    choose(&task, row, &choice);
    CU_ASSERT_EQUAL(choice.changes, 0);
    CU_ASSERT_EQUAL(choice.loss, 1000000);
}

static void fixed_seatings_across_a_forbidden_change_leave_no_way(void)
{
    ConcertTask task;
    ConcertStep steps[2];
    ConcertChoice choice;
    int row[2];
    bool possible = true;
    two_works(&task, steps, 100, SPZ_BETWEEN_WORKS);
    steps[0].open = 1;
    steps[1].open = 2;
    CU_ASSERT_EQUAL(concert_choose(&task, CONCERT_ANY_CHANGES, row, &choice, &possible), SPZ_OK);
    CU_ASSERT_FALSE(possible);
}

static void a_house_that_never_sets_up_afresh_begins_as_usual(void)
{
    ConcertTask task;
    ConcertStep steps[2];
    ConcertChoice choice;
    int row[2];
    two_works(&task, steps, 100, SPZ_BETWEEN_WORKS);
    steps[0].loss[0] = 5000;
    task.price[SPZ_BEFORE_CONCERT][0][1] = CONCERT_BANNED;
    choose(&task, row, &choice);
    CU_ASSERT_EQUAL(row[0], 0);
}

static void a_limit_on_changes_is_kept(void)
{
    ConcertTask task;
    ConcertStep steps[2];
    ConcertChoice choice;
    int row[2];
    bool possible = false;
    two_works(&task, steps, 5000, SPZ_AT_INTERVAL);
    CU_ASSERT_EQUAL(concert_choose(&task, 0, row, &choice, &possible), SPZ_OK);
    CU_ASSERT_TRUE(possible);
    CU_ASSERT_EQUAL(choice.changes, 0);
    CU_ASSERT_EQUAL(choice.loss, 5000);
}

static const struct Statement statements[] = {
    STATEMENT(the_choice_is_the_best_of_all_rows_of_seatings),
    STATEMENT(a_change_at_the_interval_is_made_when_it_gains_more_than_it_costs),
    STATEMENT(a_change_that_gains_just_its_price_is_left_out),
    STATEMENT(no_gain_buys_a_change_that_the_house_forbids),
    STATEMENT(fixed_seatings_across_a_forbidden_change_leave_no_way),
    STATEMENT(a_house_that_never_sets_up_afresh_begins_as_usual),
    STATEMENT(a_limit_on_changes_is_kept),
};

void suite_season_concert(void)
{
    suite_of("concert", statements, COUNT(statements));
}
