/* What `spezzato check` doubts, and what it lets pass. */
#include "spezzato/check.h"
#include "support/score_text.h"
#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static spz_doubts *doubts;

/* Checks the text by way of a file; the list lives until the next call. */
static const spz_doubts *doubts_of(const char *xml)
{
    char path[1024];
    const char *folder = getenv("TMPDIR");
    snprintf(path, sizeof path, "%s/spezzato-check-%ld.musicxml", folder ? folder : "/tmp", (long)getpid());
    FILE *file = fopen(path, "w");
    CU_ASSERT_PTR_NOT_NULL_FATAL(file);
    fputs(xml, file);
    fclose(file);
    spz_doubts_free(doubts);
    doubts = NULL;
    CU_ASSERT_EQUAL(spz_check(path, NULL, NULL, &doubts), SPZ_OK);
    remove(path);
    CU_ASSERT_PTR_NOT_NULL_FATAL(doubts);
    return doubts;
}

/* 'part|bar|text' of the only doubt of that kind; '' when there is none, 'n of them' when there are several. */
static const char *doubt_of_kind(const spz_doubts *list, spz_doubt_kind kind)
{
    static char text[600];
    int found = 0;
    text[0] = '\0';
    for (size_t i = 0; i < spz_doubts_count(list); i++) {
        const spz_doubt *doubt = spz_doubts_at(list, i);
        if (doubt->kind == kind && ++found)
            snprintf(text, sizeof text, "%s|%s|%s", doubt->part, doubt->bar, doubt->text);
    }
    if (found > 1)
        snprintf(text, sizeof text, "%d of them", found);
    return text;
}

#define TEMPO "<sound tempo=\"90\"/>"
#define VIOLA(bars) SCORE(LISTED(P1, "Viola"), PART(P1, bars))
#define DUO(first, second) SCORE(LISTED(P1, "Violin I") LISTED(P2, "Viola"), PART(P1, first) PART(P2, second))
#define OPENING DIVISIONS(1) TIME(4, 4) TEMPO

#define DOUBT(xml, kind, expected) CU_ASSERT_STRING_EQUAL(doubt_of_kind(doubts_of(xml), kind), expected)

static void a_sound_score_has_no_doubts(void)
{
    CU_ASSERT_EQUAL(spz_doubts_count(doubts_of(VIOLA(BAR(1, OPENING NOTE(C, 4, 4, "")) BAR(2, NOTE(D, 4, 4, ""))))), 0);
    CU_ASSERT_EQUAL(spz_doubts_grave(doubts), 0);
}

static void a_part_that_fills_too_little_of_a_bar_is_named(void)
{
    DOUBT(DUO(BAR(1, OPENING NOTE(C, 5, 4, "")) BAR(2, NOTE(C, 5, 4, "")), BAR(1, DIVISIONS(1) TIME(4, 4) NOTE(C, 4, 4, "")) BAR(2, NOTE(C, 4, 3, ""))), SPZ_DOUBT_BAR,
          "Viola|2|holds 3 crotchets instead of 4");
}

static void a_row_of_bars_with_the_same_fault_is_one_doubt(void)
{
    DOUBT(DUO(BAR(1, OPENING NOTE(C, 5, 4, "")) BAR(2, NOTE(C, 5, 4, "")) BAR(3, NOTE(C, 5, 4, "")), BAR(1, DIVISIONS(2) TIME(4, 4) NOTE(C, 4, 7, "")) BAR(2, NOTE(C, 4, 7, "")) BAR(3, NOTE(C, 4, 8, ""))),
          SPZ_DOUBT_BAR, "Viola|1-2|holds 7/2 crotchets instead of 4");
}

static void an_overfull_bar_is_named(void)
{
    DOUBT(VIOLA(BAR(1, OPENING NOTE(C, 4, 5, ""))), SPZ_DOUBT_BAR, "|1|all parts fill 5 crotchets; the time signature asks for 4");
}

static void an_upbeat_and_its_last_bar_are_no_fault(void)
{
    DOUBT(VIOLA(BAR(0, OPENING NOTE(C, 4, 1, "")) BAR(1, NOTE(C, 4, 4, "")) BAR(2, NOTE(C, 4, 3, ""))), SPZ_DOUBT_BAR, "");
}

static void a_last_bar_that_makes_up_for_nothing_is_a_fault(void)
{
    DOUBT(VIOLA(BAR(1, OPENING NOTE(C, 4, 4, "")) BAR(2, NOTE(C, 4, 3, ""))), SPZ_DOUBT_BAR, "|2|all parts fill 3 crotchets; the time signature asks for 4");
}

static void a_bar_split_for_a_repeat_is_no_fault(void)
{
    DOUBT(VIOLA(BAR(1, OPENING NOTE(C, 4, 4, "")) BAR(2, NOTE(C, 4, 3, "") "<barline location=\"right\"><repeat direction=\"backward\"/></barline>")
                BAR(3, NOTE(C, 4, 1, "")) BAR(4, NOTE(C, 4, 4, ""))), SPZ_DOUBT_BAR, "");
}

static void an_empty_bar_in_a_part_is_taken_for_silence(void)
{
    DOUBT(DUO(BAR(1, OPENING NOTE(C, 5, 4, "")), BAR(1, DIVISIONS(1) TIME(4, 4))), SPZ_DOUBT_BAR, "");
}

static void a_part_that_ends_early_is_named(void)
{
    DOUBT(DUO(BAR(1, OPENING NOTE(C, 5, 4, "")) BAR(2, NOTE(C, 5, 4, "")), BAR(1, DIVISIONS(1) TIME(4, 4) NOTE(C, 4, 4, ""))), SPZ_DOUBT_LENGTH,
          "Viola|1|ends here, after 1 bar; the longest part has 2");
}

static void ties_without_their_other_end_are_named(void)
{
    DOUBT(VIOLA(BAR(1, OPENING NOTE(C, 4, 4, TIE_FROM)) BAR(2, NOTE(D, 4, 4, ""))), SPZ_DOUBT_TIE, "Viola|1|the tie from C4 has no end");
    DOUBT(VIOLA(BAR(1, OPENING NOTE(C, 4, 4, "")) BAR(2, NOTE(C, 4, 4, TIE_TO))), SPZ_DOUBT_TIE, "Viola|2|the tie to C4 has no beginning");
    DOUBT(VIOLA(BAR(1, OPENING NOTE(C, 4, 4, TIE_FROM)) BAR(2, NOTE(C, 4, 4, TIE_TO))), SPZ_DOUBT_TIE, "");
}

static void a_tie_into_both_endings_is_no_fault(void)
{
    DOUBT(VIOLA(BAR(1, OPENING NOTE(C, 4, 4, TIE_FROM)) BAR(2, "<barline location=\"left\"><ending number=\"1\" type=\"start\"/></barline>" NOTE(C, 4, 4, TIE_TO)
        "<barline location=\"right\"><ending number=\"1\" type=\"stop\"/><repeat direction=\"backward\"/></barline>")
        BAR(3, "<barline location=\"left\"><ending number=\"2\" type=\"start\"/></barline>" NOTE(C, 4, 4, TIE_TO))), SPZ_DOUBT_TIE, "");
}

static void a_note_below_the_lowest_string_is_named(void)
{
    DOUBT(VIOLA(BAR(1, OPENING NOTE(C, 3, 2, "") NOTE(B, 2, 2, ""))), SPZ_DOUBT_RANGE, "Viola|1|B2 is out of the range of the viola");
    DOUBT(SCORE(LISTED(P1, "Violin I"), PART(P1, BAR(1, OPENING NOTE(G, 3, 2, "") NOTE(F, 3, 1, "") NOTE(E, 3, 1, "")))), SPZ_DOUBT_RANGE,
          "Violin I|1|F3 is out of the range of the violin, the first of 2 such notes");
    DOUBT(SCORE(LISTED(P1, "Contrabass"), PART(P1, BAR(1, OPENING NOTE(C, 1, 4, "")))), SPZ_DOUBT_RANGE, "");
}

static void harmonics_go_beyond_the_range(void)
{
    DOUBT(VIOLA(BAR(1, OPENING NOTE(E, 7, 4, "<notations><technical><harmonic/></technical></notations>"))), SPZ_DOUBT_RANGE, "");
    DOUBT(VIOLA(BAR(1, OPENING NOTE(E, 7, 4, ""))), SPZ_DOUBT_RANGE, "Viola|1|E7 is out of the range of the viola");
}

static void a_wind_instrument_is_known_by_its_sound(void)
{
    DOUBT(SCORE("<score-part id=\"P1\"><part-name>Oboe</part-name><score-instrument id=\"I\"><instrument-name>Oboe</instrument-name><instrument-sound>wind.reed.oboe</instrument-sound></score-instrument></score-part>",
                PART(P1, BAR(1, OPENING NOTE(A, 3, 4, "")))), SPZ_DOUBT_RANGE, "Oboe|1|A3 is out of the range of the oboe");
}

static void a_missing_tempo_is_a_doubt_and_a_late_one_a_note(void)
{
    DOUBT(VIOLA(BAR(1, DIVISIONS(1) TIME(4, 4) NOTE(C, 4, 4, ""))), SPZ_DOUBT_TEMPO, "||no tempo is given; what depends on speed can only be guessed");
    DOUBT(VIOLA(BAR(1, DIVISIONS(1) TIME(4, 4) NOTE(C, 4, 4, "")) BAR(2, TEMPO NOTE(C, 4, 4, ""))), SPZ_DOUBT_TEMPO, "|2|the first tempo is given only here");
    CU_ASSERT_EQUAL(spz_doubts_grave(doubts), 0);
    CU_ASSERT_EQUAL(spz_doubts_count(doubts), 1);
}

static void a_part_of_an_unknown_name_is_a_doubt(void)
{
    const char *said = doubt_of_kind(doubts_of(SCORE(LISTED(P1, "Zzyx"), PART(P1, BAR(1, OPENING NOTE(C, 5, 4, ""))))), SPZ_DOUBT_SECTION);
    CU_ASSERT_NOT_EQUAL(said[0], '\0');
}

static void a_division_that_never_ends_is_named_with_its_mark(void)
{
    DOUBT(VIOLA(BAR(1, OPENING WORDS("div.") NOTE(C, 4, 4, "") CHORD(E, 4, 4, "")) BAR(2, NOTE(C, 4, 4, ""))), SPZ_DOUBT_DIVISION,
          "Viola|1|divided from here ('div.') to the end, with no word that ends it");
    DOUBT(VIOLA(BAR(1, OPENING WORDS("div.") NOTE(C, 4, 4, "") CHORD(E, 4, 4, "")) BAR(2, WORDS("unis.") NOTE(C, 4, 4, ""))), SPZ_DOUBT_DIVISION, "");
    DOUBT(VIOLA(BAR(1, OPENING WORDS("geteilt") NOTE(C, 4, 4, ""))), SPZ_DOUBT_DIVISION, "Viola|1|said to be divided ('geteilt'), but never plays two notes at once after it");
}

static void bars_that_are_never_played_are_named(void)
{
    DOUBT(VIOLA(BAR(1, OPENING NOTE(C, 4, 4, "") "<barline location=\"right\"><repeat direction=\"backward\" times=\"1\"/></barline>")
                BAR(2, "<barline location=\"left\"><ending number=\"4\" type=\"start\"/></barline>" NOTE(C, 4, 4, "") "<barline location=\"right\"><ending number=\"4\" type=\"stop\"/></barline>") BAR(3, NOTE(C, 4, 4, ""))),
          SPZ_DOUBT_ORDER, "|2|never played: the repeat signs and jumps lead past it");
}

static void what_the_reader_put_right_is_in_the_list(void)
{
    DOUBT(VIOLA(BAR(1, OPENING NOTE(C, 4, 4, "") BACKUP(9) NOTE(E, 4, 4, "<voice>2</voice>"))), SPZ_DOUBT_FILE, "Viola|1|a step back goes behind the start of the bar; it ends at the start");
}

static void a_file_that_can_not_be_read_is_an_error_and_no_list(void)
{
    spz_doubts *list = NULL;
    CU_ASSERT_EQUAL(spz_check("tests/no/such/file.mxl", NULL, NULL, &list), SPZ_CANNOT_OPEN);
    CU_ASSERT_PTR_NULL(list);
}

static void every_kind_has_a_name_and_every_range_a_source(void)
{
    for (int kind = 0; kind < SPZ_DOUBT_KIND_COUNT; kind++)
        CU_ASSERT_NOT_EQUAL(spz_doubt_kind_name((spz_doubt_kind)kind)[0], '\0');
    CU_ASSERT_STRING_EQUAL(spz_doubt_kind_name(SPZ_DOUBT_KIND_COUNT), "");
    CU_ASSERT_PTR_NULL(spz_range_at(spz_range_count()));
    for (size_t i = 0; i < spz_range_count(); i++) {
        const spz_range *range = spz_range_at(i);
        CU_ASSERT_TRUE(range->lowest >= 20 && range->lowest < range->highest && range->highest <= 108);
        CU_ASSERT_TRUE(strlen(range->source) > 10);
    }
}

/* MusicXML 4.0, sounds.xml: the ids are those of the standard. */
static void the_sound_ids_of_the_ranges_are_those_of_the_standard(void)
{
    const char *path = shared_file("schema/sounds.xml");
    static char text[65536];
    FILE *file = path ? fopen(path, "r") : NULL;
    if (!file)
        return;
    text[fread(text, 1, sizeof text - 1, file)] = '\0';
    fclose(file);
    for (size_t i = 0; i < spz_range_count(); i++) {
        char id[128];
        snprintf(id, sizeof id, "id=\"%s\"", spz_range_at(i)->sound);
        if (!strstr(text, id))
            printf("  no such sound: %s\n", id);
        CU_ASSERT_PTR_NOT_NULL(strstr(text, id));
    }
}

static const struct Statement statements[] = {
    STATEMENT(a_sound_score_has_no_doubts),
    STATEMENT(a_part_that_fills_too_little_of_a_bar_is_named),
    STATEMENT(a_row_of_bars_with_the_same_fault_is_one_doubt),
    STATEMENT(an_overfull_bar_is_named),
    STATEMENT(an_upbeat_and_its_last_bar_are_no_fault),
    STATEMENT(a_last_bar_that_makes_up_for_nothing_is_a_fault),
    STATEMENT(a_bar_split_for_a_repeat_is_no_fault),
    STATEMENT(an_empty_bar_in_a_part_is_taken_for_silence),
    STATEMENT(a_part_that_ends_early_is_named),
    STATEMENT(ties_without_their_other_end_are_named),
    STATEMENT(a_tie_into_both_endings_is_no_fault),
    STATEMENT(a_note_below_the_lowest_string_is_named),
    STATEMENT(harmonics_go_beyond_the_range),
    STATEMENT(a_wind_instrument_is_known_by_its_sound),
    STATEMENT(a_missing_tempo_is_a_doubt_and_a_late_one_a_note),
    STATEMENT(a_part_of_an_unknown_name_is_a_doubt),
    STATEMENT(a_division_that_never_ends_is_named_with_its_mark),
    STATEMENT(bars_that_are_never_played_are_named),
    STATEMENT(what_the_reader_put_right_is_in_the_list),
    STATEMENT(a_file_that_can_not_be_read_is_an_error_and_no_list),
    STATEMENT(every_kind_has_a_name_and_every_range_a_source),
    STATEMENT(the_sound_ids_of_the_ranges_are_those_of_the_standard),
};

void suite_check(void)
{
    suite_of("check", statements, COUNT(statements));
}
