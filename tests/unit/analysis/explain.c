/* What is said about a bar, and that it agrees with what is reported there. */
#include "spezzato/explain.h"
#include "support/memory.h"
#include "support/scores/rehearsal.h"
#include "support/suite.h"
#include "wording/explain_words.h"
#include <string.h>

/* A figure answered twice by the seconds; the same figure far weaker between the violas, who accompany with it. */
static const char dialogue[] =
    "time: 4/4  key: 0  tempo: q=96\n"
    "part: Violin I\npart: Violin II\npart: Viola\npart: Violoncello; clef bass\n"
    "Violin I:    R*2 | g5:e( a5 b5 c6) g5:q r | R | a5:e( b5 c6 d6) a5:q r | R | c5:w\n"
    "Violin II:   R*2 | R | e5:e( f5 g5 a5) e5:q r | R | f5:e( g5 a5 b5) f5:q r | c5:w\n"
    "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4\n"
    "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3\n";

static spz_explanation *explained(const Rehearsal *r, const char *bar)
{
    spz_explanation *explanation = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_explanation_make(r->sections, bar, 12, &explanation), SPZ_OK);
    return explanation;
}

/* Whether its last sentence says that it was left out. */
static bool left_out_in_words(const Rehearsal *r, const spz_considered *item)
{
    Speaker speaker = {SPZ_ENGLISH, r->sections};
    Buffer words;
    buffer_init(&words);
    explain_fate(&speaker, spz_score_movement(r->score, 0), item, &words);
    bool says = words.length && !strncmp(words.text, "Left out: ", 10);
    buffer_free(&words);
    return says;
}

static void the_strongest_match_of_a_bar_is_the_passage_reported_there(void)
{
    Rehearsal r = rehearse(dialogue);
    const spz_passage *p = antiphony(&r, "Vn I", "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    spz_explanation *e = explained(&r, p->first_bar);
    const spz_considered *first = spz_explanation_at(e, 0);
    CU_ASSERT_PTR_NOT_NULL_FATAL(first);
    CU_ASSERT_EQUAL(first->fate, SPZ_REPORTED);
    CU_ASSERT_EQUAL(first->sides[0].section, SPZ_VN1);
    CU_ASSERT_EQUAL(first->sides[1].section, SPZ_VN2);
    CU_ASSERT_TRUE(first->lag.unit == SPZ_IN_BARS && first->lag.count.over == 1 && first->lag.count.under == 1);
    CU_ASSERT_EQUAL(first->change.steps, -2); /* a third lower */
    CU_ASSERT_FALSE(first->change.inverted);
    CU_ASSERT_EQUAL(first->tones, 10);
    CU_ASSERT_EQUAL(first->statements, 2);
    CU_ASSERT_DOUBLE_EQUAL(first->caller_aside, 1, 0.2); /* it rests under the answer */
    CU_ASSERT_TRUE(first->strength <= p->strength + 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(first->instead.strength, p->strength, 1e-9);
    CU_ASSERT_EQUAL(first->instead.kind, p->kind);
    spz_explanation_free(e);
    rehearsal_end(&r);
}

static void a_later_link_of_a_chain_is_told_as_one(void)
{
    Rehearsal r = rehearse("time: 4/4  key: 0  tempo: q=96\n"
                           "part: Violin II\npart: Viola\npart: Violoncello; clef bass\n"
                           "Violin II:   R | R | g4:e( a4 b4 c5) g4:q r | R*2 | e5:w\n"
                           "Viola:       R | g3:e( a3 b3 c4) g3:q r | R*3 | g4:w\n"
                           "Violoncello: R | R*2 | g2:e( a2 b2 c3) g2:q r | R | c3:w\n");
    spz_explanation *e = explained(&r, "3");
    size_t later = 0;
    for (size_t i = 0; i < spz_explanation_count(e); i++) {
        const spz_considered *item = spz_explanation_at(e, i);
        bool third = item->sides[1].section == SPZ_VC; /* after the seconds, whether they answer these or the violas */
        later += item->later_link;
        CU_ASSERT_TRUE(item->later_link == third);
    }
    CU_ASSERT_EQUAL(later, 2);
    spz_explanation_free(e);
    rehearsal_end(&r);
}

/* The seconds answer the firsts note for note; the violas had a turn like it three bars before those. */
static void an_answer_belongs_to_the_nearer_and_plainer_call(void)
{
    Rehearsal r = rehearse("time: 4/4  key: 0  tempo: q=96\n"
                           "part: Violin I\npart: Violin II\npart: Viola\npart: Violoncello; clef bass\n"
                           "Violin I:    R | R*3 | g5:e( a5 b5 d6) c6:q r | R | R | c5:w\n"
                           "Violin II:   R | R*3 | R | e5:e( f5 g5 b5) a5:q r | R | e4:w\n"
                           "Viola:       R | g4:e( a4 b4 c5) d5:q r | R*4 | R | g4:w\n"
                           "Violoncello: R | R*6 | c3:w\n");
    Speaker speaker = {SPZ_ENGLISH, r.sections};
    spz_explanation *e = explained(&r, "6");
    size_t yielding = 0;
    for (size_t i = 0; i < spz_explanation_count(e); i++) {
        const spz_considered *item = spz_explanation_at(e, i);
        CU_ASSERT_EQUAL(item->answers_nearer, item->sides[0].section == SPZ_VA);
        if (!item->answers_nearer)
            continue;
        yielding++;
        CU_ASSERT_EQUAL(item->nearer_caller.section, SPZ_VN1);
        CU_ASSERT_TRUE(item->strength < item->alone);
        Buffer words;
        buffer_init(&words);
        explain_fate(&speaker, spz_score_movement(r.score, 0), item, &words);
        CU_ASSERT_PTR_NOT_NULL(strstr(words.text, "A nearer call counts for more: first violin, a bar before the answer"));
        buffer_free(&words);
    }
    CU_ASSERT_TRUE(yielding >= 1);
    spz_explanation_free(e);
    rehearsal_end(&r);
}

/* The strength of what the seconds answer in bar 4 to the firsts in bar 3, where they go on like this four bars later. */
static double answer_in_bar_4(const char *firsts, const char *seconds)
{
    char score[1024];
    snprintf(score, sizeof score,
             "time: 4/4  key: 0  tempo: q=96\npart: Violin I\npart: Violin II\npart: Viola\n"
             "Violin I:  R*2 | g5:e( a5 b5 c6) a5:q r | f5:q g5 a5 g5 | R*3 | %s\n"
             "Violin II: R*2 | e5:w | d5:e( e5 f5 g5) e5:q r | R*3 | %s\n"
             "Viola:     c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4 | c4~ | c4 | c4~ | c4\n", firsts, seconds);
    Rehearsal r = rehearse(score);
    spz_explanation *e = explained(&r, "3");
    double strongest = 0;
    for (size_t i = 0; i < spz_explanation_count(e); i++) {
        const spz_considered *item = spz_explanation_at(e, i);
        if (item->first == 2 && item->last == 3 && item->strength > strongest)
            strongest = item->strength;
    }
    spz_explanation_free(e);
    rehearsal_end(&r);
    return strongest;
}

static void who_answer_each_other_clearly_are_believed_soon_before_and_after(void)
{
    double alone = answer_in_bar_4("R | R | R | R", "R | R | R | R");
    double together = answer_in_bar_4("d5:q. e5:e( g5:q) r | R | e5:q. f5:e( a5:q) r | R", "R | d5:q. e5:e( g5:q) r | R | e5:q. f5:e( a5:q) r");
    CU_ASSERT_TRUE(alone > 0.1);
    CU_ASSERT_TRUE(together > alone + 0.02);
}

static void each_match_left_out_says_why(void)
{
    Rehearsal r = rehearse(dialogue);
    spz_explanation *e = explained(&r, "4");
    size_t left_out = 0;
    for (size_t i = 0; i < spz_explanation_count(e); i++) {
        const spz_considered *item = spz_explanation_at(e, i);
        left_out += item->fate != SPZ_REPORTED;
        CU_ASSERT_EQUAL(left_out_in_words(&r, item), item->fate != SPZ_REPORTED);
        if (item->fate == SPZ_TOLD || item->fate == SPZ_OVERSHADOWED)
            CU_ASSERT_TRUE(item->instead.strength >= item->strength);
        CU_ASSERT_TRUE(i == 0 || item->strength <= spz_explanation_at(e, i - 1)->strength);
        CU_ASSERT_TRUE(item->first <= 3 && item->last >= 3);
    }
    CU_ASSERT_TRUE(left_out > 0); /* the seconds' answer, answered in turn by the firsts' second call, is told already */
    spz_explanation_free(e);
    rehearsal_end(&r);
}

static void a_bar_in_which_nobody_answers_has_nothing_to_tell(void)
{
    Rehearsal r = rehearse("time: 4/4  key: 0\npart: Violin I\npart: Violin II\n"
                           "Violin I:  c5:q d5 e5 f5 | g5:w | a5:w\nViolin II: c4:w | c4 | c4\n");
    spz_explanation *e = explained(&r, "2");
    CU_ASSERT_EQUAL(spz_explanation_count(e), 0);
    CU_ASSERT_EQUAL(spz_explanation_more(e), 0);
    CU_ASSERT_PTR_NULL(spz_explanation_at(e, 0));
    spz_explanation_free(e);
    rehearsal_end(&r);
}

static void a_bar_that_is_not_there_is_the_asker_s_mistake(void)
{
    Rehearsal r = rehearse(dialogue);
    spz_explanation *e = NULL;
    CU_ASSERT_EQUAL(spz_explanation_make(r.sections, "99", 12, &e), SPZ_BAD_ARGUMENT);
    CU_ASSERT_PTR_NULL(e);
    rehearsal_end(&r);
}

static void what_is_reported_is_listed_even_beyond_the_limit(void)
{
    Rehearsal r = rehearse(dialogue);
    spz_explanation *e = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_explanation_make(r.sections, "4", 0, &e), SPZ_OK);
    CU_ASSERT_TRUE(spz_explanation_count(e) >= 1);
    for (size_t i = 0; i < spz_explanation_count(e); i++)
        CU_ASSERT_EQUAL(spz_explanation_at(e, i)->fate, SPZ_REPORTED);
    CU_ASSERT_TRUE(spz_explanation_more(e) > 0);
    spz_explanation_free(e);
    rehearsal_end(&r);
}

static void want_of_memory_is_answered_and_leaves_nothing_behind(void)
{
    Rehearsal r = rehearse(dialogue);
    spz_explanation *e = NULL;
    spz_status status = SPZ_NO_MEMORY;
    long requests = 0;
    while (status == SPZ_NO_MEMORY && ++requests < 500) {
        memory_starve_after(requests);
        status = spz_explanation_make(r.sections, "4", 12, &e);
        memory_starve_after(0);
    }
    CU_ASSERT_EQUAL(status, SPZ_OK);
    CU_ASSERT_TRUE(requests > 10);
    spz_explanation_free(e);
    rehearsal_end(&r);
}

static const struct Statement statements[] = {
    STATEMENT(the_strongest_match_of_a_bar_is_the_passage_reported_there),
    STATEMENT(a_later_link_of_a_chain_is_told_as_one),
    STATEMENT(an_answer_belongs_to_the_nearer_and_plainer_call),
    STATEMENT(who_answer_each_other_clearly_are_believed_soon_before_and_after),
    STATEMENT(each_match_left_out_says_why),
    STATEMENT(a_bar_in_which_nobody_answers_has_nothing_to_tell),
    STATEMENT(a_bar_that_is_not_there_is_the_asker_s_mistake),
    STATEMENT(what_is_reported_is_listed_even_beyond_the_limit),
    STATEMENT(want_of_memory_is_answered_and_leaves_nothing_behind),
};
void suite_explain(void) { suite_of("explain", statements, COUNT(statements)); }
