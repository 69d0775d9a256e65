/* Where a gesture begins: with the first note that call and answer have, whatever still sounds beside it. */
#include "support/scores/rehearsal.h"
#include "support/suite.h"

#define QUARTET \
    "time: 4/4  key: 0  tempo: q=96\n" \
    "part: Violin I\npart: Violin II\npart: Viola\npart: Violoncello; clef bass\n"

/* The first entry of the exchange of firsts and cellos begins on that beat of the bar (from 0). */
static void begins_at(const char *notation, size_t bar, long beat)
{
    Rehearsal r = rehearse(notation);
    const spz_passage *p = antiphony(&r, "Vn I", "Vc");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_EQUAL(p->entries[0].bar, bar);
    CU_ASSERT_TRUE(p->entries[0].beat.over == beat && p->entries[0].beat.under == 1);
    CU_ASSERT_EQUAL(p->onset, p->entries[0].onset);
    rehearsal_end(&r);
}

static void a_dotted_note_under_which_the_other_still_sounds_belongs_to_the_gesture(void)
{
    begins_at(QUARTET
              "Violin I:    c6:e b5 a5 g5 f5 e5 d5 c5 | b4:q. d5:e f5:q f5 | f5:h r | a4:q. c5:e f5:q f5 | f5:h r | g4:q. b4:e d5:q d5 | d5:h r | c5:w\n"
              "Violin II:   R | d4:w | d4 | c4 | c4 | b3 | b3 | c4\n"
              "Viola:       R | f4:w | f4 | f4 | f4 | d4 | d4 | e4\n"
              "Violoncello: R | b2:q r r:h | b2:q. d3:e f3:q f3 | f3:h r | a2:q. c3:e f3:q f3 | f3:h r | g2:q. b2:e d3:q d3 | c3:w\n", 1, 1);
}

static const struct Statement statements[] = {
    STATEMENT(a_dotted_note_under_which_the_other_still_sounds_belongs_to_the_gesture),
};

void suite_match_head(void);
void suite_match_head(void)
{
    suite_of("match_head", statements, COUNT(statements));
}
