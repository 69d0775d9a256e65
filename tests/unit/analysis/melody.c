/* The one line that is heard of a section, and who may answer whom. */
#include "support/scores/rehearsal.h"
#include "support/suite.h"
#include <stdio.h>

#define STRINGS "time: 4/4  key: 0  tempo: q=96\npart: Violin I\npart: Violin II\npart: Viola\npart: Violoncello; clef bass\n"

static double strength_between(const char *notation, const char *caller, const char *responder)
{
    Rehearsal r = rehearse(notation);
    const spz_passage *p = antiphony(&r, caller, responder);
    double strength = p ? p->strength : 0;
    rehearsal_end(&r);
    return strength;
}

/* The firsts' call over what their lower desks play; the seconds answer a bar later. */
static double call_over(const char *lower_desks)
{
    char score[800];
    snprintf(score, sizeof score, STRINGS
             "part: Violin I; staves 2\n"
             "Violin I:    R*2 | g5:q a5 b5:q. c6:e | d6:q r:h. | e5:q f5 g5:q. a5:e | b5:q r:h. | R | c5:w\n"
             "Violin I/2:  \"div.\" R*2 | %s | R | %s | R | R | c4:w\n"
             "Violin II:   R*2 | R | g4:q a4 b4:q. c5:e | d5:q r:h. | e4:q f4 g4:q. a4:e | b4:q r:h. | c4:w\n"
             "Viola:       R*7 | g3:w\nVioloncello: R*7 | c3:w\n", lower_desks, lower_desks);
    return strength_between(score, "Vn I", "Vn II");
}

static void afterbeats_of_the_lower_desks_don_t_cut_the_line_above_them(void)
{
    double alone = call_over("R"), over_afterbeats = call_over("r:e g4 r g4 r g4 r g4");
    CU_ASSERT_TRUE(alone >= 0.5);
    CU_ASSERT_DOUBLE_EQUAL(over_afterbeats, alone, 0.01);
}

/* A figure of the firsts, under a note that some of them hold or without it, and the seconds' answer. */
static double call_beneath(const char *upper_desks)
{
    char score[800];
    snprintf(score, sizeof score, STRINGS
             "part: Violin I; staves 2\n"
             "Violin I:    \"div.\" R*2 | %s | R | %s | R | R | c5:w\n"
             "Violin I/2:  R*2 | g4:q a4 b4:q. c5:e | r:w | e4:q f4 g4:q. a4:e | r:w | R | c4:w\n"
             "Violin II:   R*2 | R | g4:q a4 b4:q. c5:e | r:w | e4:q f4 g4:q. a4:e | R | c4:w\n"
             "Viola:       R*7 | g3:w\nVioloncello: R*7 | c3:w\n", upper_desks, upper_desks);
    return strength_between(score, "Vn I", "Vn II");
}

static void of_two_lines_that_begin_together_the_one_that_moves_is_heard_beneath_a_held_note(void)
{
    double alone = call_beneath("R"), beneath = call_beneath("g5:w");
    CU_ASSERT_TRUE(alone >= 0.5);
    CU_ASSERT_DOUBLE_EQUAL(beneath, alone, 0.005);
}

static double soloists(const char *second_name)
{
    char score[1200];
    snprintf(score, sizeof score,
             "time: 4/4  key: 0  tempo: q=96\npart: Violin I solo\npart: %s solo\npart: Violin I\npart: Violin II\npart: Viola\npart: Violoncello; clef bass\n"
             "Violin I solo: R*2 | g5:e a5 b5 c6 g5:q r | R | e5:e f5 g5 a5 e5:q r | R*12\n"
             "%s solo:       R*2 | R | g4:e a4 b4 c5 g4:q r | R | e4:e f4 g4 a4 e4:q r | R*11\n"
             "Violin I:      R*7 | c5:s d5 e5 f5 g5 a5 b5 c6 b5 a5 g5 f5 e5 d5 c5 d5 | %%*8 | c5:w\n"
             "Violin II:     R*7 | c5:s d5 e5 f5 g5 a5 b5 c6 b5 a5 g5 f5 e5 d5 c5 d5 | %%*8 | c5:w\n"
             "Viola:         R*16 | c4:w\nVioloncello: R*16 | c3:w\n", second_name, second_name);
    Rehearsal r = rehearse(score);
    double strongest = 0;
    for (size_t i = 0; i < spz_findings_count(r.findings); i++) {
        const spz_passage *p = spz_findings_at(r.findings, i);
        if (spz_kind_is_antiphony(p->kind) && lies_in(p, "3", "6") && p->strength > strongest)
            strongest = p->strength;
    }
    rehearsal_end(&r);
    return strongest;
}

static void soloists_of_different_sections_answer_each_other(void)
{
    CU_ASSERT_TRUE(soloists("Violoncello") >= 0.5);
}

static const struct Statement statements[] = {
    STATEMENT(afterbeats_of_the_lower_desks_don_t_cut_the_line_above_them),
    STATEMENT(of_two_lines_that_begin_together_the_one_that_moves_is_heard_beneath_a_held_note),
    STATEMENT(soloists_of_different_sections_answer_each_other),
};

void suite_melody(void);
void suite_melody(void)
{
    suite_of("melody", statements, COUNT(statements));
}
