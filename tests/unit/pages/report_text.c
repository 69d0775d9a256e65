/* Text as it reaches a terminal: nothing dangerous in it, everything in line. */
#include "writing/text_layout.h"
#include "support/text/utf8.h"
#include "spezzato/report.h"
#include "support/suite.h"
#include <stdio.h>
#include <string.h>

static const char *clean(const char *text)
{
    static char out[256];
    return spz_text_clean(text, out, sizeof out);
}

static void a_title_cannot_speak_to_the_terminal(void)
{
    CU_ASSERT_STRING_EQUAL(clean("\x1b[31mLargo\x1b[0m\a"), "[31mLargo[0m");
    CU_ASSERT_STRING_EQUAL(clean("Largo\x7f\xc2\x9b" "2J"), "Largo2J"); /* DEL and the one-byte escape of ISO 6429 */
    CU_ASSERT_STRING_EQUAL(clean("Lar\xe2\x80\xae" "go"), "Largo");       /* U+202E turns the writing round */
}

static void a_title_of_several_lines_is_shown_on_one(void)
{
    CU_ASSERT_STRING_EQUAL(clean("Symphony\nin D\tminor"), "Symphony in D minor");
}

static void accents_stay_and_broken_bytes_are_marked(void)
{
    CU_ASSERT_STRING_EQUAL(clean("Bässe, à 3, 提琴"), "Bässe, à 3, 提琴");
    CU_ASSERT_STRING_EQUAL(clean("B\xe4sse"), "B\xef\xbf\xbdsse");
    CU_ASSERT_STRING_EQUAL(clean("\xc0\xaf\xed\xa0\x80"), "\xef\xbf\xbd\xef\xbf\xbd\xef\xbf\xbd\xef\xbf\xbd\xef\xbf\xbd"); /* overlong, half a pair */
}

static void text_is_cut_between_characters_only(void)
{
    char out[5];
    CU_ASSERT_STRING_EQUAL(spz_text_clean("abcä", out, sizeof out), "abc");
    CU_ASSERT_STRING_EQUAL(spz_text_clean("abä", out, sizeof out), "abä");
    CU_ASSERT_STRING_EQUAL(spz_text_clean(NULL, out, sizeof out), "");
}

static void every_character_survives_being_written(void)
{
    static const uint32_t samples[] = {0x41, 0x7F, 0x80, 0x7FF, 0x800, 0xFFFD, 0xFFFF, 0x10000, 0x10FFFF};
    for (size_t i = 0; i < COUNT(samples); i++) {
        char bytes[UTF8_LONGEST + 1] = "";
        size_t length = utf8_write(samples[i], bytes);
        const char *at = bytes;
        CU_ASSERT_EQUAL(utf8_next(&at), samples[i]);
        CU_ASSERT_EQUAL((size_t)(at - bytes), length);
    }
}

static void width_counts_columns_not_bytes(void)
{
    CU_ASSERT_EQUAL(utf8_columns("Bässe", strlen("Bässe")), 5);
    CU_ASSERT_EQUAL(utf8_columns("Ba\xcc\x88sse", 7), 5); /* the dots of the a apart */
    CU_ASSERT_EQUAL(utf8_columns("提琴", strlen("提琴")), 4);
}

static void words_are_kept_whole_where_they_fit(void)
{
    Buffer out;
    buffer_init(&out);
    layout_paragraph(&out, 2, "- ", "first violins call, second violins answer", 24);
    CU_ASSERT_STRING_EQUAL(out.text, "  - first violins call,\n    second violins\n    answer\n");
    buffer_free(&out);
}

static void a_word_longer_than_the_line_is_broken(void)
{
    Buffer out;
    buffer_init(&out);
    layout_paragraph(&out, 0, "", "abcdefghij kl", 4);
    CU_ASSERT_STRING_EQUAL(out.text, "abcd\nefgh\nij\nkl\n");
    buffer_free(&out);
}

static void an_empty_paragraph_is_an_empty_line(void)
{
    Buffer out;
    buffer_init(&out);
    layout_paragraph(&out, 0, "", "", 40);
    CU_ASSERT_STRING_EQUAL(out.text, "\n");
    buffer_free(&out);
}

static void columns_stand_below_each_other_whatever_the_language(void)
{
    static const char *const heads[] = {"Part", "Bars"};
    static const int most[] = {20, 0};
    Table table;
    Buffer out;
    buffer_init(&out);
    table_begin(&table, 2, heads, most);
    table_row(&table, (const char *const[]){"Kontrabässe", "12"});
    table_row(&table, (const char *const[]){"提琴", "7-9"});
    table_row(&table, (const char *const[]){NULL, "x"});
    table_end(&table, &out, 1, 60);
    CU_ASSERT_STRING_EQUAL(out.text, " Part         Bars\n Kontrabässe  12\n 提琴         7-9\n              x\n");
    buffer_free(&out);
}

static void a_long_cell_goes_on_below_itself(void)
{
    static const int most[] = {8, 0};
    Table table;
    Buffer out;
    buffer_init(&out);
    table_begin(&table, 2, NULL, most);
    table_row(&table, (const char *const[]){"Violoncello e Basso", "bass"});
    table_note(&table, "the basses read the cellos' line");
    table_end(&table, &out, 0, 30);
    CU_ASSERT_STRING_EQUAL(out.text, "Violoncello  bass\ne Basso\n             the basses read\n             the cellos' line\n");
    buffer_free(&out);
}

/* Room is taken first where no word is broken by it. */
static void a_word_is_broken_last(void)
{
    static const int most[] = {0, 12};
    Table table;
    Buffer out;
    buffer_init(&out);
    table_begin(&table, 2, NULL, most);
    table_row(&table, (const char *const[]){"first and second violins in turn", "Parallelführung"});
    table_end(&table, &out, 0, 30);
    CU_ASSERT_PTR_NOT_NULL(strstr(out.text, "Parallelführung\n"));
    buffer_free(&out);
}

static void figures_stand_at_the_right(void)
{
    static const int most[] = {6, 10};
    Table table;
    Buffer out;
    buffer_init(&out);
    table_begin(&table, 2, NULL, most);
    table_align_right(&table, 0);
    table_row(&table, (const char *const[]){"71.5", "a"});
    table_row(&table, (const char *const[]){"8.0", "b"});
    table_end(&table, &out, 0, 60);
    CU_ASSERT_STRING_EQUAL(out.text, "71.5  a\n 8.0  b\n");
    buffer_free(&out);
}

static void no_table_is_wider_than_its_page(void)
{
    static const int most[] = {12, 0, 9};
    for (int width = 60; width <= 100; width += 8) {
        Table table;
        Buffer out;
        buffer_init(&out);
        table_begin(&table, 3, NULL, most);
        table_row(&table, (const char *const[]){"a very long first cell", "words and words and words and words and words and words and words and more", "the last of them"});
        table_end(&table, &out, 2, width);
        for (const char *line = out.text; *line; line += strcspn(line, "\n") + 1)
            CU_ASSERT(utf8_columns(line, strcspn(line, "\n")) <= (size_t)width);
        buffer_free(&out);
    }
}

void suite_report_text(void)
{
    static const struct Statement statements[] = {
        STATEMENT(a_title_cannot_speak_to_the_terminal),
        STATEMENT(a_title_of_several_lines_is_shown_on_one),
        STATEMENT(accents_stay_and_broken_bytes_are_marked),
        STATEMENT(text_is_cut_between_characters_only),
        STATEMENT(every_character_survives_being_written),
        STATEMENT(width_counts_columns_not_bytes),
        STATEMENT(words_are_kept_whole_where_they_fit),
        STATEMENT(a_word_longer_than_the_line_is_broken),
        STATEMENT(an_empty_paragraph_is_an_empty_line),
        STATEMENT(columns_stand_below_each_other_whatever_the_language),
        STATEMENT(a_long_cell_goes_on_below_itself),
        STATEMENT(a_word_is_broken_last),
        STATEMENT(figures_stand_at_the_right),
        STATEMENT(no_table_is_wider_than_its_page),
    };
    suite_of("report: text", statements, COUNT(statements));
}
