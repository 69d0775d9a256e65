/* What `spezzato check` doubts, and what it lets pass. */
#include "spezzato/check.h"
#include "support/scores/score_text.h"
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

/* The only doubt of that kind; NULL when there is none or several. */
static const spz_doubt *only(const spz_doubts *list, spz_doubt_kind kind)
{
    const spz_doubt *found = NULL;
    size_t count = 0;
    for (size_t i = 0; i < spz_doubts_count(list); i++)
        if (spz_doubts_at(list, i)->kind == kind) {
            found = spz_doubts_at(list, i);
            count++;
        }
    return count == 1 ? found : NULL;
}

/* The only doubt of that kind is this one, in that part and bars ('12', '12-15'); it lasts until the next check. */
static const spz_doubt *doubted(const char *xml, spz_doubt_kind kind, spz_fault fault, const char *part, const char *bars)
{
    static const spz_doubt nothing = {.part = "", .bar = "", .last_bar = "", .name = ""};
    char place[80];
    const spz_doubt *doubt = only(doubts_of(xml), kind);
    CU_ASSERT_PTR_NOT_NULL(doubt);
    if (!doubt)
        return &nothing;
    snprintf(place, sizeof place, strcmp(doubt->bar, doubt->last_bar) ? "%s-%s" : "%s", doubt->bar, doubt->last_bar);
    CU_ASSERT_EQUAL(doubt->fault, fault);
    CU_ASSERT_STRING_EQUAL(doubt->part, part);
    CU_ASSERT_STRING_EQUAL(place, bars);
    return doubt;
}

static bool none_of(const char *xml, spz_doubt_kind kind)
{
    const spz_doubts *list = doubts_of(xml);
    for (size_t i = 0; i < spz_doubts_count(list); i++)
        if (spz_doubts_at(list, i)->kind == kind)
            return false;
    return true;
}

static bool is(spz_fraction fraction, long over, long under)
{
    return fraction.over == over && fraction.under == under;
}

static const char *pitch(const spz_doubt *doubt)
{
    static char text[SPZ_PITCH_TEXT];
    return spz_pitch_text(doubt->pitch, text);
}

#define TEMPO "<sound tempo=\"90\"/>"
#define VIOLA(bars) SCORE(LISTED(P1, "Viola"), PART(P1, bars))
#define DUO(first, second) SCORE(LISTED(P1, "Violin I") LISTED(P2, "Viola"), PART(P1, first) PART(P2, second))
#define OPENING DIVISIONS(1) TIME(4, 4) TEMPO

static void a_sound_score_has_no_doubts(void)
{
    CU_ASSERT_EQUAL(spz_doubts_count(doubts_of(VIOLA(BAR(1, OPENING NOTE(C, 4, 4, "")) BAR(2, NOTE(D, 4, 4, ""))))), 0);
    CU_ASSERT_EQUAL(spz_doubts_grave(doubts), 0);
}

static void a_part_that_fills_too_little_of_a_bar_is_named(void)
{
    const spz_doubt *doubt = doubted(DUO(BAR(1, OPENING NOTE(C, 5, 4, "")) BAR(2, NOTE(C, 5, 4, "")), BAR(1, DIVISIONS(1) TIME(4, 4) NOTE(C, 4, 4, "")) BAR(2, NOTE(C, 4, 3, ""))),
                                     SPZ_DOUBT_BAR, SPZ_FAULT_BAR_OF_PART, "Viola", "2");
    CU_ASSERT_TRUE(is(doubt->holds, 3, 1) && is(doubt->asks, 4, 1));
}

static void a_row_of_bars_with_the_same_fault_is_one_doubt(void)
{
    const spz_doubt *doubt = doubted(DUO(BAR(1, OPENING NOTE(C, 5, 4, "")) BAR(2, NOTE(C, 5, 4, "")) BAR(3, NOTE(C, 5, 4, "")),
                                         BAR(1, DIVISIONS(2) TIME(4, 4) NOTE(C, 4, 7, "")) BAR(2, NOTE(C, 4, 7, "")) BAR(3, NOTE(C, 4, 8, ""))),
                                     SPZ_DOUBT_BAR, SPZ_FAULT_BAR_OF_PART, "Viola", "1-2");
    CU_ASSERT_TRUE(is(doubt->holds, 7, 2) && is(doubt->asks, 4, 1));
}

static void an_overfull_bar_is_named(void)
{
    const spz_doubt *doubt = doubted(VIOLA(BAR(1, OPENING NOTE(C, 4, 5, ""))), SPZ_DOUBT_BAR, SPZ_FAULT_BAR_OF_ALL, "", "1");
    CU_ASSERT_TRUE(is(doubt->holds, 5, 1) && is(doubt->asks, 4, 1));
}

static void an_upbeat_and_its_last_bar_are_no_fault(void)
{
    CU_ASSERT_TRUE(none_of(VIOLA(BAR(0, OPENING NOTE(C, 4, 1, "")) BAR(1, NOTE(C, 4, 4, "")) BAR(2, NOTE(C, 4, 3, ""))), SPZ_DOUBT_BAR));
}

static void a_last_bar_that_makes_up_for_nothing_is_a_fault(void)
{
    const spz_doubt *doubt = doubted(VIOLA(BAR(1, OPENING NOTE(C, 4, 4, "")) BAR(2, NOTE(C, 4, 3, ""))), SPZ_DOUBT_BAR, SPZ_FAULT_BAR_OF_ALL, "", "2");
    CU_ASSERT_TRUE(is(doubt->holds, 3, 1) && is(doubt->asks, 4, 1));
}

static void a_bar_split_for_a_repeat_is_no_fault(void)
{
    CU_ASSERT_TRUE(none_of(VIOLA(BAR(1, OPENING NOTE(C, 4, 4, "")) BAR(2, NOTE(C, 4, 3, "") "<barline location=\"right\"><repeat direction=\"backward\"/></barline>")
                BAR(X1, NOTE(C, 4, 1, "")) BAR(3, NOTE(C, 4, 4, ""))), SPZ_DOUBT_BAR));
}

static void halves_of_a_bar_that_are_both_counted_are_told(void)
{
    const spz_doubt *doubt = doubted(VIOLA(BAR(1, OPENING NOTE(C, 4, 4, "")) BAR(2, NOTE(C, 4, 3, "") "<barline location=\"right\"><repeat direction=\"backward\"/></barline>")
                BAR(3, NOTE(C, 4, 1, "")) BAR(4, NOTE(C, 4, 4, ""))), SPZ_DOUBT_BAR, SPZ_FAULT_HALVES_COUNTED, "", "3");
    CU_ASSERT_STRING_EQUAL(doubt->name, "2");
    CU_ASSERT_STRING_EQUAL(doubt->other, "3");
}

static void an_upbeat_that_is_counted_is_told(void)
{
    doubted(VIOLA(BAR(1, OPENING NOTE(C, 4, 1, "")) BAR(2, NOTE(C, 4, 4, "")) BAR(3, NOTE(C, 4, 4, ""))), SPZ_DOUBT_BAR, SPZ_FAULT_UPBEAT_COUNTED, "", "1");
}

static void a_gap_in_the_numbers_is_told(void)
{
    const spz_doubt *doubt = doubted(VIOLA(BAR(1, OPENING NOTE(C, 4, 4, "")) BAR(2, NOTE(C, 4, 4, "")) BAR(5, NOTE(C, 4, 4, ""))), SPZ_DOUBT_BAR, SPZ_FAULT_NUMBERS_LEAP, "", "5");
    CU_ASSERT_STRING_EQUAL(doubt->name, "2");
}

static void an_empty_bar_in_a_part_is_taken_for_silence(void)
{
    CU_ASSERT_TRUE(none_of(DUO(BAR(1, OPENING NOTE(C, 5, 4, "")), BAR(1, DIVISIONS(1) TIME(4, 4))), SPZ_DOUBT_BAR));
}

static void a_part_that_ends_early_is_named(void)
{
    const spz_doubt *doubt = doubted(DUO(BAR(1, OPENING NOTE(C, 5, 4, "")) BAR(2, NOTE(C, 5, 4, "")), BAR(1, DIVISIONS(1) TIME(4, 4) NOTE(C, 4, 4, ""))),
                                     SPZ_DOUBT_LENGTH, SPZ_FAULT_PART_ENDS, "Viola", "1");
    CU_ASSERT_EQUAL(doubt->count, 1);
    CU_ASSERT_EQUAL(doubt->of, 2);
}

static void ties_without_their_other_end_are_named(void)
{
    const char *open = VIOLA(BAR(1, OPENING NOTE(C, 4, 4, TIE_FROM)) BAR(2, NOTE(D, 4, 4, "")));
    const char *begun_nowhere = VIOLA(BAR(1, OPENING NOTE(D, 4, 4, "")) BAR(2, NOTE(C, 4, 4, TIE_TO)));
    CU_ASSERT_STRING_EQUAL(pitch(doubted(open, SPZ_DOUBT_TIE, SPZ_FAULT_TIE_WITHOUT_END, "Viola", "1")), "C4");
    CU_ASSERT_STRING_EQUAL(pitch(doubted(begun_nowhere, SPZ_DOUBT_TIE, SPZ_FAULT_TIE_WITHOUT_BEGINNING, "Viola", "2")), "C4");
    CU_ASSERT_TRUE(none_of(VIOLA(BAR(1, OPENING NOTE(C, 4, 4, TIE_FROM)) BAR(2, NOTE(C, 4, 4, TIE_TO))), SPZ_DOUBT_TIE));
}

static void a_tie_into_both_endings_is_no_fault(void)
{
    CU_ASSERT_TRUE(none_of(VIOLA(BAR(1, OPENING NOTE(C, 4, 4, TIE_FROM)) BAR(2, "<barline location=\"left\"><ending number=\"1\" type=\"start\"/></barline>" NOTE(C, 4, 4, TIE_TO)
        "<barline location=\"right\"><ending number=\"1\" type=\"stop\"/><repeat direction=\"backward\"/></barline>")
        BAR(3, "<barline location=\"left\"><ending number=\"2\" type=\"start\"/></barline>" NOTE(C, 4, 4, TIE_TO))), SPZ_DOUBT_TIE));
}

static void out_of_range(const char *xml, const char *part, const char *note, const char *instrument, int notes)
{
    const spz_doubt *doubt = doubted(xml, SPZ_DOUBT_RANGE, SPZ_FAULT_OUT_OF_RANGE, part, "1");
    CU_ASSERT_STRING_EQUAL(pitch(doubt), note);
    CU_ASSERT_STRING_EQUAL(spz_range_at(doubt->range)->name, instrument);
    CU_ASSERT_EQUAL(doubt->count, notes);
}

static void a_note_below_the_lowest_string_is_named(void)
{
    out_of_range(VIOLA(BAR(1, OPENING NOTE(C, 3, 2, "") NOTE(B, 2, 2, ""))), "Viola", "B2", "viola", 1);
    out_of_range(SCORE(LISTED(P1, "Violin I"), PART(P1, BAR(1, OPENING NOTE(G, 3, 2, "") NOTE(F, 3, 1, "") NOTE(E, 3, 1, "")))), "Violin I", "F3", "violin", 2);
    CU_ASSERT_TRUE(none_of(SCORE(LISTED(P1, "Contrabass"), PART(P1, BAR(1, OPENING NOTE(C, 1, 4, "")))), SPZ_DOUBT_RANGE));
}

static void harmonics_go_beyond_the_range(void)
{
    CU_ASSERT_TRUE(none_of(VIOLA(BAR(1, OPENING NOTE(E, 7, 4, "<notations><technical><harmonic/></technical></notations>"))), SPZ_DOUBT_RANGE));
    out_of_range(VIOLA(BAR(1, OPENING NOTE(E, 7, 4, ""))), "Viola", "E7", "viola", 1);
}

static void a_wind_instrument_is_known_by_its_sound(void)
{
    out_of_range(SCORE("<score-part id=\"P1\"><part-name>Oboe</part-name><score-instrument id=\"I\"><instrument-name>Oboe</instrument-name><instrument-sound>wind.reed.oboe</instrument-sound></score-instrument></score-part>",
                       PART(P1, BAR(1, OPENING NOTE(A, 3, 4, "")))), "Oboe", "A3", "oboe", 1);
}

static void a_missing_tempo_is_a_doubt_and_a_late_one_a_note(void)
{
    doubted(VIOLA(BAR(1, DIVISIONS(1) TIME(4, 4) NOTE(C, 4, 4, ""))), SPZ_DOUBT_TEMPO, SPZ_FAULT_NO_TEMPO, "", "");
    CU_ASSERT_EQUAL(spz_doubts_grave(doubts), 1);
    doubted(VIOLA(BAR(1, DIVISIONS(1) TIME(4, 4) NOTE(C, 4, 4, "")) BAR(2, TEMPO NOTE(C, 4, 4, ""))), SPZ_DOUBT_TEMPO, SPZ_FAULT_LATE_TEMPO, "", "2");
    CU_ASSERT_EQUAL(spz_doubts_grave(doubts), 0);
    CU_ASSERT_EQUAL(spz_doubts_count(doubts), 1);
}

/* One doubt, and a part without a name goes by its place. */
static void a_part_of_an_unknown_name_is_one_doubt(void)
{
    const spz_doubts *list = doubts_of(SCORE(LISTED(P1, "Zzyx"), PART(P1, BAR(1, OPENING NOTE(C, 5, 4, "")))));
    bool unknown = false;
    for (size_t i = 0; i < spz_doubts_count(list); i++)
        unknown |= spz_doubts_at(list, i)->fault == SPZ_FAULT_PART_UNTOLD && !strcmp(spz_doubts_at(list, i)->part, "Zzyx");
    CU_ASSERT_TRUE(unknown);
    CU_ASSERT_EQUAL(spz_doubts_count(list), 1);
    list = doubts_of(SCORE(LISTED(P1, ""), PART(P1, BAR(1, OPENING NOTE(C, 5, 4, "")))));
    CU_ASSERT_FATAL(spz_doubts_count(list) == 1);
    CU_ASSERT_STRING_EQUAL(spz_doubts_at(list, 0)->part, "part 1");
}

static void a_division_that_never_ends_is_named_with_its_mark(void)
{
    const char *open = VIOLA(BAR(1, OPENING WORDS("div.") NOTE(C, 4, 4, "") CHORD(E, 4, 4, "")) BAR(2, NOTE(C, 4, 4, "") CHORD(E, 4, 4, "")));
    CU_ASSERT_STRING_EQUAL(doubted(open, SPZ_DOUBT_DIVISION, SPZ_FAULT_DIVISION_OPEN, "Viola", "1")->name, "div.");
    CU_ASSERT_STRING_EQUAL(doubted(open, SPZ_DOUBT_DIVISION, SPZ_FAULT_DIVISION_OPEN, "Viola", "1")->other, "");
#define SINGLE(n) BAR(n, NOTE(C, 4, 4, ""))
    const char *lapsed = VIOLA(BAR(1, OPENING WORDS("div.") NOTE(C, 4, 4, "") CHORD(E, 4, 4, "")) BAR(2, NOTE(C, 4, 4, "") CHORD(E, 4, 4, ""))
                               SINGLE(3) SINGLE(4) SINGLE(5) SINGLE(6) SINGLE(7) SINGLE(8) SINGLE(9) SINGLE(10));
    CU_ASSERT_STRING_EQUAL(doubted(lapsed, SPZ_DOUBT_DIVISION, SPZ_FAULT_DIVISION_OPEN, "Viola", "1")->other, "2");
    CU_ASSERT_TRUE(none_of(VIOLA(BAR(1, OPENING WORDS("div.") NOTE(C, 4, 4, "") CHORD(E, 4, 4, "")) BAR(2, WORDS("unis.") NOTE(C, 4, 4, ""))), SPZ_DOUBT_DIVISION));
    const char *idle = VIOLA(BAR(1, OPENING WORDS("geteilt") NOTE(C, 4, 4, "")));
    CU_ASSERT_STRING_EQUAL(doubted(idle, SPZ_DOUBT_DIVISION, SPZ_FAULT_DIVISION_NOT_PLAYED, "Viola", "1")->name, "geteilt");
}

static void bars_that_are_never_played_are_named(void)
{
    doubted(VIOLA(BAR(1, OPENING NOTE(C, 4, 4, "") "<barline location=\"right\"><repeat direction=\"backward\" times=\"1\"/></barline>")
                BAR(2, "<barline location=\"left\"><ending number=\"4\" type=\"start\"/></barline>" NOTE(C, 4, 4, "") "<barline location=\"right\"><ending number=\"4\" type=\"stop\"/></barline>") BAR(3, NOTE(C, 4, 4, ""))),
            SPZ_DOUBT_ORDER, SPZ_FAULT_NEVER_PLAYED, "", "2");
}

static void what_the_reader_put_right_is_in_the_list(void)
{
    doubted(VIOLA(BAR(1, OPENING NOTE(C, 4, 4, "") BACKUP(9) NOTE(E, 4, 4, "<voice>2</voice>"))), SPZ_DOUBT_FILE, SPZ_FAULT_STEP_BEHIND_BAR, "Viola", "1");
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
        STATEMENT(halves_of_a_bar_that_are_both_counted_are_told),
        STATEMENT(an_upbeat_that_is_counted_is_told),
        STATEMENT(a_gap_in_the_numbers_is_told),
    STATEMENT(an_empty_bar_in_a_part_is_taken_for_silence),
    STATEMENT(a_part_that_ends_early_is_named),
    STATEMENT(ties_without_their_other_end_are_named),
    STATEMENT(a_tie_into_both_endings_is_no_fault),
    STATEMENT(a_note_below_the_lowest_string_is_named),
    STATEMENT(harmonics_go_beyond_the_range),
    STATEMENT(a_wind_instrument_is_known_by_its_sound),
    STATEMENT(a_missing_tempo_is_a_doubt_and_a_late_one_a_note),
    STATEMENT(a_part_of_an_unknown_name_is_one_doubt),
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
