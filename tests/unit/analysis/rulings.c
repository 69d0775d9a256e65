/* The conductor's own ear: [passages] of the settings. */
#include "support/scores/evening.h"
#include "support/suite.h"
#include "analysis/passages/rulings.h"
#include <stdio.h>
#include <string.h>

static Evening evening;
static char last_words[512];

static void hear(void *context, const spz_message *message)
{
    (void)context;
    snprintf(last_words, sizeof last_words, "%ld: %s", message->line, message->text);
}
static const spz_sink sink = {hear, NULL};

/* Exchanges of the violins in bars 9-12 and 46-48, violas and cellos in 46-47, the violins in one rhythm in 46-48. */
static void begin(void)
{
    evening_begin(&evening, 100);
    evening.movement.file = "scores/evening.mxl";
    evening.movement.number = 2;
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 9, 12, 0.85);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN2, SPZ_VN1, 46, 48, 0.55);
    evening_passage(&evening, SPZ_COUPLING, SPZ_VN1, SPZ_VN2, 46, 48, 0.6);
    evening_passage(&evening, SPZ_IMITATION, SPZ_VA, SPZ_VC, 46, 47, 0.45);
}

/* What each passage is then: 'v' taken out, 'w' weighed, '-' as found. */
static const char *ruled(const char *settings_text)
{
    static char marks[8];
    spz_settings *settings = evening_settings(settings_text);
    begin();
    CU_ASSERT_EQUAL(rulings_apply(&evening.findings, settings, &sink), SPZ_OK);
    spz_settings_free(settings); /* the findings hold no view of them */
    for (size_t i = 0; i < 4; i++)
        marks[i] = "-vw"[evening.findings.passages.at[i].ruling.kind];
    marks[4] = '\0';
    return marks;
}

static void check(const char *settings_text, const char *marks)
{
    CU_ASSERT_STRING_EQUAL(ruled(settings_text), marks);
    evening_end(&evening);
}

static void bars_alone_mean_every_passage_there(void)
{
    check("[passages]\n46-48 = no\n", "-vv-"); /* just these bars: the violas' 46-47 is another */
    check("[passages]\n40-50 = no\n", "-vvv");
    check("[passages]\n10-12 = no\n", "v---"); /* three of four bars */
    check("[passages]\n12-20 = no\n", "----"); /* one of four */
    check("[passages]\n9\xE2\x80\x93" "12 = no\n", "v---");
}

static void players_and_kinds_are_told_apart_whoever_leads(void)
{
    check("[passages]\n46-48 Vn I Vn II exchange = no\n", "-v--");
    check("[passages]\n46-48 Vn I, Vn II coupling = no\n", "--v-");
    check("[passages]\n46-48 Va/Vc = no\n", "---v");
    check("[passages]\n40-50 cellos = no\n", "---v");
    check("[passages]\n46-48 first violins, second violins = no\n", "-vv-");
    check("[passages]\n46-48 Vn I Vc = no\n", "----");
}

static void the_line_for_the_movement_holds_against_the_one_for_all(void)
{
    check("[passages evening.mxl 2]\n9-12 = no\n[passages]\n9-12 = clear\n", "v---");
    check("[passages evening.mxl 1]\n9-12 = no\n", "----");
    check("[passages other.mxl]\n9-12 = no\n", "----");
    check("[passages evening.mxl]\n9-12 = no\n9-12 = clear\n", "w---");
}

static void a_veto_leaves_nothing_and_a_weight_is_the_middle_of_its_word(void)
{
    ruled("[passages]\n9-12 = no, the horns cover it\n46-48 Vn I Vn II exchange = striking\n46-47 Va Vc = marginal\n");
    const spz_passage *p = evening.findings.passages.at;
    CU_ASSERT_DOUBLE_EQUAL(p[0].strength, 0, 0);
    CU_ASSERT_DOUBLE_EQUAL(p[0].ruling.heard, 0.85, 1e-12);
    CU_ASSERT_STRING_EQUAL(p[0].ruling.reason, "the horns cover it");
    CU_ASSERT_EQUAL(spz_weight_of(p[1].strength), SPZ_STRIKING);
    CU_ASSERT_STRING_EQUAL(p[1].ruling.reason, "");
    CU_ASSERT_DOUBLE_EQUAL(p[3].strength, 0.45, 1e-12); /* it was marginal as found, and stays as it was */
    CU_ASSERT_DOUBLE_EQUAL(spz_passage_standing(&p[0]), 0.85, 1e-12);
    CU_ASSERT_DOUBLE_EQUAL(spz_passage_standing(&p[2]), 0.6, 1e-12);
    evening_end(&evening);
}

static void what_is_written_for_a_passage_rules_it_and_no_other(void)
{
    for (size_t i = 0; i < 4; i++) {
        char line[80], text[160], marks[8] = "----";
        begin();
        spz_passage_line(&evening.findings, i, line, sizeof line);
        evening_end(&evening);
        snprintf(text, sizeof text, "[passages evening.mxl]\n%s = no\n", line);
        marks[i] = 'v';
        check(text, marks);
    }
    begin();
    char line[80];
    CU_ASSERT_STRING_EQUAL(spz_passage_line(&evening.findings, 0, line, sizeof line), "9-12 Vn I Vn II");
    CU_ASSERT_STRING_EQUAL(spz_passage_line(&evening.findings, 2, line, sizeof line), "46-48 Vn I Vn II coupling");
    CU_ASSERT_STRING_EQUAL(spz_passage_line(&evening.findings, 9, line, sizeof line), "");
    evening_end(&evening);
}

/* However the file is called: the section named for it is one that a settings file takes, and holds. */
static void a_long_name_is_cut_where_the_section_is_named_and_where_it_is_read(void)
{
    static const char *const files[] = {"a symphony of many movements in a file of a very long name.musicxml", "scores/sinfonía número dieciséis, edición ñandú [2].mxl",
                                        "\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9.xml"};
    for (size_t i = 0; i < COUNT(files); i++)
        for (size_t number = 0; number <= 2; number += 2) {
            char section[RULING_SECTION], text[160];
            snprintf(text, sizeof text, "[%s]\n9-12 = no\n", ruling_section_of(files[i], number, section));
            spz_settings *settings = evening_settings(text);
            begin();
            evening.movement.file = files[i];
            CU_ASSERT_EQUAL(rulings_apply(&evening.findings, settings, &sink), SPZ_OK);
            CU_ASSERT_EQUAL(evening.findings.passages.at[0].ruling.kind, SPZ_VETOED);
            evening_end(&evening);
            spz_settings_free(settings);
        }
}

static void refuse(const char *text, const char *words)
{
    spz_settings *settings = evening_settings(text);
    last_words[0] = '\0';
    begin();
    CU_ASSERT_EQUAL(rulings_apply(&evening.findings, settings, &sink), SPZ_BAD_SETTINGS);
    CU_ASSERT_PTR_NOT_NULL(strstr(last_words, words));
    evening_end(&evening);
    spz_settings_free(settings);
}

static void a_line_that_means_nothing_is_refused_with_its_place(void)
{
    refuse("[passages]\n46-48 = maybe\n", "2: '46-48 = maybe' in [passages]: it says no, marginal, clear or striking");
    refuse("[passages]\n46-48 Vn IX = no\n", "not 'Vn IX'");
    refuse("[passages]\n46-48 Vn I Vn II Va = no\n", "not 'Va'");
    refuse("[passages]\n46-48 hocket coupling = no\n", "not 'coupling'");
    refuse("[passages]\n- 48 = no\n", "it has to begin with bars");
}

static void what_she_takes_out_speaks_for_nothing_and_is_told(void)
{
    spz_settings *settings = evening_settings("[passages]\n1-200 Vn I Vn II = no\n");
    evening_begin(&evening, 200);
    evening.movement.file = "evening.mxl";
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 6, 0.85);
    spz_verdict *before = evening_judge(&evening, settings, 0);
    CU_ASSERT_EQUAL(rulings_apply(&evening.findings, settings, &sink), SPZ_OK);
    spz_verdict *after = evening_judge(&evening, settings, 0);
    CU_ASSERT_TRUE(spz_verdict_ranked(before, 0)->opposed);
    CU_ASSERT_PTR_NOT_NULL(term_of(spz_verdict_ranked(before, 0), SPZ_TERM_VIOLINS));
    CU_ASSERT_PTR_NULL(term_of(spz_verdict_ranked(after, 0), SPZ_TERM_VIOLINS));
    const spz_reason *told = reason_of(after, SPZ_REMARK_VETOED);
    CU_ASSERT_PTR_NOT_NULL_FATAL(told);
    CU_ASSERT_EQUAL(told->basis.passage_count, 6);
    CU_ASSERT_PTR_NULL(reason_of(before, SPZ_REMARK_VETOED));
    spz_verdict_free(before);
    spz_verdict_free(after);
    spz_settings_free(settings);
    evening_end(&evening);
}

static const struct Statement statements[] = {
    STATEMENT(bars_alone_mean_every_passage_there),
    STATEMENT(players_and_kinds_are_told_apart_whoever_leads),
    STATEMENT(the_line_for_the_movement_holds_against_the_one_for_all),
    STATEMENT(a_veto_leaves_nothing_and_a_weight_is_the_middle_of_its_word),
    STATEMENT(what_is_written_for_a_passage_rules_it_and_no_other),
    STATEMENT(a_long_name_is_cut_where_the_section_is_named_and_where_it_is_read),
    STATEMENT(a_line_that_means_nothing_is_refused_with_its_place),
    STATEMENT(what_she_takes_out_speaks_for_nothing_and_is_told),
};

void suite_rulings(void)
{
    suite_of("rulings", statements, COUNT(statements));
}
