/* What is said around a citation: heading, key, tempo, loudness, trio, solo winds. */
#include "citations/citation_facts.h"
#include "pages/drawings/staves/entry_colours.h"
#include "model/movement.h"
#include "support/scores/sheet_music.h"
#include "support/suite.h"
#include <stdio.h>
#include <string.h>

static const char *heading(const char *notation)
{
    static char text[HEADING_TEXT];
    SheetMusic music = sheet_music(notation);
    movement_heading(first_movement(&music).movement, text);
    sheet_music_end(&music);
    return text;
}

#define TWO_BARS "Violin I: c5:w | c5\nViolin II: c5:w | c5\nViola: c4:w | c4\nVioloncello: c3:w | c3\n"

static void a_heading_says_more_than_a_number(void)
{
    CU_ASSERT_STRING_EQUAL(heading("work: Serenade  title: Rondo\ntime: 4/4\n" TWO_BARS), "Serenade: Rondo");
    CU_ASSERT_STRING_EQUAL(heading("work: Serenade  movement: 2\ntime: 4/4  tempo: q=60 Adagio\n" TWO_BARS), "Serenade: II. Adagio");
    CU_ASSERT_STRING_EQUAL(heading("work: Serenade  movement: 2\ntime: 4/4\n" TWO_BARS), "Serenade: II");
    CU_ASSERT_STRING_EQUAL(heading("title: Waltz\ntime: 4/4\n" TWO_BARS), "Waltz");
}

static void a_code_is_no_heading_where_the_name_of_the_file_says_more(void)
{
    const char *said = heading("title: tc4\ntime: 4/4\n" TWO_BARS);
    CU_ASSERT_STRING_NOT_EQUAL(said, "tc4");
    CU_ASSERT_PTR_NULL(strchr(said, '/'));
    CU_ASSERT_PTR_NULL(strstr(said, ".musicxml"));
}

static bool key_is(const char *signature, const char *bass, int fifths, bool minor)
{
    char notation[300];
    int found = 99;
    bool is_minor = false;
    snprintf(notation, sizeof notation, "time: 4/4  key: %s\nViolin I: c5:w | c6\nViola: c4:w | c4\nVioloncello: c3:w | %s\n", signature, bass);
    SheetMusic music = sheet_music(notation);
    bool plain = movement_key(first_movement(&music).movement, &found, &is_minor);
    sheet_music_end(&music);
    return plain && found == fifths && is_minor == minor;
}

static void the_last_bass_note_says_which_key_of_two(void)
{
    CU_ASSERT_TRUE(key_is("-3", "eb2", -3, false));
    CU_ASSERT_TRUE(key_is("-3", "c2", -3, true));
    CU_ASSERT_TRUE(key_is("2", "d2", 2, false));
    CU_ASSERT_TRUE(key_is("6", "d#2", 6, true));
    CU_ASSERT_FALSE(key_is("2", "a2", 2, false)); /* neither D nor B: nothing is said */
    CU_ASSERT_FALSE(key_is("2", "a2", 2, true));
}

static void a_bass_that_stops_early_is_the_bass_all_the_same(void)
{
    int fifths;
    bool minor;
    SheetMusic music = sheet_music("time: 4/4  key: -2\nViolin I: c5:w | d5\nViola: c4:w | bb4\nVioloncello: c3:w | r:h. g2:e r\n");
    CU_ASSERT_TRUE(movement_key(first_movement(&music).movement, &fifths, &minor));
    CU_ASSERT_TRUE(minor);
    sheet_music_end(&music);
}

/* The key that is told of a passage in the last bar but one; from bar 2 on another signature holds, with bars of rest between. */
static const char *key_with(const char *bass_at_first, const char *third, const char *bass_here, const char *bass_at_last, size_t rests)
{
    static char text[40];
    char notation[400], pause[20] = "";
    if (rests)
        snprintf(pause, sizeof pause, "R*%zu | ", rests);
    snprintf(notation, sizeof notation, "time: 4/4  key: -3\nViolin I: c5:w | {key 0} %s | %sc5:w | g4\nViola: c4:w | c4 | %sc4:w | c4\nVioloncello: c3:w | %s | %s%s:w | %s\n", third, pause, pause,
             bass_at_first, pause, bass_here, bass_at_last);
    SheetMusic music = sheet_music(notation);
    spz_movement_reading reading = first_movement(&music);
    spz_passage passage = {.kind = SPZ_EXCHANGE, .first = 2 + rests, .last = 2 + rests, .onset = spz_movement_bar(reading.movement, 2 + rests).onset};
    Citation citation = {.passage = &passage};
    citation_surround(reading.movement, reading.sections, &citation);
    snprintf(text, sizeof text, "%s%d%s", citation.has_key ? "" : "none ", citation.fifths, citation.minor ? " minor" : "");
    sheet_music_end(&music);
    return text;
}

static const char *key_there(const char *bass_at_first, const char *third, const char *bass_at_last)
{
    return key_with(bass_at_first, third, "c3", bass_at_last, 0);
}

static void the_key_of_a_place_is_told_where_the_signature_changes_and_the_bass_agrees(void)
{
    CU_ASSERT_STRING_EQUAL(key_there("c3", "e5", "c3"), "0");
    CU_ASSERT_STRING_EQUAL(key_there("c3", "e5", "g2"), "0"); /* it ends on a dominant */
    CU_ASSERT_STRING_EQUAL(key_there("a2", "e5", "a2"), "0 minor");
    CU_ASSERT_STRING_EQUAL(key_with("a2", "e5", "a2", "a2", 20), "0 minor");
    CU_ASSERT_STRING_EQUAL(key_with("a2", "e5", "d3", "a2", 14), "0 minor");
    CU_ASSERT_STRING_EQUAL(key_with("a2", "e5", "d3", "a2", 20), "none 0 minor"); /* the music has wandered off */
    CU_ASSERT_STRING_EQUAL(key_there("d3", "f5", "c3"), "0");
    CU_ASSERT_STRING_NOT_EQUAL(key_there("c3", "e5", "a2"), "0"); /* each end another: nothing is said */
    CU_ASSERT_STRING_NOT_EQUAL(key_there("c3", "eb5", "g2"), "0"); /* a minor third against it */
}

static const char answered[] =
    "time: 4/4  tempo: q=60 Andante\n"
    "Violin I:    <f> c5 r:h. | R | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | R | c5:w\n"
    "Violin II:   R | R | R | <p> g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | c5:w\n"
    "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4\n"
    "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3\n";

/* The first dialogue of a movement, as it is cited. */
static Citation first_dialogue(const SheetMusic *music)
{
    Citation citation = {0};
    spz_movement_reading reading = first_movement(music);
    for (size_t i = 0; i < spz_findings_count(reading.findings) && !citation.passage; i++)
        if (spz_kind_is_antiphony(spz_findings_at(reading.findings, i)->kind))
            citation.passage = spz_findings_at(reading.findings, i);
    CU_ASSERT_PTR_NOT_NULL_FATAL(citation.passage);
    citation_surround(reading.movement, reading.sections, &citation);
    return citation;
}

static void loudness_is_that_of_the_call_and_of_the_answer(void)
{
    SheetMusic music = sheet_music(answered);
    Citation citation = first_dialogue(&music);
    CU_ASSERT_EQUAL(citation.loudness, SPZ_DYNAMIC_F);
    CU_ASSERT_EQUAL(citation.answer_loudness, SPZ_DYNAMIC_P);
    CU_ASSERT_STRING_EQUAL(citation.tempo, "Andante");
    CU_ASSERT_FALSE(citation.trio);
    sheet_music_end(&music);
}

static void words_for_a_tempo_hold_until_others_lead_back(void)
{
    static const char *const back[] = {"a tempo", "Tempo I", "tempo", "(Tempo I)"};
    for (size_t i = 0; i < COUNT(back); i++) {
        char text[sizeof answered + 40];
        snprintf(text, sizeof text, "%s", answered);
        char *at = strstr(text, "g5:e( a5");
        size_t length = (size_t)snprintf(NULL, 0, "{tempo q=60 %s} ", back[i]);
        memmove(at + length, at, strlen(at) + 1);
        char sign[40];
        snprintf(sign, sizeof sign, "{tempo q=60 %s} ", back[i]);
        memcpy(at, sign, length);
        SheetMusic music = sheet_music(text);
        CU_ASSERT_STRING_EQUAL(first_dialogue(&music).tempo, "");
        sheet_music_end(&music);
    }
}

static void words_for_a_tempo_lose_the_brackets_of_an_editor(void)
{
    char text[sizeof answered + 40];
    snprintf(text, sizeof text, "%s", answered);
    char *at = strstr(text, "Andante");
    memmove(at + 9, at + 7, strlen(at + 7) + 1);
    memcpy(at, "[Andante]", 9);
    SheetMusic music = sheet_music(text);
    CU_ASSERT_STRING_EQUAL(first_dialogue(&music).tempo, "Andante");
    sheet_music_end(&music);
}

static void loudness_is_not_told_once_it_has_begun_to_change(void)
{
    char text[sizeof answered + 20];
    snprintf(text, sizeof text, "%s", answered);
    char *at = strstr(text, "c5 r:h.");
    memmove(at + 10, at, strlen(at) + 1);
    memcpy(at, "\"cresc.\"  ", 10);
    SheetMusic music = sheet_music(text);
    CU_ASSERT_EQUAL(first_dialogue(&music).loudness, SPZ_DYNAMIC_NONE);
    sheet_music_end(&music);
}

static void a_wind_that_only_holds_on_begins_nothing(void)
{
    SheetMusic music = sheet_music("time: 4/4\nFlute: R | g5:q a5 b5 c6\nOboe: g5:w~ | g5:h r\n" TWO_BARS);
    spz_movement_reading reading = first_movement(&music);
    spz_entry entry = {.players = SPZ_WIND_PLAYERS, .bar = 1, .onset = 4 * reading.movement->per_crotchet, .first = {.midi = 79}};
    spz_passage passage = {.kind = SPZ_EXCHANGE, .first = 1, .last = 1, .onset = entry.onset, .entries = &entry, .entry_count = 1};
    Citation citation = {.passage = &passage};
    citation_surround(reading.movement, reading.sections, &citation);
    CU_ASSERT_EQUAL_FATAL(citation.wind_count, 1);
    CU_ASSERT_STRING_EQUAL(citation.winds[0], "Flute");
    size_t part = 9;
    CU_ASSERT_EQUAL(citation_wind_parts(reading.movement, reading.sections, &entry, &part, 1), 1);
    CU_ASSERT_EQUAL(part, 0);
    entry.end = entry.onset + reading.movement->per_crotchet;
    passage.end = 8 * reading.movement->per_crotchet;
    EntryColours colours = {reading.sections, &passage, "green"};
    for (size_t i = 0; i < 4; i++) { /* one crotchet of the entry, three behind it */
        const char *colour = entry_colour(&colours, 0, reading.movement->parts[0].notes[i].line);
        CU_ASSERT_TRUE(i == 0 ? colour && !strcmp(colour, "green") : !colour);
    }
    sheet_music_end(&music);
}

void suite_citation_context(void)
{
    static const struct Statement statements[] = {
        STATEMENT(a_heading_says_more_than_a_number),
        STATEMENT(a_code_is_no_heading_where_the_name_of_the_file_says_more),
        STATEMENT(the_last_bass_note_says_which_key_of_two),
        STATEMENT(a_bass_that_stops_early_is_the_bass_all_the_same),
        STATEMENT(the_key_of_a_place_is_told_where_the_signature_changes_and_the_bass_agrees),
        STATEMENT(loudness_is_that_of_the_call_and_of_the_answer),
        STATEMENT(words_for_a_tempo_hold_until_others_lead_back),
        STATEMENT(words_for_a_tempo_lose_the_brackets_of_an_editor),
        STATEMENT(loudness_is_not_told_once_it_has_begun_to_change),
        STATEMENT(a_wind_that_only_holds_on_begins_nothing),
    };
    suite_of("around a citation", statements, COUNT(statements));
}
