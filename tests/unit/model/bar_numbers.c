/* Printed numbers: what the user says of the edition. Gould, Behind Bars (2011), on the numbering of upbeats and split bars. */
#include "model/bar_numbers.h"
#include "support/scores/score_text.h"
#include "support/suite.h"
#include <stdio.h>
#include <string.h>

/* The numbers of five bars under the rules. */
static const char *numbered(const char *const file[5], const BarRule *rules, size_t count)
{
    static char text[100];
    Bar bars[5];
    Arena arena;
    Movement movement = {.bars = bars, .bar_count = 5};
    memset(bars, 0, sizeof bars);
    arena_init(&arena);
    for (size_t i = 0; i < 5; i++)
        bars[i].number = file[i];
    CU_ASSERT_EQUAL_FATAL(bar_numbers_apply(&movement, rules, count, &arena), SPZ_OK);
    snprintf(text, sizeof text, "%s %s %s %s %s", bars[0].number, bars[1].number, bars[2].number, bars[3].number, bars[4].number);
    arena_release(&arena);
    return text;
}

static const char *const plain[5] = {"1", "2", "3", "4", "5"}, *const lettered[5] = {"1", "2", "2a", "3", ""};

static void first_says_what_the_first_bar_is(void)
{
    CU_ASSERT_STRING_EQUAL(numbered(plain, &(BarRule){BARS_FIRST, 0, 0}, 1), "0 1 2 3 4");
    CU_ASSERT_STRING_EQUAL(numbered(plain, &(BarRule){BARS_FIRST, 0, 101}, 1), "101 102 103 104 105");
}

static void joined_bars_have_one_number(void)
{
    CU_ASSERT_STRING_EQUAL(numbered(plain, &(BarRule){BARS_JOINED, 0, 3}, 1), "1 2 2 3 4");
    CU_ASSERT_STRING_EQUAL(numbered(plain, (const BarRule[]){{BARS_FIRST, 0, 0}, {BARS_JOINED, 0, 4}}, 2), "0 1 2 2 3");
}

static void a_pair_counts_from_its_bar_on(void)
{
    CU_ASSERT_STRING_EQUAL(numbered(plain, &(BarRule){BARS_NUMBER, 3, 10}, 1), "1 2 10 11 12");
}

static void numbers_that_are_no_plain_ones_stay(void)
{
    CU_ASSERT_STRING_EQUAL(numbered(lettered, &(BarRule){BARS_FIRST, 0, 0}, 1), "0 1 2a 2 ");
}

static const struct Statement statements[] = {
    STATEMENT(first_says_what_the_first_bar_is),
    STATEMENT(joined_bars_have_one_number),
    STATEMENT(a_pair_counts_from_its_bar_on),
    STATEMENT(numbers_that_are_no_plain_ones_stay),
};

void suite_bar_numbers(void) { suite_of("printed numbers of bars", statements, COUNT(statements)); }
