/* Passages in order, with names that can be read back. */
#include "analysis/passages/findings.h"
#include "support/scores/rehearsal.h"
#include "support/suite.h"
#include <string.h>

static void every_kind_has_a_name_that_reads_back(void)
{
    for (int i = 0; i < SPZ_KIND_COUNT; i++) {
        spz_kind kind = SPZ_KIND_COUNT;
        CU_ASSERT_TRUE(strlen(spz_kind_name((spz_kind)i)) > 0);
        CU_ASSERT_TRUE(spz_kind_from_name(spz_kind_name((spz_kind)i), &kind));
        CU_ASSERT_EQUAL((int)kind, i);
    }
    spz_kind kind = SPZ_HOCKET;
    CU_ASSERT_FALSE(spz_kind_from_name("fugue", &kind));
    CU_ASSERT_FALSE(spz_kind_from_name(NULL, &kind));
    CU_ASSERT_EQUAL(kind, SPZ_HOCKET);
    CU_ASSERT_STRING_EQUAL(spz_kind_name(SPZ_KIND_COUNT), "");
}

static void only_the_first_four_kinds_are_antiphony(void)
{
    for (int i = 0; i < SPZ_KIND_COUNT; i++)
        CU_ASSERT_EQUAL(spz_kind_is_antiphony((spz_kind)i), i <= SPZ_IMITATION);
}

static void strength_is_marginal_clear_or_striking(void)
{
    CU_ASSERT_STRING_EQUAL(spz_weight_name(spz_weight_of(0)), "marginal");
    CU_ASSERT_STRING_EQUAL(spz_weight_name(spz_weight_of(0.499)), "marginal");
    CU_ASSERT_STRING_EQUAL(spz_weight_name(spz_weight_of(0.5)), "clear");
    CU_ASSERT_STRING_EQUAL(spz_weight_name(spz_weight_of(0.799)), "clear");
    CU_ASSERT_STRING_EQUAL(spz_weight_name(spz_weight_of(0.8)), "striking");
}

static void passages_come_in_order_of_bar_then_kind_then_sections(void)
{
    Rehearsal r = rehearse(
        "time: 4/4  key: 0  tempo: q=96\npart: Violin I\npart: Violin II\npart: Viola; clef alto\npart: Violoncello; clef bass\n"
        "Violin I:    <p> g5:s a5 b5 c6 d6 c6 b5 a5 g5 a5 b5 c6 d6 c6 b5 a5 | %*3 | g5:w | g5\n"
        "Violin II:   {col Violin I -1}*6\n"
        "Viola:       c4:w | \"div.\" c4+e4:q d4+f4 e4+g4 d4+f4 | c4+e4 d4+f4 e4+g4 d4+f4 | \"unis.\" c4:w | c4 | c4\n"
        "Violoncello: \"div.\" c3+g3:q d3+a3 e3+b3 d3+a3 | %*2 | \"unis.\" c3:w | c3 | c3\n");
    size_t count = spz_findings_count(r.findings);
    CU_ASSERT_TRUE(count >= 3);
    for (size_t i = 0; i + 1 < count; i++) {
        const spz_passage *a = spz_findings_at(r.findings, i), *b = spz_findings_at(r.findings, i + 1);
        CU_ASSERT_TRUE(a->first < b->first || (a->first == b->first && a->kind <= b->kind));
    }
    CU_ASSERT_PTR_NULL(spz_findings_at(r.findings, count));
    CU_ASSERT_PTR_NULL(spz_findings_pairing(r.findings, spz_findings_pairings(r.findings)));
    rehearsal_end(&r);
}

static void a_passage_ends_in_the_last_bar_it_sounds_in_and_is_found_by_its_letter(void)
{
    Rehearsal r = rehearse(
        "time: 4/4  key: 0  tempo: q=96\npart: Violin I\npart: Violin II\npart: Viola; clef alto\npart: Violoncello; clef bass\n"
        "Violin I:    c6:w | [B] c6 | c6 | c6 | c6 | c6\nViolin II:   e5:w | %*5\n"
        "Viola:       c4:w | c4 | \"div.\" c4+e4:q d4+f4 e4+g4 d4+f4 | c4+e4 d4+f4 e4+g4 d4+f4 | \"unis.\" c4:w | c4\n"
        "Violoncello: c3:w | %*5\n");
    const spz_passage *p = heard(&r, SPZ_DIV2, "Va", "");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_TRUE(lies_in(p, "3", "4"));
    CU_ASSERT_EQUAL(p->first, 2);
    CU_ASSERT_EQUAL(p->last, 3);
    CU_ASSERT_STRING_EQUAL(p->letter, "B");
    CU_ASSERT_EQUAL(p->after_letter, 1);
    CU_ASSERT_EQUAL(p->link_count, 0);
    rehearsal_end(&r);
}

static const struct Statement statements[] = {
    STATEMENT(every_kind_has_a_name_that_reads_back),
    STATEMENT(only_the_first_four_kinds_are_antiphony),
    STATEMENT(strength_is_marginal_clear_or_striking),
    STATEMENT(passages_come_in_order_of_bar_then_kind_then_sections),
    STATEMENT(a_passage_ends_in_the_last_bar_it_sounds_in_and_is_found_by_its_letter),
};
void suite_findings(void) { suite_of("findings", statements, COUNT(statements)); }
