/* The rehearsal sheet: who is called, how long it lasts, what to listen for. */
#include "advice/rehearsal.h"
#include "support/scores/evening.h"
#include "support/scores/rehearsal.h"
#include "support/suite.h"
#include "wording/papers/rehearsal_words.h"
#include <stdio.h>
#include <string.h>

static Evening evening;
static Tempo tempos[2];

/* A hundred bars of four crotchets: a second a crotchet, from bar 51 on half a second. */
static void begin(void)
{
    evening_begin(&evening, 100);
    tempos[0] = (Tempo){0, 60, true};
    tempos[1] = (Tempo){(Ticks)50 * 16, 120, true};
    evening.movement.tempos = tempos;
    evening.movement.tempo_count = 2;
}

static RehearsalPlan planned(void)
{
    RehearsalPlan plan;
    spz_movement_reading reading = {&evening.movement, &evening.map, &evening.findings, NULL};
    CU_ASSERT_EQUAL_FATAL(rehearsal_plan(&reading, NULL, &SPZ_SHEET_USUAL, &plan), SPZ_OK);
    return plan;
}

static void a_passage_lasts_as_long_as_its_bars_at_the_tempo_in_force(void)
{
    begin();
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 11, 15, 0.9); /* 5 bars of 4 s */
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 49, 52, 0.9); /* 2 of 4 s, 2 of 2 s */
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 61, 64, 0.9); /* 4 of 2 s */
    RehearsalPlan plan = planned();
    CU_ASSERT_EQUAL_FATAL(plan.items.count, 3);
    CU_ASSERT_DOUBLE_EQUAL(plan.items.at[0].seconds, 20, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(plan.items.at[1].seconds, 12, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(plan.items.at[2].seconds, 8, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(plan.items.at[2].rate, 120, 1e-9);
    CU_ASSERT_EQUAL(plan.calls.count, 1);
    CU_ASSERT_DOUBLE_EQUAL(plan.calls.at[0].seconds, 40, 1e-9);
    CU_ASSERT_TRUE(plan.tempo_given);
    rehearsal_free(&plan);
    evening_end(&evening);
}

/* Violas and cellos have more to rehearse than the violins; within each call the longest comes first. */
static void who_is_called_for_the_same_passages_is_called_once_for_the_most_first(void)
{
    begin();
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 1, 2, 0.9);
    evening_passage(&evening, SPZ_IMITATION, SPZ_VA, SPZ_VC, 3, 6, 0.9);
    evening_passage(&evening, SPZ_HOCKET, SPZ_VN2, SPZ_VN1, 7, 9, 0.9);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VA, SPZ_VC, 5, 14, 0.9);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VA, SPZ_DB, 20, 21, 0.3); /* marginal: not for a rehearsal */
    RehearsalPlan plan = planned();
    CU_ASSERT_EQUAL_FATAL(plan.calls.count, 2);
    const RehearsalItem *first = &plan.items.at[plan.calls.at[0].first], *last = &plan.items.at[plan.calls.at[1].first];
    CU_ASSERT_EQUAL(first->passage->sides[0].section, SPZ_VA);
    CU_ASSERT_EQUAL(first->passage->first, 4);
    CU_ASSERT_DOUBLE_EQUAL(plan.calls.at[0].seconds, 12 * 4, 1e-9); /* bars 5 and 6 once */
    CU_ASSERT_EQUAL(first[1].listen, LISTEN_ENTRIES);
    CU_ASSERT_EQUAL(last->listen, LISTEN_ONE_LINE);
    CU_ASSERT_EQUAL(last[1].listen, LISTEN_MATCH);
    CU_ASSERT_EQUAL(last->from, FROM_HALL);
    rehearsal_free(&plan);
    evening_end(&evening);
}

/* Of two that last as long the more exposed one. */
static void the_more_exposed_of_two_comes_first(void)
{
    begin();
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 1, 4, 0.9)->foreground = 0.3;
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 11, 14, 0.9)->foreground = 0.9;
    RehearsalPlan plan = planned();
    CU_ASSERT_EQUAL(plan.items.at[0].passage->first, 10);
    CU_ASSERT_DOUBLE_EQUAL(plan.items.at[0].exposure, 0.81, 1e-9);
    rehearsal_free(&plan);
    evening_end(&evening);
}

static void what_the_conductor_takes_out_is_not_rehearsed(void)
{
    begin();
    spz_passage *passage = evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 1, 4, 0.9);
    passage->ruling = (spz_ruling){SPZ_VETOED, 0.9, ""};
    passage->strength = 0;
    RehearsalPlan plan = planned();
    CU_ASSERT_EQUAL(plan.items.count, 0);
    CU_ASSERT_EQUAL(plan.calls.count, 0);
    rehearsal_free(&plan);
    evening_end(&evening);
}

static void who_enters_in_which_bar_is_told_in_order_of_entry(void)
{
    Rehearsal r = rehearse("time: 4/4  key: 0  tempo: q=96\n"
                           "part: Violin I\npart: Violin II\npart: Viola\npart: Violoncello; clef bass\n"
                           "Violin I:    R*2 | g5:e( a5 b5 c6) g5:q r | R | a5:e( b5 c6 d6) a5:q r | R | c5:w\n"
                           "Violin II:   R*2 | R | e5:e( f5 g5 a5) e5:q r | R | f5:e( g5 a5 b5) f5:q r | c5:w\n"
                           "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4\n"
                           "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3\n");
    Speaker speaker = {SPZ_ENGLISH, r.sections};
    Buffer words;
    buffer_init(&words);
    say_entry_bars(&words, &speaker, antiphony(&r, "Vn I", "Vn II"));
    CU_ASSERT_STRING_EQUAL(words.text, "Vn I in 3, 5; Vn II in 4, 6");
    buffer_free(&words);
    rehearsal_end(&r);
}

static const struct Statement statements[] = {
    STATEMENT(a_passage_lasts_as_long_as_its_bars_at_the_tempo_in_force),
    STATEMENT(who_is_called_for_the_same_passages_is_called_once_for_the_most_first),
    STATEMENT(the_more_exposed_of_two_comes_first),
    STATEMENT(what_the_conductor_takes_out_is_not_rehearsed),
    STATEMENT(who_enters_in_which_bar_is_told_in_order_of_entry),
};

void suite_rehearsal_sheet(void)
{
    suite_of("rehearsal sheet", statements, COUNT(statements));
}
