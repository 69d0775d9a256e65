/* What can't be read is refused with one sentence and its line; nothing crashes, nothing is fetched. */
#include "support/memory.h"
#include "support/scores/score_lines.h"
#include "support/scores/score_text.h"
#include "support/suite.h"
#include "support/xml_famine.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void refused_at(const char *xml, spz_status status, long line, const char *message)
{
    spz_score *score = score_of(xml);
    CU_ASSERT_PTR_NULL(score);
    spz_score_free(score);
    if (last_status() != status || strcmp(last_message(), message) != 0 || (line && last_line() != line))
        printf("  heard: %s, line %ld: %s\n", spz_status_text(last_status()), last_line(), last_message());
    CU_ASSERT_EQUAL(last_status(), status);
    CU_ASSERT_STRING_EQUAL(last_message(), message);
    if (line)
        CU_ASSERT_EQUAL(last_line(), line);
}

/* Read on, with this one doubt, in the bar that is named where one is. */
static spz_score *doubted_at(const char *xml, const char *message)
{
    spz_score *score = score_of(xml);
    CU_ASSERT_PTR_NOT_NULL_FATAL(score);
    if (message_count() != 1 || strcmp(last_message(), message) != 0)
        printf("  heard %d: %s\n", message_count(), last_message());
    CU_ASSERT_EQUAL(message_count(), 1);
    CU_ASSERT_STRING_EQUAL(last_message(), message);
    return score;
}

static void read_on(const char *xml, const char *message)
{
    spz_score_free(doubted_at(xml, message));
}

/* A bar with one bad value in it, and a good note behind that. */
#define READ_ON(bar, message) read_on(PIECE(BAR(1, DIVISIONS(1) TIME(4, 4) bar NOTE(G, 4, 1, ""))), message)
#define REFUSED(bars, status, message) refused_at(PIECE(bars), status, 0, message)

static void an_empty_file_is_said_to_be_empty(void)
{
    refused_at("", SPZ_EMPTY, 0, "the file is empty");
}

static void a_file_of_blanks_or_words_is_no_xml(void)
{
    refused_at("   \n ", SPZ_NOT_XML, 0, "there is no XML in this file");
    CU_ASSERT_PTR_NULL(score_of("Violin I plays"));
    CU_ASSERT_EQUAL(last_status(), SPZ_NOT_XML);
}

static void another_kind_of_xml_is_named(void)
{
    refused_at("<?xml version=\"1.0\"?>\n<html><body/></html>", SPZ_NOT_MUSICXML, 2, "this is XML, but no MusicXML score: it begins with <html>");
}

static void a_file_cut_off_anywhere_is_refused(void)
{
    const char *xml = PIECE(BAR(1, DIVISIONS(1) TIME(4, 4) WORDS("dolce") NOTE(C, 4, 4, TIE_FROM)) BAR(2, NOTE(C, 4, 4, TIE_TO)));
    for (size_t size = 1; size < strlen(xml); size++) {
        CU_ASSERT_PTR_NULL(score_of_bytes(xml, size));
        CU_ASSERT_EQUAL(last_status(), SPZ_NOT_XML);
        CU_ASSERT_EQUAL(message_count(), 1);
    }
}

static void a_cut_off_file_says_so_with_its_line(void)
{
    refused_at("<score-partwise>\n<part-list>\n<score-part id=\"P1\">\n<part-na", SPZ_NOT_XML, 4, "the file breaks off here, before its end");
    refused_at("<score-partwise>\n<part-list>\n", SPZ_NOT_XML, 3, "the file breaks off here, before its end");
}

static void wrong_nesting_is_refused_with_its_line(void)
{
    spz_score *score = score_of("<score-partwise>\n<part-list>\n</part>\n</score-partwise>");
    CU_ASSERT_PTR_NULL(score);
    CU_ASSERT_EQUAL(last_status(), SPZ_NOT_XML);
    CU_ASSERT_EQUAL(last_line(), 3);
}

static void a_score_without_bars_is_empty(void)
{
    refused_at("<score-partwise><part-list/></score-partwise>", SPZ_EMPTY, 0, "the score has no bars");
    refused_at(PIECE(""), SPZ_EMPTY, 0, "the score has no bars");
}

static const char entities[] = "the file defines or uses text substitutions (XML entities); no score needs them, and they are refused";

static void a_document_type_is_named_but_never_loaded(void)
{
    spz_score *score = score_of("<!DOCTYPE score-partwise PUBLIC \"-//Recordare//DTD MusicXML 4.0 Partwise//EN\" \"http://www.musicxml.org/dtds/partwise.dtd\">" PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, ""))));
    CU_ASSERT_PTR_NOT_NULL(score);
    spz_score_free(score);
    score = score_of("<!DOCTYPE score-partwise SYSTEM \"/nowhere/at/all.dtd\">" PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, ""))));
    CU_ASSERT_PTR_NOT_NULL(score);
    spz_score_free(score);
}

static void entities_of_any_kind_are_refused(void)
{
    refused_at("<!DOCTYPE s [\n<!ENTITY a \"b\">\n]><score-partwise/>", SPZ_OVER_LIMIT, 2, entities);
    refused_at("<!DOCTYPE s [<!ENTITY a SYSTEM \"file:///etc/hostname\">]>" PIECE(BAR(1, WORDS("&a;"))), SPZ_OVER_LIMIT, 0, entities);
    refused_at("<!DOCTYPE s [<!ENTITY % a SYSTEM \"http://localhost/a.dtd\"> %a;]>" PIECE(BAR(1, "")), SPZ_OVER_LIMIT, 0, entities);
    refused_at("<!DOCTYPE s SYSTEM \"x.dtd\">" PIECE(BAR(1, DIVISIONS(1) WORDS("&anything;"))), SPZ_OVER_LIMIT, 0, entities);
    refused_at(PIECE(BAR(1, WORDS("&anything;"))), SPZ_OVER_LIMIT, 0, entities);
}

static void a_bomb_of_entities_is_refused_at_its_first_line(void)
{
    refused_at("<!DOCTYPE s [\n<!ENTITY a \"aaaaaaaaaa\">\n<!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;\">\n<!ENTITY c \"&b;&b;&b;&b;&b;&b;\">\n]>\n<score-partwise>&c;</score-partwise>",
               SPZ_OVER_LIMIT, 2, entities);
}

static void absurd_divisions_are_passed_over(void)
{
    READ_ON(DIVISIONS(0), "a crotchet can't have '0' divisions; those before go on");
    READ_ON(DIVISIONS(-4), "a crotchet can't have '-4' divisions; those before go on");
    READ_ON(DIVISIONS(), "a crotchet can't have '' divisions; those before go on");
    READ_ON(DIVISIONS(many), "a crotchet can't have 'many' divisions; those before go on");
    READ_ON(DIVISIONS(99999999), "a crotchet can't have '99999999' divisions; those before go on");
    spz_score *score = doubted_at(PIECE(BAR(1, DIVISIONS(2) NOTE(C, 4, 2, "") DIVISIONS(0) NOTE(D, 4, 2, ""))), "a crotchet can't have '0' divisions; those before go on");
    CU_ASSERT_EQUAL(spz_movement_length(spz_score_movement(score, 0)), 2 * spz_movement_per_crotchet(spz_score_movement(score, 0)));
    spz_score_free(score);
}

static void absurd_durations_are_taken_for_none(void)
{
    READ_ON(NOTE(C, 4, -1, ""), "'-1' is no duration; none is taken");
    READ_ON(BACKUP(-1), "'-1' is no duration; none is taken");
    READ_ON(FORWARD(-2), "'-2' is no duration; none is taken");
    READ_ON(NOTE(C, 4, long, ""), "'long' is no duration; none is taken");
    READ_ON(NOTE(C, 4, 1e9, ""), "'1e9' is no duration; none is taken");
    READ_ON(NOTE(C, 4, 0.33333333, ""), "'0.33333333' is finer than any note; it is rounded");
    REFUSED(BAR(1, DIVISIONS(1) NOTE(C, 4, 999999999999, "")), SPZ_BAD_MUSIC, "a duration is longer than 10000 crotchets");
    REFUSED(BAR(1, DIVISIONS(1) FORWARD(9999) FORWARD(9999)), SPZ_BAD_MUSIC, "the bar is longer than 10000 crotchets");
}

static void note_values_without_a_common_measure_are_refused(void)
{
    REFUSED(BAR(1, DIVISIONS(999983) NOTE(C, 4, 1, "") DIVISIONS(999979) NOTE(C, 4, 1, "")), SPZ_OVER_LIMIT, "the note values differ too finely to be counted together exactly");
}

/* How many notes of a score with one part sound. */
static size_t notes_in(const spz_score *score)
{
    spz_notes *notes = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_notes_make(spz_score_movement(score, 0), 0, SPZ_NOTES_WRITTEN, &notes), SPZ_OK);
    size_t count = spz_notes_count(notes);
    spz_notes_free(notes);
    return count;
}

static void a_note_whose_pitch_can_not_be_is_left_out_and_keeps_its_time(void)
{
    spz_score *score = doubted_at(PIECE(BAR(1, DIVISIONS(1) NOTE(H, 4, 1, "") NOTE(G, 4, 1, ""))), "'H' is no name of a note; the note is left out");
    CU_ASSERT_EQUAL(notes_in(score), 1);
    CU_ASSERT_EQUAL(spz_movement_length(spz_score_movement(score, 0)), 2 * spz_movement_per_crotchet(spz_score_movement(score, 0)));
    spz_score_free(score);
    READ_ON(NOTE(C, 11, 1, ""), "'11' is no octave (0 to 9); the note is left out");
    READ_ON(NOTE(C, -1, 1, ""), "'-1' is no octave (0 to 9); the note is left out");
    READ_ON("<note>" LASTING(1) "</note>", "a note has no complete pitch and is left out");
    READ_ON("<note>" PITCH_ALTERED(C, 40, 4) LASTING(1) "</note>", "a note can't be altered by '40' semitones; it is read without a sign");
    read_on(PIECE(BAR(1, "<attributes><divisions>1</divisions><transpose><chromatic>0</chromatic><octave-change>-7</octave-change></transpose></attributes>" NOTE(C, 2, 1, ""))),
            "a note sounds beyond all hearing and is left out");
}

static void where_a_rest_or_a_drum_is_written_is_of_no_matter(void)
{
    spz_score *score = score_of(PIECE(BAR(1, DIVISIONS(1) "<note><rest><display-step>H</display-step><display-octave>12</display-octave></rest>" LASTING(1) "</note>"
        "<note><unpitched><display-step>X</display-step><display-octave>-3</display-octave></unpitched>" LASTING(1) "</note>")));
    CU_ASSERT_PTR_NOT_NULL_FATAL(score);
    CU_ASSERT_EQUAL(message_count(), 0);
    CU_ASSERT_EQUAL(notes_in(score), 1);
    spz_score_free(score);
}

static void an_impossible_transposition_is_none(void)
{
    READ_ON("<attributes><transpose><chromatic>900</chromatic></transpose></attributes>", "a transposition by '900' makes no sense; none is taken");
    READ_ON("<attributes><transpose><chromatic></chromatic></transpose></attributes>", "a transposition by '' makes no sense; none is taken");
    READ_ON("<attributes><transpose><chromatic>-1.5</chromatic></transpose></attributes>", "a transposition by '-1.5' makes no sense; none is taken");
}

static void an_impossible_signature_is_passed_over(void)
{
    READ_ON(TIME(4, 0), "the time signature '4/0' makes no sense; the one before goes on");
    READ_ON(TIME(0, 4), "the time signature '0/4' makes no sense; the one before goes on");
    READ_ON(TIME(four, 4), "the time signature 'four/4' makes no sense; the one before goes on");
    READ_ON(TIME(4, -4), "the time signature '4/-4' makes no sense; the one before goes on");
    READ_ON(TIME(, 4), "the time signature '/4' makes no sense; the one before goes on");
    READ_ON(TIME(4, ), "the time signature '4/' makes no sense; the one before goes on");
}

static void an_impossible_tempo_staff_or_offset_is_passed_over(void)
{
    READ_ON("<sound tempo=\"-1\"/>", "'-1' crotchets a minute are no tempo; the one before goes on");
    READ_ON("<sound tempo=\"1e308\"/>", "'1e308' crotchets a minute are no tempo; the one before goes on");
    READ_ON(NOTE(C, 4, 1, "<staff>99</staff>"), "staff '99' can't be; staff 1 is taken");
    READ_ON(NOTE(C, 4, 1, "<staff>0</staff>"), "staff '0' can't be; staff 1 is taken");
    READ_ON("<attributes><staves>99</staves></attributes>", "a part can't have '99' staves; one is taken");
    READ_ON("<direction><direction-type><words>div.</words></direction-type><offset>soon</offset></direction>", "'soon' is no offset; the sign stands where it is written");
}

/* Three parts in 2/4 of which the first holds three crotchets in its first bar. */
#define OVERFULL(signature) SCORE(LISTED(P1, "Violin I") LISTED(P2, "Violin II") LISTED(P3, "Viola"), \
    PART(P1, BAR(1, DIVISIONS(1) signature NOTE(C, 4, 1, "") NOTE(D, 4, 2, "") WORDS("div.") NOTE(E, 4, 1, "")) BAR(2, NOTE(F, 4, 2, ""))) \
    PART(P2, BAR(1, DIVISIONS(1) TIME(2, 4) NOTE(C, 4, 2, "")) BAR(2, NOTE(D, 4, 2, ""))) \
    PART(P3, BAR(1, DIVISIONS(1) TIME(2, 4) NOTE(C, 4, 2, "")) BAR(2, REST(2))))

static void a_part_that_holds_too_much_moves_nobody_else(void)
{
    spz_score *score = doubted_at(OVERFULL(TIME(2, 4)), "the bar holds more than its signature says; what stands behind its end is left out");
    const spz_movement *movement = spz_score_movement(score, 0);
    spz_ticks crotchet = spz_movement_per_crotchet(movement);
    spz_notes *notes = NULL;
    CU_ASSERT_EQUAL(spz_movement_bar(movement, 1).onset, 2 * crotchet);
    CU_ASSERT_EQUAL_FATAL(spz_notes_make(movement, 0, SPZ_NOTES_WRITTEN, &notes), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_notes_count(notes), 3);
    CU_ASSERT_EQUAL(spz_notes_at(notes, 1)->duration, crotchet); /* cut */
    CU_ASSERT_EQUAL(spz_notes_at(notes, 2)->onset, 2 * crotchet); /* F, not E */
    CU_ASSERT_EQUAL(spz_movement_direction(movement, 0, 0).onset, 2 * crotchet);
    spz_notes_free(notes);
    spz_score_free(score);
}

static void a_part_with_a_signature_of_its_own_may_hold_more(void)
{
    spz_score *score = score_of(SCORE(LISTED(P2, "Violin II") LISTED(P1, "Violin I"),
        PART(P2, BAR(1, DIVISIONS(1) TIME(2, 4) NOTE(C, 4, 2, ""))) PART(P1, BAR(1, DIVISIONS(1) TIME(4, 4) NOTE(C, 4, 4, "")))));
    CU_ASSERT_PTR_NOT_NULL_FATAL(score);
    CU_ASSERT_EQUAL(message_count(), 0);
    CU_ASSERT_EQUAL(spz_movement_length(spz_score_movement(score, 0)), 4 * spz_movement_per_crotchet(spz_score_movement(score, 0)));
    spz_score_free(score);
}

static void every_bad_value_of_a_file_is_told(void)
{
    spz_score *score = score_of(PIECE(BAR(1, DIVISIONS(1) TIME(4, 0) NOTE(H, 4, 1, "") NOTE(C, 11, 1, "") NOTE(C, 4, -1, "")) BAR(2, TIME(3, x) NOTE(C, 4, 1, ""))));
    CU_ASSERT_PTR_NOT_NULL(score);
    CU_ASSERT_EQUAL(message_count(), 5);
    spz_score_free(score);
}

static void elements_out_of_place_are_refused(void)
{
    refused_at("<score-partwise><note/></score-partwise>", SPZ_NOT_MUSICXML, 0, "a note stands outside the bars");
    refused_at("<score-partwise><measure/></score-partwise>", SPZ_NOT_MUSICXML, 0, "a bar stands where none can be");
    refused_at(PIECE(BAR(1, PART(P2, ""))), SPZ_NOT_MUSICXML, 0, "a part stands where none can be");
    refused_at(PIECE(BAR(1, BAR(2, ""))), SPZ_NOT_MUSICXML, 0, "a bar stands where none can be");
    refused_at(PIECE(BAR(1, LISTED(P3, "x"))), SPZ_NOT_MUSICXML, 0, "a part is declared outside the list of parts");
    refused_at(SCORE(LISTED(P1, "x"), PART(P1, BAR(1, "")) PART(P1, BAR(1, ""))), SPZ_NOT_MUSICXML, 0, "the part 'P1' stands in the file twice");
    refused_at("<score-partwise><part-list/><part>" BAR(1, "") "</part></score-partwise>", SPZ_NOT_MUSICXML, 0, "a part has no id");
    refused_at("<score-partwise><part-list/><score-partwise/></score-partwise>", SPZ_NOT_MUSICXML, 0, "a whole score stands inside another element");
}

/* `open` COUNT times, then `close` COUNT times, inside one bar. */
static char *repeated(const char *open, const char *close, int count)
{
    size_t size = (strlen(open) + strlen(close)) * (size_t)count + 1000;
    char *xml = malloc(size);
    CU_ASSERT_PTR_NOT_NULL_FATAL(xml);
    strcpy(xml, "<score-partwise><part-list>" LISTED(P1, "Viola") "</part-list><part id=\"P1\"><measure number=\"1\">");
    char *at = xml + strlen(xml);
    for (int i = 0; i < count; i++)
        at += sprintf(at, "%s", open);
    for (int i = 0; i < count; i++)
        at += sprintf(at, "%s", close);
    strcpy(at, "</measure></part></score-partwise>");
    return xml;
}

static void refuse_repeated(const char *open, const char *close, int count, spz_status status, const char *message)
{
    char *xml = repeated(open, close, count);
    refused_at(xml, status, 0, message);
    free(xml);
}

static void depth_counts_and_lengths_are_limited(void)
{
    refuse_repeated("<a>", "</a>", 100, SPZ_OVER_LIMIT, "more than 64 elements stand inside one another");
    refuse_repeated("<staff-layout>", "</staff-layout>", 100000, SPZ_OVER_LIMIT, "more than 64 elements stand inside one another");
    refuse_repeated("<direction><direction-type><segno/>", "</direction-type></direction>", 40, SPZ_OVER_LIMIT, "more than 64 elements stand inside one another");
    refuse_repeated("</measure><measure number=\"1\">", "", 60000, SPZ_OVER_LIMIT, "the score has more than 50000 bars");
}

static void names_and_attributes_are_limited(void)
{
    char *xml = malloc(400000), *at = xml;
    CU_ASSERT_PTR_NOT_NULL_FATAL(xml);
    at += sprintf(at, "<score-partwise><part-list>" LISTED(P1, "Viola") "</part-list><part id=\"P1\"><measure number=\"1\">");
    for (int i = 0; i < 6000; i++)
        at += sprintf(at, "<of-our-own-%d/>", i);
    strcpy(at, "</measure></part></score-partwise>");
    refused_at(xml, SPZ_OVER_LIMIT, 0, "the file has more than 5000 different names of elements");
    at = xml + sprintf(xml, "<score-partwise><part-list>" LISTED(P1, "Viola") "</part-list><part id=\"P1\"><measure number=\"1\"><note ");
    for (int i = 0; i < 10000; i++)
        at += sprintf(at, "a%d='1' ", i);
    strcpy(at, "/></measure></part></score-partwise>");
    refused_at(xml, SPZ_OVER_LIMIT, 0, "more than 65536 bytes stand in one piece, as an element's head or a text");
    free(xml);
}

static void of_too_many_signs_in_one_direction_the_first_are_read(void)
{
    char xml[8192] = "<score-partwise><part-list>" LISTED(P1, "Viola") "</part-list><part id=\"P1\"><measure number=\"1\"><direction><direction-type>";
    for (int i = 0; i < 70; i++)
        strcat(xml, "<coda/>");
    strcat(xml, "</direction-type></direction></measure></part></score-partwise>");
    read_on(xml, "too many signs stand in one place; those behind '64' are left out");
}

static void voices_staves_parts_and_brackets_are_limited(void)
{
    char *xml = malloc(200000), *at = xml;
    CU_ASSERT_PTR_NOT_NULL_FATAL(xml);
    at += sprintf(at, "<score-partwise><part-list>" LISTED(P1, "Viola") "</part-list><part id=\"P1\"><measure number=\"1\">" DIVISIONS(1));
    for (int i = 0; i < 300; i++)
        at += sprintf(at, "<note>" PITCH(C, 4) LASTING(1) "<voice>%d</voice></note>", i);
    strcpy(at, "</measure></part></score-partwise>");
    refused_at(xml, SPZ_OVER_LIMIT, 0, "the part has more than 200 voices");
    at = xml + sprintf(xml, "<score-partwise><part-list>");
    for (int i = 0; i < 600; i++)
        at += sprintf(at, "<score-part id=\"P%d\"/>", i);
    strcpy(at, "</part-list></score-partwise>");
    refused_at(xml, SPZ_OVER_LIMIT, 0, "the score has more than 500 parts");
    at = xml + sprintf(xml, "<score-partwise><part-list>");
    for (int i = 0; i < 40; i++)
        at += sprintf(at, "<part-group type=\"start\" number=\"%d\"/>", i);
    strcpy(at, "</part-list></score-partwise>");
    refused_at(xml, SPZ_OVER_LIMIT, 0, "more than 32 brackets stand over one part");
    free(xml);
}

static void a_text_longer_than_any_word_is_cut(void)
{
    char *xml = malloc(20000);
    CU_ASSERT_PTR_NOT_NULL_FATAL(xml);
    const char *body = PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, "")));
    char *at = xml + sprintf(xml, "<score-partwise><work><work-title>");
    memset(at, 'a', 10000);
    sprintf(at + 10000, "</work-title></work>%s", body + strlen("<score-partwise>"));
    spz_score *score = doubted_at(xml, "a text is too long; it is cut behind 'aaaaaaaaaaaaaaaaaaaaaaa...'");
    CU_ASSERT_EQUAL(strlen(spz_movement_title(spz_score_movement(score, 0))), 4096);
    spz_score_free(score);
    free(xml);
}

static void bars_that_a_late_part_would_have_to_fill_are_limited(void)
{
    char *xml = malloc(3000000), *at = xml;
    CU_ASSERT_PTR_NOT_NULL_FATAL(xml);
    at += sprintf(at, "<score-timewise><part-list/>");
    for (int i = 0; i < 40000; i++)
        at += sprintf(at, "<measure number=\"1\"/>");
    at += sprintf(at, "<measure number=\"1\">");
    for (int i = 0; i < 400; i++)
        at += sprintf(at, "<part id=\"%d\"/>", i);
    strcpy(at, "</measure></score-timewise>");
    refused_at(xml, SPZ_OVER_LIMIT, 0, "the parts have more than 4000000 bars together");
    free(xml);
}

/* The same score in each encoding: 'Flöte' plays one note. */
static void is_a_flute(const void *bytes, size_t size)
{
    spz_score *score = score_of_bytes(bytes, size);
    CU_ASSERT_PTR_NOT_NULL_FATAL(score);
    CU_ASSERT_STRING_EQUAL(spz_movement_part_name(spz_score_movement(score, 0), 0), "Fl\xc3\xb6te");
    spz_score_free(score);
}

static void utf_8_utf_16_and_latin_1_are_read(void)
{
    const char *body = PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, "")));
    char narrow[2048];
    unsigned char wide[4096];
    const char *name = strstr(body, "Viola");
    CU_ASSERT_PTR_NOT_NULL_FATAL(name);
    snprintf(narrow, sizeof narrow, "<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?>%.*sFl\xf6te%s", (int)(name - body), body, name + 5);
    is_a_flute(narrow, strlen(narrow));
    snprintf(narrow, sizeof narrow, "\xef\xbb\xbf%.*sFl\xc3\xb6te%s", (int)(name - body), body, name + 5);
    is_a_flute(narrow, strlen(narrow));
    snprintf(narrow, sizeof narrow, "<?xml version=\"1.0\" encoding=\"UTF-16\"?>%.*sFl\xf6te%s", (int)(name - body), body, name + 5);
    for (int little = 0; little < 2; little++) {
        size_t size = 0;
        wide[size++] = little ? 0xff : 0xfe;
        wide[size++] = little ? 0xfe : 0xff;
        for (const char *at = narrow; *at; at++) {
            wide[size++] = little ? (unsigned char)*at : 0;
            wide[size++] = little ? 0 : (unsigned char)*at;
        }
        is_a_flute(wide, size);
    }
}

static void an_unknown_encoding_is_refused_and_a_wrong_letter_is_not(void)
{
    CU_ASSERT_PTR_NULL(score_of("<?xml version=\"1.0\" encoding=\"EBCDIC-XX\"?>" PIECE(BAR(1, ""))));
    CU_ASSERT_EQUAL(last_status(), SPZ_NOT_XML);
    const char *body = PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, ""))), *name = strstr(body, "Viola");
    char text[2048];
    CU_ASSERT_PTR_NOT_NULL_FATAL(name);
    snprintf(text, sizeof text, "<?xml version=\"1.0\" encoding='utf-8'?>%.*sFl\xf6te \xc3\xb6%s", (int)(name - body), body, name + 5);
    spz_score *score = doubted_at(text, "the file has bytes that are no UTF-8; each is read as '?'");
    CU_ASSERT_STRING_EQUAL(spz_movement_part_name(spz_score_movement(score, 0), 0), "Fl?te \xc3\xb6");
    spz_score_free(score);
}

static void blanks_before_the_declaration_are_passed_over(void)
{
    spz_score *score = score_of("\n \r\n<?xml version=\"1.0\" encoding=\"UTF-8\"?>" PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, ""))));
    CU_ASSERT_PTR_NOT_NULL(score);
    CU_ASSERT_EQUAL(message_count(), 0);
    spz_score_free(score);
}

static void a_missing_file_a_folder_and_an_unreadable_file_are_told_apart(void)
{
    spz_score *score = NULL;
    CU_ASSERT_EQUAL(spz_score_read("tests/no/such/file.mxl", NULL, &score), SPZ_CANNOT_OPEN);
    CU_ASSERT_PTR_NULL(score);
    CU_ASSERT_EQUAL(spz_score_read("tests", NULL, &score), SPZ_CANNOT_READ);
    CU_ASSERT_PTR_NULL(score);
}

static void no_memory_at_any_point_is_a_status(void)
{
    const char *xml = PIECE(BAR(1, DIVISIONS(7) TIME(4, 4) WORDS("div.") DYNAMICS(p) NOTE(C, 4, 14, "<voice>1</voice>") BACKUP(14) NOTE(E, 3, 7, "<voice>2</voice>"))
        BAR(2, "<sound tempo=\"90\"/>" DIVISIONS(11) NOTE(D, 4, 5, "") "<barline><bar-style>light-heavy</bar-style><repeat direction=\"backward\"/></barline>") BAR(1, REST(4)));
    spz_score *score = NULL;
    long n = 0;
    while (!score && n++ < 2000) {
        memory_starve_after(n);
        score = score_of(xml);
        memory_starve_after(0);
        CU_ASSERT_TRUE(score || last_status() == SPZ_NO_MEMORY);
    }
    CU_ASSERT_TRUE(n > 5);
    CU_ASSERT_PTR_NOT_NULL(score);
    spz_score_free(score);
}

/* A request that the parser does not get ends in a status, or in the whole score; never in another one. */
static void no_memory_for_the_parser_is_never_another_score(void)
{
    const char *xml = PIECE(BAR(1, DIVISIONS(2) TIME(4, 4) WORDS("div. &amp; unis.") NOTE(C, 4, 4, "<voice>1</voice>") NOTE(E, 3, 4, "")) BAR(2, NOTE(D, 4, 8, "")));
    spz_score *score = score_of(xml);
    CU_ASSERT_PTR_NOT_NULL_FATAL(score);
    spz_score_free(score);
    xml_famine_begin();
    long n = 1, refused = 0;
    for (bool reached = true; reached && n < 5000; n++) {
        xml_famine_refuse(n);
        score = score_of(xml);
        reached = xml_famine_came();
        refused += score == NULL;
        if (score) {
            const Movement *movement = spz_score_movement(score, 0);
            CU_ASSERT_STRING_EQUAL(sounds_text(movement, 0), "C4@0+2 E3@2+2 D4@4+4");
            CU_ASSERT_EQUAL(movement->bar_count, 2);
            CU_ASSERT_EQUAL_FATAL(movement->parts[0].direction_count, 1);
            CU_ASSERT_STRING_EQUAL(movement->parts[0].directions[0].text, "div. & unis.");
        } else
            CU_ASSERT_NOT_EQUAL(last_status(), SPZ_OK);
        spz_score_free(score);
        CU_ASSERT_TRUE(xml_famine_lost() <= XML_FAMINE_LOST_MOST);
    }
    xml_famine_end();
    CU_ASSERT_TRUE(n > 20 && refused > 10);
}

static const struct Statement statements[] = {
    STATEMENT(an_empty_file_is_said_to_be_empty),
    STATEMENT(a_file_of_blanks_or_words_is_no_xml),
    STATEMENT(another_kind_of_xml_is_named),
    STATEMENT(a_file_cut_off_anywhere_is_refused),
    STATEMENT(a_cut_off_file_says_so_with_its_line),
    STATEMENT(wrong_nesting_is_refused_with_its_line),
    STATEMENT(a_score_without_bars_is_empty),
    STATEMENT(a_document_type_is_named_but_never_loaded),
    STATEMENT(entities_of_any_kind_are_refused),
    STATEMENT(a_bomb_of_entities_is_refused_at_its_first_line),
    STATEMENT(absurd_divisions_are_passed_over),
    STATEMENT(absurd_durations_are_taken_for_none),
    STATEMENT(note_values_without_a_common_measure_are_refused),
    STATEMENT(a_note_whose_pitch_can_not_be_is_left_out_and_keeps_its_time),
    STATEMENT(where_a_rest_or_a_drum_is_written_is_of_no_matter),
    STATEMENT(an_impossible_transposition_is_none),
    STATEMENT(an_impossible_signature_is_passed_over),
    STATEMENT(an_impossible_tempo_staff_or_offset_is_passed_over),
    STATEMENT(every_bad_value_of_a_file_is_told),
    STATEMENT(a_part_that_holds_too_much_moves_nobody_else),
    STATEMENT(a_part_with_a_signature_of_its_own_may_hold_more),
    STATEMENT(elements_out_of_place_are_refused),
    STATEMENT(depth_counts_and_lengths_are_limited),
    STATEMENT(names_and_attributes_are_limited),
    STATEMENT(of_too_many_signs_in_one_direction_the_first_are_read),
    STATEMENT(voices_staves_parts_and_brackets_are_limited),
    STATEMENT(a_text_longer_than_any_word_is_cut),
    STATEMENT(bars_that_a_late_part_would_have_to_fill_are_limited),
    STATEMENT(utf_8_utf_16_and_latin_1_are_read),
    STATEMENT(an_unknown_encoding_is_refused_and_a_wrong_letter_is_not),
    STATEMENT(blanks_before_the_declaration_are_passed_over),
    STATEMENT(a_missing_file_a_folder_and_an_unreadable_file_are_told_apart),
    STATEMENT(no_memory_at_any_point_is_a_status),
    STATEMENT(no_memory_for_the_parser_is_never_another_score),
};

void suite_reader_hostile(void)
{
    suite_of("reader: hostile files", statements, COUNT(statements));
}
