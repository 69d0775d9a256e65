/* One melody for two sections. */
#include "support/scores/rehearsal.h"
#include "support/suite.h"

/* Deutsch, J. Acoust. Soc. Am. 57 (1975) 1156: the tones of each ear, heard as one scale. */
static void deutschs_scale_is_heard_as_one_line(void)
{
    Rehearsal r = rehearse("time: 4/4  tempo: q=120\n"
                           "Violin I:  c5 d4 a4 f4 | f4 a4 d4 c5\n"
                           "Violin II: c4 b4 e4 g4 | g4 e4 b4 c4\n");
    const spz_passage *p = heard(&r, SPZ_SPLIT_LINE, "Vn I", "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_TRUE(lies_in(p, "1", "2"));
    CU_ASSERT_TRUE(p->strength >= 0.5);
    rehearsal_end(&r);
}

static void the_same_scale_played_plainly_is_no_split_line(void)
{
    Rehearsal r = rehearse("time: 4/4  tempo: q=120\n"
                           "Violin I:  c5 b4 a4 g4 | g4 a4 b4 c5\n"
                           "Violin II: c4 d4 e4 f4 | f4 e4 d4 c4\n");
    CU_ASSERT_PTR_NULL(heard(&r, SPZ_SPLIT_LINE, "Vn I", "Vn II"));
    rehearsal_end(&r);
}

static void parts_that_cross_once_are_no_split_line(void)
{
    Rehearsal r = rehearse("time: 4/4  tempo: q=120\n"
                           "Violin I:  c5 d5 e5 f5 | g5 f5 e5 d5 | c5 b4 a4 g4\n"
                           "Violin II: g4 g4 a4 a4 | b4 c5 d5 e5 | f5 e5 d5 b4\n");
    CU_ASSERT_PTR_NULL(heard(&r, SPZ_SPLIT_LINE, "Vn I", "Vn II"));
    rehearsal_end(&r);
}

static void a_split_line_bears_a_held_note_and_a_dotted_rhythm(void)
{
    Rehearsal r = rehearse("time: 4/4  tempo: q=72\n"
                           "Violin I:  g5:q. bb4:e eb5:q a4 | c5:q. g4:e bb4:q d4 | c5:h. r:q\n"
                           "Violin II: bb4:q. f5:e g4:q d5 | a4:q. bb4:e g4:q a4 | eb4:h. r:q\n");
    CU_ASSERT_PTR_NOT_NULL(heard(&r, SPZ_SPLIT_LINE, "Vn I", "Vn II"));
    rehearsal_end(&r);
}

static void what_is_taken_in_turn_under_a_quick_upper_line_is_no_melody(void)
{
    Rehearsal r = rehearse("time: 4/4  tempo: q=120\n"
                           "Violin I:  c6 e6 c6 e6 | d6 f6 d6 f6\n"
                           "Violin II: c5 d4 a4 f4 | f4 a4 d4 c5\n"
                           "Viola:     c4 b4 e4 g4 | g4 e4 b4 c4\n");
    CU_ASSERT_PTR_NULL(heard(&r, SPZ_SPLIT_LINE, "Vn II", "Va"));
    rehearsal_end(&r);
    r = rehearse("time: 4/4  tempo: q=120\n"
                 "Violin I:  c6:w | d6:w\n"
                 "Violin II: c5 d4 a4 f4 | f4 a4 d4 c5\n"
                 "Viola:     c4 b4 e4 g4 | g4 e4 b4 c4\n");
    CU_ASSERT_PTR_NOT_NULL(heard(&r, SPZ_SPLIT_LINE, "Vn II", "Va"));
    rehearsal_end(&r);
}

static const struct Statement statements[] = {
    STATEMENT(deutschs_scale_is_heard_as_one_line),
    STATEMENT(the_same_scale_played_plainly_is_no_split_line),
    STATEMENT(parts_that_cross_once_are_no_split_line),
    STATEMENT(a_split_line_bears_a_held_note_and_a_dotted_rhythm),
    STATEMENT(what_is_taken_in_turn_under_a_quick_upper_line_is_no_melody),
};

void suite_split_line(void);
void suite_split_line(void)
{
    suite_of("split line", statements, COUNT(statements));
}
