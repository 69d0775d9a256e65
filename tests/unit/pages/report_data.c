/* JSON and CSV: well formed whatever a score holds. */
#include "writing/csv_text.h"
#include "writing/json.h"
#include "support/numbers.h"
#include "support/suite.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

static void an_object_has_its_commas_where_they_belong(void)
{
    Buffer out;
    Json json;
    buffer_init(&out);
    json_begin(&json, &out);
    json_object(&json);
    json_put_text(&json, "kind", "exchange");
    json_key(&json, "sections");
    json_list(&json);
    json_text(&json, "Vn I");
    json_text(&json, "Vn II");
    json_end(&json);
    json_key(&json, "none");
    json_array(&json);
    json_end(&json);
    json_put_flag(&json, "played", false);
    json_end(&json);
    CU_ASSERT_STRING_EQUAL(out.text, "{\n  \"kind\": \"exchange\",\n  \"sections\": [\"Vn I\", \"Vn II\"],\n  \"none\": [],\n  \"played\": false\n}\n");
    buffer_free(&out);
}

static void what_is_inside_a_row_stays_on_its_line(void)
{
    Buffer out;
    Json json;
    buffer_init(&out);
    json_begin(&json, &out);
    json_array(&json);
    json_row(&json);
    json_key(&json, "bars");
    json_array(&json);
    json_integer(&json, 1);
    json_integer(&json, 2);
    json_end(&json);
    json_end(&json);
    json_end(&json);
    CU_ASSERT_STRING_EQUAL(out.text, "[\n  {\"bars\": [1, 2]}\n]\n");
    buffer_free(&out);
}

static void json_text_is(const char *text, const char *expected)
{
    Buffer out;
    Json json;
    buffer_init(&out);
    json_begin(&json, &out);
    json_text(&json, text);
    CU_ASSERT_STRING_EQUAL(out.text, expected);
    buffer_free(&out);
}

static void strings_are_escaped_as_rfc_8259_asks(void)
{
    json_text_is("a \"b\" \\ c", "\"a \\\"b\\\" \\\\ c\"");
    json_text_is("line\nend\x1b", "\"line\\u000aend\\u001b\"");
    json_text_is("\xe2\x80\xae", "\"\\u202e\"");
    json_text_is("Bässe", "\"Bässe\"");
    json_text_is("B\xe4sse", "\"B\xef\xbf\xbdsse\"");
    json_text_is(NULL, "null");
}

static void what_is_no_number_is_null(void)
{
    Buffer out;
    Json json;
    buffer_init(&out);
    json_begin(&json, &out);
    json_list(&json);
    json_number(&json, NAN, 2);
    json_number(&json, INFINITY, 2);
    json_number(&json, -0.001, 2);
    json_number(&json, 71.25, 1);
    json_end(&json);
    CU_ASSERT_STRING_EQUAL(out.text, "[null, null, 0.00, 71.2]\n");
    buffer_free(&out);
}

static void a_document_too_deep_is_refused_not_broken(void)
{
    Buffer out;
    Json json;
    buffer_init(&out);
    json_begin(&json, &out);
    for (int i = 0; i <= JSON_DEEPEST; i++)
        json_array(&json);
    CU_ASSERT(buffer_failed(&out));
    buffer_free(&out);
}

static void csv_cell_is(const char *text, const char *expected)
{
    Buffer out;
    CsvRow row;
    buffer_init(&out);
    csv_begin(&row, &out);
    csv_text(&row, text);
    csv_integer(&row, 7);
    csv_end(&row);
    CU_ASSERT_STRING_EQUAL(out.text, expected);
    buffer_free(&out);
}

static void cells_are_quoted_as_rfc_4180_asks(void)
{
    csv_cell_is("Vn I", "Vn I,7\n");
    csv_cell_is("Vc, Db", "\"Vc, Db\",7\n");
    csv_cell_is("the \"second\"", "\"the \"\"second\"\"\",7\n");
    csv_cell_is("two\nlines", "two lines,7\n");
    csv_cell_is("", ",7\n");
    csv_cell_is(NULL, ",7\n");
}

static void a_part_name_is_never_taken_for_a_formula(void)
{
    csv_cell_is("=1+1", "'=1+1,7\n");
    csv_cell_is("@x", "'@x,7\n");
    csv_cell_is("-x", "'-x,7\n");
    csv_cell_is("-3", "-3,7\n");
    csv_cell_is("-", "-,7\n");
    csv_cell_is("-2+3+cmd|' /C calc'!A0", "'-2+3+cmd|' /C calc'!A0,7\n");
    csv_cell_is("-1-1", "'-1-1,7\n");
    csv_cell_is("+", "'+,7\n");
}

static void nothing_before_the_sign_hides_a_formula(void)
{
    csv_cell_is("\xe2\x80\xae=1+1", "'=1+1,7\n");          /* U+202E, dropped */
    csv_cell_is("\xc2\x85=1+1", "' =1+1,7\n");             /* U+0085, a line end */
    csv_cell_is("\x01\t\r\n @x", "'    @x,7\n");
    csv_cell_is("\xc2\xa0\xef\xbb\xbf\xe2\x80\x8b=1", "'\xc2\xa0\xef\xbb\xbf\xe2\x80\x8b=1,7\n"); /* U+00A0, U+FEFF, U+200B */
    csv_cell_is("\"=1\"", "\"'\"\"=1\"\"\",7\n");
    csv_cell_is("\xef\xbc\x9d" "1", "'\xef\xbc\x9d" "1,7\n"); /* the full-width sign, U+FF1D */
}

/* A spreadsheet of a country that writes 1,5 cuts at semicolons, and knows nothing of the quotation marks further left. */
static void no_formula_begins_behind_a_separator(void)
{
    csv_cell_is("Vn I;=1+1", "Vn I;'=1+1,7\n");
    csv_cell_is("a, =1; +1+x", "\"a,' =1;' +1+x\",7\n");
    csv_cell_is("bars 3; -2", "bars 3; -2,7\n");
}

static void numbers_stay_numbers(void)
{
    static const char *const numbers[] = {"7", "-7", "+7", "-12.50", "-0.5", "1-2", "5+1", "a=b", "c@d"};
    for (size_t i = 0; i < COUNT(numbers); i++) {
        char expected[32];
        snprintf(expected, sizeof expected, "%s,7\n", numbers[i]);
        csv_cell_is(numbers[i], expected);
    }
}

static void a_row_has_a_cell_for_every_column(void)
{
    Buffer out;
    CsvRow row;
    for (int cells = 1; cells <= 3; cells++) {
        buffer_init(&out);
        csv_begin(&row, &out);
        csv_head(&row, "bar");
        csv_head(&row, "beat");
        csv_end_heads(&row);
        for (int i = 0; i < cells; i++)
            csv_integer(&row, i);
        csv_end(&row);
        CU_ASSERT_EQUAL(buffer_failed(&out), cells != 2);
        buffer_free(&out);
    }
}

static void a_document_left_open_is_none(void)
{
    static void (*const last[])(Json *) = {json_object, json_array, json_end};
    for (size_t i = 0; i < COUNT(last); i++) {
        Buffer out;
        Json json;
        buffer_init(&out);
        json_begin(&json, &out);
        json_object(&json);
        json_key(&json, "bars");
        last[i](&json);
        json_end(&json);
        json_finish(&json);
        CU_ASSERT_TRUE(buffer_failed(&out));
        buffer_free(&out);
    }
}

static void a_strength_shown_never_belongs_to_a_higher_word(void)
{
    char text[NUMBER_TEXT];
    CU_ASSERT_STRING_EQUAL(number_text(shown_strength(0.4999), 2, text), "0.49");
    CU_ASSERT_STRING_EQUAL(number_text(shown_strength(0.5), 2, text), "0.50");
    CU_ASSERT_STRING_EQUAL(number_text(shown_strength(0.7999), 2, text), "0.79");
    CU_ASSERT_STRING_EQUAL(number_text(shown_strength(0.8), 2, text), "0.80");
    CU_ASSERT_STRING_EQUAL(number_text(shown_strength(0.29), 2, text), "0.29");
}

void suite_report_data(void)
{
    static const struct Statement statements[] = {
        STATEMENT(an_object_has_its_commas_where_they_belong),
        STATEMENT(what_is_inside_a_row_stays_on_its_line),
        STATEMENT(strings_are_escaped_as_rfc_8259_asks),
        STATEMENT(what_is_no_number_is_null),
        STATEMENT(a_document_too_deep_is_refused_not_broken),
        STATEMENT(cells_are_quoted_as_rfc_4180_asks),
        STATEMENT(a_part_name_is_never_taken_for_a_formula),
        STATEMENT(nothing_before_the_sign_hides_a_formula),
        STATEMENT(no_formula_begins_behind_a_separator),
        STATEMENT(numbers_stay_numbers),
        STATEMENT(a_row_has_a_cell_for_every_column),
        STATEMENT(a_document_left_open_is_none),
        STATEMENT(a_strength_shown_never_belongs_to_a_higher_word),
    };
    suite_of("report: data", statements, COUNT(statements));
}
