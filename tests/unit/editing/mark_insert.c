/* Directions put into a score stand where they were wanted, and nothing else is touched. */
#include "editing/mark_insert.h"
#include "model/own_marks.h"
#include "support/notation/notation.h"
#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

typedef struct Sheet {
    Buffer text;
    spz_score *score;
} Sheet;

static Sheet sheet_of_text(const char *text, size_t length)
{
    Sheet sheet = {.score = NULL};
    buffer_init(&sheet.text);
    buffer_add(&sheet.text, text, length);
    /* The reader passes our own marks over; here they are looked at, so they are read as somebody else's. */
    char *others = malloc(length + 1);
    CU_ASSERT_PTR_NOT_NULL_FATAL(others);
    memcpy(others, text, length);
    others[length] = '\0';
    for (char *at = others; (at = strstr(at, OWN_MARK_ID)) != NULL; at++)
        *at = 'S';
    CU_ASSERT_EQUAL_FATAL(spz_score_read_memory(others, length, "sheet", NULL, &sheet.score), SPZ_OK);
    free(others);
    return sheet;
}

static Sheet sheet_of(const char *notation)
{
    char error[300] = "";
    size_t length = 0;
    char *xml = notation_to_musicxml(notation, &length, error, sizeof error);
    if (!xml)
        printf("\n  notation: %s\n", error);
    CU_ASSERT_PTR_NOT_NULL_FATAL(xml);
    Sheet sheet = sheet_of_text(xml, length);
    free(xml);
    return sheet;
}

static void sheet_end(Sheet *sheet)
{
    buffer_free(&sheet->text);
    spz_score_free(sheet->score);
}

static const Movement *music(const Sheet *sheet)
{
    return spz_score_movement(sheet->score, 0);
}

static Sheet marked(const Sheet *sheet, Wish *wishes, size_t count)
{
    Buffer out;
    buffer_init(&out);
    CU_ASSERT_EQUAL_FATAL(mark_insert(&sheet->text, music(sheet), wishes, count, 0, &out), SPZ_OK);
    Sheet result = sheet_of_text(out.text, out.length);
    buffer_free(&out);
    return result;
}

static const Direction *words_in(const Sheet *sheet, size_t part, const char *words)
{
    const Part *p = &music(sheet)->parts[part];
    for (size_t i = 0; i < p->direction_count; i++)
        if (p->directions[i].kind == DIRECTION_WORDS && p->directions[i].text && strcmp(p->directions[i].text, words) == 0)
            return &p->directions[i];
    return NULL;
}

/* Time of the words in quavers from the start; -1 when they aren't there. */
static long quavers(const Sheet *sheet, size_t part, const char *words)
{
    const Direction *mark = words_in(sheet, part, words);
    return mark ? (long)(mark->onset * 2 / music(sheet)->per_crotchet) : -1;
}

static bool same_notes(const Sheet *a, const Sheet *b)
{
    const Movement *one = music(a), *two = music(b);
    for (size_t p = 0; p < one->part_count; p++) {
        if (one->parts[p].note_count != two->parts[p].note_count)
            return false;
        for (size_t i = 0; i < one->parts[p].note_count; i++) {
            const Note *x = &one->parts[p].notes[i], *y = &two->parts[p].notes[i];
            if (x->onset != y->onset || x->duration != y->duration || x->midi != y->midi || x->flags != y->flags || x->staff != y->staff ||
                x->voice != y->voice)
                return false;
        }
    }
    return true;
}

static bool strips_to(const Sheet *sheet, const Sheet *original, size_t directions)
{
    Buffer out;
    size_t taken = 0;
    buffer_init(&out);
    CU_ASSERT_EQUAL_FATAL(mark_strip(&sheet->text, &out, &taken), SPZ_OK);
    bool same = taken == directions && out.length == original->text.length && memcmp(out.text, original->text.text, out.length) == 0;
    buffer_free(&out);
    return same;
}

static const char two_parts[] = "time: 4/4\nViolin I: c5:q d5 e5 f5 | `g5 a5+c6+e6:h g5:h | (3 c5:e d5 e5 ) c5:q g5:h\n"
                                "Violin II: c5:w | c5:w // e4:h g4:h | R\n";

/* A wish in quavers from the start of the bar. */
static Wish wish(const Sheet *sheet, size_t part, size_t bar, long at, const char *words)
{
    return (Wish){.part = part, .bar = bar, .at = at * music(sheet)->per_crotchet / 2, .words = words};
}

static void words_stand_at_the_note_they_are_meant_for(void)
{
    Sheet sheet = sheet_of(two_parts);
    Wish wishes[] = {wish(&sheet, 0, 0, 4, "third"), wish(&sheet, 0, 1, 4, "second half"), wish(&sheet, 1, 1, 4, "lower voice")};
    Sheet result = marked(&sheet, wishes, 3);
    CU_ASSERT_EQUAL(quavers(&result, 0, "third"), 4);
    CU_ASSERT_EQUAL(quavers(&result, 0, "second half"), 12);
    CU_ASSERT_EQUAL(quavers(&result, 1, "lower voice"), 12);
    CU_ASSERT_PTR_NULL(strstr(result.text.text, "<offset>")); /* each has a note of its own */
    CU_ASSERT_TRUE(same_notes(&sheet, &result));
    CU_ASSERT_TRUE(strips_to(&result, &sheet, 3));
    sheet_end(&result);
    sheet_end(&sheet);
}

static void words_in_the_middle_of_a_note_get_an_offset(void)
{
    Sheet sheet = sheet_of(two_parts);
    Wish wishes[] = {wish(&sheet, 1, 0, 3, "inside")};
    Sheet result = marked(&sheet, wishes, 1);
    CU_ASSERT_EQUAL(quavers(&result, 1, "inside"), 3);
    CU_ASSERT_PTR_NOT_NULL(strstr(result.text.text, "<offset>"));
    CU_ASSERT_TRUE(strips_to(&result, &sheet, 1));
    sheet_end(&result);
    sheet_end(&sheet);
}

static void a_grace_note_and_a_chord_stay_with_their_main_note(void)
{
    Sheet sheet = sheet_of(two_parts);
    Wish wishes[] = {wish(&sheet, 0, 1, 0, "here")};
    Sheet result = marked(&sheet, wishes, 1);
    const char *words = strstr(result.text.text, "here</words>");
    CU_ASSERT_PTR_NOT_NULL_FATAL(words);
    const char *next = strstr(words, "<grace");
    CU_ASSERT_TRUE(next && next < strstr(words, "<pitch>")); /* before the grace note, not behind it */
    CU_ASSERT_TRUE(same_notes(&sheet, &result));
    sheet_end(&result);
    sheet_end(&sheet);
}

static void a_bracket_ends_at_the_end_of_its_bar(void)
{
    Sheet sheet = sheet_of(two_parts);
    Wish wishes[] = {wish(&sheet, 0, 0, 0, "answer"), wish(&sheet, 0, 1, 8, NULL)};
    wishes[0].sign = wishes[1].sign = WISH_BRACKET;
    wishes[0].number = wishes[1].number = 3;
    wishes[1].stop = true;
    Sheet result = marked(&sheet, wishes, 2);
    const char *start = strstr(result.text.text, "<bracket type=\"start\" number=\"3\""), *stop = strstr(result.text.text, "<bracket type=\"stop\" number=\"3\"");
    CU_ASSERT_PTR_NOT_NULL_FATAL(start);
    CU_ASSERT_PTR_NOT_NULL_FATAL(stop);
    CU_ASSERT_TRUE(start < stop);
    CU_ASSERT_TRUE(strstr(stop, "</measure>") < strstr(stop, "<note")); /* no note of this bar comes behind it */
    CU_ASSERT_TRUE(strips_to(&result, &sheet, 2));
    sheet_end(&result);
    sheet_end(&sheet);
}

static void at_one_place_ends_come_before_beginnings(void)
{
    Sheet sheet = sheet_of(two_parts);
    Wish wishes[] = {wish(&sheet, 0, 0, 4, "next"), wish(&sheet, 0, 0, 4, NULL)};
    wishes[0].sign = wishes[1].sign = WISH_DASHES;
    wishes[0].number = 2;
    wishes[1].number = 1;
    wishes[1].stop = true;
    Sheet result = marked(&sheet, wishes, 2);
    CU_ASSERT_TRUE(strstr(result.text.text, "<dashes type=\"stop\"") < strstr(result.text.text, "<dashes type=\"start\""));
    sheet_end(&result);
    sheet_end(&sheet);
}

static void words_are_shown_as_they_are_in_any_encoding(void)
{
    static const char words[] = "div. <3> & B\xc3\xa4sse";
    Sheet sheet = sheet_of(two_parts);
    Wish wishes[] = {wish(&sheet, 0, 0, 0, words)};
    Sheet result = marked(&sheet, wishes, 1);
    CU_ASSERT_PTR_NOT_NULL(words_in(&result, 0, words));
    CU_ASSERT_PTR_NULL(strstr(result.text.text, "B\xc3\xa4sse")); /* ASCII only */
    CU_ASSERT_TRUE(strips_to(&result, &sheet, 1));
    sheet_end(&result);
    sheet_end(&sheet);
}

static void words_for_a_lower_staff_stand_over_that_staff(void)
{
    Sheet sheet = sheet_of("time: 2/4\nViolins: c5:h | d5:h\nViolins/2: e4:q f4 | g4:q a4\n");
    Wish wishes[] = {wish(&sheet, 0, 1, 2, "below"), wish(&sheet, 0, 1, 0, "above")};
    wishes[0].staff = 2;
    Sheet result = marked(&sheet, wishes, 2);
    const Direction *below = words_in(&result, 0, "below"), *above = words_in(&result, 0, "above");
    CU_ASSERT_PTR_NOT_NULL_FATAL(below);
    CU_ASSERT_PTR_NOT_NULL_FATAL(above);
    CU_ASSERT_EQUAL(below->staff, 2);
    CU_ASSERT_EQUAL(above->staff, 1);
    CU_ASSERT_EQUAL(quavers(&result, 0, "below"), 6);
    sheet_end(&result);
    sheet_end(&sheet);
}

static void a_score_written_bar_by_bar_is_marked_as_well(void)
{
    static const char text[] =
        "<?xml version=\"1.0\"?>\r\n<score-timewise version=\"4.0\">\r\n<part-list><score-part id=\"A\"><part-name>Violin I</part-name></score-part>"
        "<score-part id=\"B\"><part-name>Violin II</part-name></score-part></part-list>\r\n"
        "<measure number=\"1\"><part id=\"A\"><attributes><divisions>2</divisions></attributes><note><pitch><step>C</step><octave>5</octave></pitch>"
        "<duration>8</duration></note></part><part id=\"B\"><attributes><divisions>4</divisions></attributes>"
        "<note><pitch><step>E</step><octave>4</octave></pitch><duration>16</duration></note></part></measure>\r\n"
        "<measure number=\"2\"><part id=\"A\"><note><rest/><duration>8</duration></note></part><part id=\"B\">"
        "<note><rest/><duration>8</duration></note><note><pitch><step>E</step><octave>4</octave></pitch><duration>8</duration></note></part></measure>\r\n"
        "</score-timewise>";
    Sheet sheet = sheet_of_text(text, strlen(text));
    Wish wishes[] = {wish(&sheet, 1, 1, 4, "answer"), wish(&sheet, 0, 0, 0, "lead")};
    Sheet result = marked(&sheet, wishes, 2);
    CU_ASSERT_EQUAL(quavers(&result, 0, "lead"), 0);
    CU_ASSERT_EQUAL(quavers(&result, 1, "answer"), 12);
    CU_ASSERT_TRUE(strips_to(&result, &sheet, 2));
    sheet_end(&result);
    sheet_end(&sheet);
}

static void the_scores_own_brackets_are_counted(void)
{
    Sheet plain = sheet_of(two_parts);
    const char *at = strstr(strstr(plain.text.text, "<part id="), "<note");
    Buffer text;
    uint32_t used[8];
    buffer_init(&text);
    buffer_add(&text, plain.text.text, (size_t)(at - plain.text.text));
    buffer_puts(&text, "<direction><direction-type><bracket type=\"start\" number=\"2\" line-end=\"none\"/></direction-type></direction>"
                       "<direction><direction-type><dashes type=\"start\"/></direction-type></direction>");
    buffer_puts(&text, at);
    CU_ASSERT_EQUAL(mark_lines_used(&text, music(&plain), used), SPZ_OK);
    CU_ASSERT_EQUAL(used[0], 1u << 1 | 1u << 2);
    CU_ASSERT_EQUAL(used[1], 0);
    buffer_free(&text);
    sheet_end(&plain);
}

static void directions_of_others_are_never_taken_out(void)
{
    static const char text[] = "<a>\n <direction id=\"theirs\"><x/></direction>\n <direction id=\"spezzato-mark-1\"><x/></direction>\n <b/></a>";
    Buffer in, out;
    size_t taken;
    buffer_init(&in);
    buffer_init(&out);
    buffer_puts(&in, text);
    CU_ASSERT_EQUAL(mark_strip(&in, &out, &taken), SPZ_OK);
    CU_ASSERT_EQUAL(taken, 1);
    CU_ASSERT_STRING_EQUAL(out.text, "<a>\n <direction id=\"theirs\"><x/></direction>\n <b/></a>");
    buffer_free(&in);
    buffer_free(&out);
}

void suite_mark_insert(void)
{
    static const struct Statement statements[] = {
        STATEMENT(words_stand_at_the_note_they_are_meant_for),
        STATEMENT(words_in_the_middle_of_a_note_get_an_offset),
        STATEMENT(a_grace_note_and_a_chord_stay_with_their_main_note),
        STATEMENT(a_bracket_ends_at_the_end_of_its_bar),
        STATEMENT(at_one_place_ends_come_before_beginnings),
        STATEMENT(words_are_shown_as_they_are_in_any_encoding),
        STATEMENT(words_for_a_lower_staff_stand_over_that_staff),
        STATEMENT(a_score_written_bar_by_bar_is_marked_as_well),
        STATEMENT(the_scores_own_brackets_are_counted),
        STATEMENT(directions_of_others_are_never_taken_out),
    };
    suite_of("marks: directions in a score", statements, COUNT(statements));
}
