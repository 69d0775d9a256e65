/* What a bowing committee has to settle: slurs, signs and bow marks of sections that share a gesture. */
#include "advice/bowings.h"
#include "support/memory.h"
#include "support/scores/sheet_music.h"
#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Both violin sections in unison; what the second has behind the notes of bars 3 and 4 is filled in. */
static const char unison[] = "time: 4/4  tempo: q=120\n"
                             "Violin I:    c5:q d5 e5 f5 | g5 a5 b5 c6 | c6:q( b5 a5) g5' | f5> e5n d5 c5 | d5 e5 f5 g5 | c5:w\n"
                             "Violin II:   c5:q d5 e5 f5 | g5 a5 b5 c6 | %s | %s | d5 e5 f5 g5 | c5:w\n"
                             "Viola: R*6\nVioloncello: R*6\n";

static char *sheet_of(const SheetMusic *music, spz_format format, spz_language language)
{
    const spz_reading *readings[] = {music->reading};
    spz_sheet_options options = {.strength = 0, .language = language};
    spz_document *document = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_sheet_bowings(readings, 1, NULL, &options, format, &document), SPZ_OK);
    return text_of(document, NULL);
}

static char *unison_sheet(const char *third, const char *fourth, spz_format format)
{
    char notation[800];
    snprintf(notation, sizeof notation, unison, third, fourth);
    SheetMusic music = sheet_music(notation);
    char *text = sheet_of(&music, format, SPZ_ENGLISH);
    sheet_music_end(&music);
    return text;
}

static void what_is_written_alike_is_told_as_alike(void)
{
    char *text = unison_sheet("c6:q( b5 a5) g5'", "f5> e5n d5 c5", SPZ_AS_TEXT);
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "Parts share 1 gesture, bowed alike."));
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "Bowed alike."));
    free(text);
}

static void each_sign_that_differs_is_told_by_bar_and_beat(void)
{
    static const struct {
        const char *third, *fourth, *told;
    } cases[] = {
        {"c6:q( b5) a5 g5'", "f5> e5n d5 c5", "Bar 3, slurs: Vn I 1-3; Vn II 1-2."},
        {"c6:q b5 a5 g5'", "f5> e5n d5 c5", "Bar 3, slurs: Vn I 1-3; Vn II none."},
        {"c6:q( b5 a5) g5", "f5> e5n d5 c5", "Bar 3, dots: Vn I 4; Vn II none."},
        {"c6:q( b5 a5) g5_", "f5> e5n d5 c5", "Bar 3, lines: Vn I none; Vn II 4."},
        {"c6:q( b5 a5) g5'", "f5 e5n d5 c5>", "Bar 4, accents: Vn I 1; Vn II 4."},
        {"c6:q( b5 a5) g5'", "f5> e5v d5 c5", "Bar 4, up-bow: Vn I none; Vn II 2."},
        {"c6:q( b5 a5) g5'", "f5> e5v d5 c5", "Bar 4, down-bow: Vn I 2; Vn II none."},
        {"c6:q( b5 a5) g5'", "\"pizz.\" f5> e5n d5 c5 \"arco\"", "Bar 4, pizz.: Vn I none; Vn II 1, 2, 3, 4."},
        {"c6:q( b5 a5) g5'", "f5> e5n d5=3 c5", "Bar 4, tremolo: Vn I none; Vn II 3."},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        char *text = unison_sheet(cases[i].third, cases[i].fourth, SPZ_AS_TEXT);
        CU_ASSERT_PTR_NOT_NULL(strstr(text, cases[i].told));
        free(text);
    }
}

/* A chord's slur stands on one of its notes, whichever is on top, and a slur from a grace note ends on the note at the same moment. */
static void slurs_of_chords_and_grace_notes_end_where_they_end(void)
{
    SheetMusic music = sheet_music("time: 4/4  tempo: q=120\n"
                                   "Violin I:  c5+e5:q( d5+f5) `g5( e5+g5) f5+a5 | g5 a5 b5 c6 | c5:q d5 e5 f5 | g5 a5 b5 c6\n"
                                   "Violin II: c5:q( d5) e5 f5 | g5 a5 b5 c6 | c5:q d5 e5 f5 | g5 a5 b5 c6\n"
                                   "Viola: R*4\nVioloncello: R*4\n");
    char *text = sheet_of(&music, SPZ_AS_TEXT, SPZ_ENGLISH);
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "bowed alike"));
    free(text);
    sheet_music_end(&music);
}

static const char dialogue[] =
    "time: 4/4  tempo: q=96\n"
    "Violin I:    c5 r:h. | R*2 | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | R | c5:w\n"
    "Violin II:   R*3 | R | g5:e( a5) b5( c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | c5:w\n"
    "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4 | c4\n"
    "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3 | c3\n";

static void an_answer_is_held_against_its_call_bar_by_bar(void)
{
    SheetMusic music = sheet_music(dialogue);
    char *text = sheet_of(&music, SPZ_AS_TEXT, SPZ_ENGLISH), *csv = sheet_of(&music, SPZ_AS_CSV, SPZ_ENGLISH);
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "Vn I in bar 4 and Vn II in bar 5\n  Bars 4, 5, slurs: Vn I 1-2 1/2; Vn II 1-1 1/2, 2-2 1/2."));
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "Vn I in bar 6 and Vn II in bar 7\n  Bowed alike."));
    CU_ASSERT_PTR_NOT_NULL(strstr(csv, ",exchange,1,Vn I,4,Vn II,5,slur,1-2 1/2,\"1-1 1/2, 2-2 1/2\""));
    CU_ASSERT_PTR_NOT_NULL(strstr(csv, ",exchange,1,Vn I,6,Vn II,7,,,"));
    free(text);
    free(csv);
    sheet_music_end(&music);
}

/* Of both only the call's bar is drawn: the answer of bar 5 stands in it too. */
static void on_the_page_an_answer_stands_under_its_call(void)
{
    SheetMusic music = sheet_music(dialogue);
    char *html = sheet_of(&music, SPZ_AS_HTML, SPZ_GERMAN);
    const char *drawing = strstr(html, "<svg");
    CU_ASSERT_PTR_NOT_NULL_FATAL(drawing);
    char first[20000];
    snprintf(first, sizeof first, "%.*s", (int)(strstr(drawing, "</svg>") - drawing), drawing);
    CU_ASSERT_EQUAL(count_of(first, "class=\"number\""), 1);
    CU_ASSERT_PTR_NOT_NULL(strstr(first, ">4</text>"));
    CU_ASSERT_EQUAL(count_of(first, "class=\"staff-name\""), 2);
    CU_ASSERT_EQUAL(count_of(html, "<svg"), count_of(html, "class=\"gesture"));
    CU_ASSERT_EQUAL(count_of(html, "class=\"gesture differs\""), 1);
    CU_ASSERT_PTR_NOT_NULL(strstr(html, "Vl.\u00a0I 1-2 1/2; Vl.\u00a0II 1-1 1/2, 2-2 1/2"));
    CU_ASSERT_EQUAL(count_of(html, "<section"), count_of(html, "</section>"));
    CU_ASSERT_EQUAL(count_of(html, "<tr"), count_of(html, "</tr>"));
    CU_ASSERT_PTR_NULL(strstr(html, "http:"));
    free(html);
    sheet_music_end(&music);
}

static void a_sheet_of_bowings_hides_no_shortage_of_memory(void)
{
    static const spz_format formats[] = {SPZ_AS_TEXT, SPZ_AS_JSON, SPZ_AS_CSV, SPZ_AS_HTML};
    SheetMusic music = sheet_music(dialogue);
    const spz_reading *readings[] = {music.reading};
    for (size_t i = 0; i < COUNT(formats); i++) {
        spz_document *whole = NULL;
        CU_ASSERT_EQUAL_FATAL(spz_sheet_bowings(readings, 1, NULL, NULL, formats[i], &whole), SPZ_OK);
        bool refused = true;
        for (long request = 1; refused && request < 10000; request++) {
            spz_document *document = NULL;
            memory_refuse_once(request);
            spz_status status = spz_sheet_bowings(readings, 1, NULL, NULL, formats[i], &document);
            refused = memory_refuse_once(0);
            CU_ASSERT_EQUAL(status, document ? SPZ_OK : SPZ_NO_MEMORY);
            CU_ASSERT_TRUE(!document || strcmp(spz_document_text(document, NULL), spz_document_text(whole, NULL)) == 0);
            spz_document_free(document);
        }
        CU_ASSERT_FALSE(refused);
        spz_document_free(whole);
    }
    sheet_music_end(&music);
}

void suite_bowings(void)
{
    static const struct Statement statements[] = {
        STATEMENT(what_is_written_alike_is_told_as_alike),
        STATEMENT(each_sign_that_differs_is_told_by_bar_and_beat),
        STATEMENT(slurs_of_chords_and_grace_notes_end_where_they_end),
        STATEMENT(an_answer_is_held_against_its_call_bar_by_bar),
        STATEMENT(on_the_page_an_answer_stands_under_its_call),
        STATEMENT(a_sheet_of_bowings_hides_no_shortage_of_memory),
    };
    suite_of("bowings", statements, COUNT(statements));
}
