/* Two sections that move together, stated in music. */
#include "support/scores/rehearsal.h"
#include "support/suite.h"
#include <math.h>
#include <string.h>

#define STRINGS "time: 4/4  key: 0  tempo: q=120\npart: Violin I\npart: Violin II\npart: Viola; clef alto\npart: Violoncello; clef bass\n"
#define QUICK "<p> g5:s a5 b5 c6 d6 c6 b5 a5 g5 a5 b5 c6 d6 c6 b5 a5 | g5:s a5 b5 c6 d6 c6 b5 a5 g5 f5 e5 f5 g5 a5 b5 c6 | d6 c6 b5 a5 g5 a5 b5 a5 g5 f5 e5 d5 e5 f5 g5 a5 | g5:w\n"
#define HELD "Viola: c4:w | d4 | c4 | c4\nVioloncello: c3:w | g2 | c3 | c3\n"

static const spz_pairing *pairing(const Rehearsal *r, spz_section a, spz_section b)
{
    for (size_t i = 0; i < spz_findings_pairings(r->findings); i++) {
        const spz_pairing *p = spz_findings_pairing(r->findings, i);
        if (spz_sections_group(r->sections, p->groups[0])->section == a && spz_sections_group(r->sections, p->groups[1])->section == b)
            return p;
    }
    return NULL;
}

static void quick_soft_octaves_are_a_tight_spot(void)
{
    Rehearsal r = rehearse(STRINGS "Violin I: " QUICK "Violin II: {col Violin I -1}*4\n" HELD);
    const spz_passage *p = heard(&r, SPZ_COUPLING, "Vn I", "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_TRUE(lies_in(p, "1", "3"));
    CU_ASSERT_DOUBLE_EQUAL(p->shortest, 0.125, 1e-9); /* a semiquaver at 120 crotchets a minute */
    CU_ASSERT_TRUE(p->tightness > 0.6 && p->tightness <= 1);
    CU_ASSERT_TRUE(p->strength >= 0.5);
    CU_ASSERT_PTR_NOT_NULL(strstr(told(&r, p), "in octaves"));
    rehearsal_end(&r);
}

static void a_bar_of_sixths_among_thirds_is_told(void)
{
    Rehearsal r = rehearse(STRINGS "Violin I: " QUICK "Violin II: <p> b4:s c5 d5 e5 f5 e5 d5 c5 b4 c5 d5 e5 f5 e5 d5 c5 | e5:s f5 g5 a5 b5 a5 g5 f5 e5 d5 c5 d5 e5 f5 g5 a5 | "
                                   "b5 a5 g5 f5 e5 f5 g5 f5 e5 d5 c5 b4 c5 d5 e5 f5 | e5:w\n" HELD);
    const spz_passage *p = heard(&r, SPZ_COUPLING, "Vn I", "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_EQUAL(p->told.unity.parallel, SPZ_THIRDS_AND_SIXTHS);
    rehearsal_end(&r);
}

static void single_quick_notes_do_not_set_the_pace(void)
{
    Rehearsal r = rehearse(STRINGS "Violin I:  <p> g5:e a5 b5:e. c6:s d6:e c6 b5 a5 | g5 a5 b5:e. c6:s d6:e c6 b5 a5 | g5 a5 b5:e. c6:s d6:e c6 b5 a5 | g5:w\n"
                                   "Violin II: {col Violin I -1}*4\n" HELD);
    const spz_passage *p = heard(&r, SPZ_COUPLING, "Vn I", "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_PTR_NOT_NULL(strstr(told(&r, p), "4 notes a second"));
    rehearsal_end(&r);
}

static void the_pairing_tells_the_share_of_bars_and_of_intervals(void)
{
    Rehearsal r = rehearse(STRINGS
                           "Violin I:  c5:q d5 e5 f5 | g5 a5 b5 c6 | c5 d5 e5 f5 | c5:e d5 e5 f5 g5:h\n"
                           "Violin II: c5:q d5 e5 f5 | e5 f5 g5 a5 | a4:h r       | c4:w\n" HELD);
    const spz_pairing *p = pairing(&r, SPZ_VN1, SPZ_VN2);
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_EQUAL(p->shared_bars, 4);
    CU_ASSERT_DOUBLE_EQUAL(p->together, 2.0 / 4, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(p->unison, 4.0 / 10, 1e-9); /* of ten moments at which both begin a note */
    CU_ASSERT_DOUBLE_EQUAL(p->thirds, 5.0 / 10, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(p->octaves, 1.0 / 10, 1e-9);
    rehearsal_end(&r);
}

static void slow_notes_in_octaves_are_no_tight_spot(void)
{
    Rehearsal r = rehearse(STRINGS "Violin I: <p> c5:h d5 | e5 f5 | g5 a5 | g5:w\nViolin II: {col Violin I -1}*4\n" HELD);
    const spz_passage *spot = heard(&r, SPZ_COUPLING, "Vn I", "Vn II");
    CU_ASSERT_TRUE(spot == NULL || (spot->strength < 0.5 && spot->tightness < 0.1));
    const spz_pairing *p = pairing(&r, SPZ_VN1, SPZ_VN2);
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_TRUE(p->together >= 0.75); /* but it counts in the shares */
    rehearsal_end(&r);
}

static void loud_unison_is_less_tight_than_soft(void)
{
    Rehearsal soft = rehearse(STRINGS "Violin I: " QUICK "Violin II: {col Violin I}*4\n" HELD);
    Rehearsal loud = rehearse(STRINGS
                              "Violin I: <f> g5:s a5 b5 c6 d6 c6 b5 a5 g5 a5 b5 c6 d6 c6 b5 a5 | g5:s a5 b5 c6 d6 c6 b5 a5 g5 f5 e5 f5 g5 a5 b5 c6 | g5:w | g5\n"
                              "Violin II: {col Violin I}*4\n" HELD);
    const spz_passage *p = heard(&soft, SPZ_COUPLING, "Vn I", "Vn II"), *f = heard(&loud, SPZ_COUPLING, "Vn I", "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_TRUE(!f || f->tightness < p->tightness);
    rehearsal_end(&soft);
    rehearsal_end(&loud);
}

static void different_rhythms_are_not_coupled(void)
{
    Rehearsal r = rehearse(STRINGS "Violin I: " QUICK "Violin II: d5:e b4 d5 b4 d5 b4 d5 b4 | d5:e b4 d5 b4 d5 b4 d5 b4 | d5:q b4 d5 b4 | b4:w\n" HELD);
    CU_ASSERT_PTR_NULL(heard(&r, SPZ_COUPLING, "Vn I", "Vn II"));
    rehearsal_end(&r);
}

/* Octaves all day: only the tightest eight are listed, the rest is in the shares. */
static void a_movement_in_octaves_does_not_flood_the_page(void)
{
    char text[16384] = STRINGS "Violin I: <p> ";
    static const char *const busy = "g5:s a5 b5 c6 d6 c6 b5 a5 g5 a5 b5 c6 d6 c6 b5 a5 | %", *const still = "g5:w | f5:h. r:q";
    for (int i = 0; i < 20; i++) {
        strcat(text, i ? " | " : "");
        strcat(text, busy);
        strcat(text, " | ");
        strcat(text, still);
    }
    strcat(text, "\nViolin II: {col Violin I -1}*80\nViola: c4:w | %*79\nVioloncello: c3:w | %*79\n");
    Rehearsal r = rehearse(text);
    size_t listed = 0;
    for (size_t i = 0; i < spz_findings_count(r.findings); i++)
        listed += spz_findings_at(r.findings, i)->kind == SPZ_COUPLING;
    CU_ASSERT_EQUAL(listed, 8);
    rehearsal_end(&r);
}

static const struct Statement statements[] = {
    STATEMENT(quick_soft_octaves_are_a_tight_spot),
    STATEMENT(a_bar_of_sixths_among_thirds_is_told),
    STATEMENT(single_quick_notes_do_not_set_the_pace),
    STATEMENT(the_pairing_tells_the_share_of_bars_and_of_intervals),
    STATEMENT(slow_notes_in_octaves_are_no_tight_spot),
    STATEMENT(loud_unison_is_less_tight_than_soft),
    STATEMENT(different_rhythms_are_not_coupled),
    STATEMENT(a_movement_in_octaves_does_not_flood_the_page),
};
void suite_coupling(void) { suite_of("coupling", statements, COUNT(statements)); }
