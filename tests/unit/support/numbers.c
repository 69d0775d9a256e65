/* Numbers as text, both ways. That no language of the host changes them is told by tests/cli/locale.sh. */
#include "support/text/ascii.h"
#include "support/numbers.h"
#include "spezzato/sheets.h"
#include "support/suite.h"
#include <ctype.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void writes(double value, int decimals, const char *expected, const char *expected_short)
{
    char text[NUMBER_TEXT];
    CU_ASSERT_STRING_EQUAL(number_text(value, decimals, text), expected);
    CU_ASSERT_STRING_EQUAL(number_text_short(value, decimals, text), expected_short);
}

static void a_number_has_a_point_and_its_decimals(void)
{
    writes(84.3, 1, "84.3", "84.3");
    writes(12, 2, "12.00", "12");
    writes(120, 0, "120", "120");
    writes(-0.5, 2, "-0.50", "-0.5");
    writes(-0.001, 2, "0.00", "0");
    writes(1234567.25, 2, "1234567.25", "1234567.25");
    writes(NAN, 2, "", "");
    writes(-HUGE_VAL, 2, "", "");
}

/* Against the standard library's snprintf, in the "C" locale that tests run in: every digit the same, the middles between two numbers too. */
static void a_number_is_written_to_the_last_digit(void)
{
    char text[NUMBER_TEXT], expected[64];
    unsigned long seed = 1;
    for (int i = 0; i < 200000; i++) {
        seed = seed * 6364136223846793005ul + 1442695040888963407ul;
        int decimals = i % 8;
        double value = (double)(seed >> 34) / (double)(1u << i % 28) - (double)(1u << 20);
        if (i % 3 == 0)
            value = floor(value) / 8; /* a middle, now and then */
        if (i % 5 == 0)
            value = floor(value * 100) / 1000 + 0.0005;
        snprintf(expected, sizeof expected, "%.*f", decimals, value);
        if (strspn(expected, "-0.") == strlen(expected))
            continue; /* nothing is written as minus zero */
        if (strcmp(number_text(value, decimals, text), expected) != 0)
            printf("  %.17g with %d decimals: %s, not %s\n", value, decimals, text, expected);
        CU_ASSERT_STRING_EQUAL(text, expected);
    }
}

static void reads(const char *text, double expected, size_t length)
{
    const char *end;
    CU_ASSERT_EQUAL(number_read(text, &end), expected);
    CU_ASSERT_EQUAL((size_t)(end - text), length);
}

static void a_number_is_read_up_to_its_end(void)
{
    reads("12.5 m", 12.5, 4);
    reads("-3", -3, 2);
    reads("7:10", 7, 1);
    reads(".5", .5, 2);
    reads("5.", 5, 2);
    reads("1.5e3", 1500, 5);
    reads("2E-2x", .02, 4);
    reads("1e", 1, 1);
    reads("3,5", 3, 1);
}

static void what_is_no_number_is_not_read(void)
{
    static const char *const texts[] = {"", "-", ".", " 1", "+1", "inf", "nan", "e5", "x1", ",5"};
    for (size_t i = 0; i < COUNT(texts); i++)
        reads(texts[i], 0, 0);
    reads("0x10", 0, 1);
}

/* Against the standard library's strtod, in the "C" locale that tests run in: every bit the same. */
static void a_number_is_read_to_the_last_bit(void)
{
    unsigned state = 20261128;
    for (int i = 0; i < 20000; i++) {
        char text[64];
        state = state * 1664525u + 1013904223u;
        unsigned more = state >> 8;
        state = state * 1664525u + 1013904223u;
        snprintf(text, sizeof text, "%s%u.%0*u", i % 3 ? "" : "-", more % 100000u, 1 + i % 9, (state >> 8) % 1000u);
        const char *end;
        CU_ASSERT_EQUAL(number_read(text, &end), strtod(text, NULL));
        CU_ASSERT_EQUAL(*end, '\0');
    }
}

static void decimals_without_end_are_cut(void)
{
    char text[400] = "0.";
    const char *end;
    memset(text + 2, '3', 390);
    text[392] = '\0';
    CU_ASSERT_DOUBLE_EQUAL(number_read(text, &end), 1.0 / 3, 1e-15);
    CU_ASSERT_EQUAL(*end, '\0');
    memset(text, '9', 390);
    CU_ASSERT_EQUAL(number_read(text, &end), 0); /* no number of music has so many digits */
    CU_ASSERT_PTR_EQUAL(end, text);
}

static void people_write_a_comma_too(void)
{
    double value = 0;
    CU_ASSERT_TRUE(number_of("11,25", &value) && value == 11.25);
    CU_ASSERT_TRUE(number_of("+11.25", &value) && value == 11.25);
    CU_ASSERT_TRUE(number_of("-2", &value) && value == -2);
    CU_ASSERT_FALSE(number_of("1.000,5", &value));
    CU_ASSERT_FALSE(number_of("1e3", &value));
    CU_ASSERT_FALSE(number_of("12 m", &value));
    CU_ASSERT_FALSE(number_of("", &value));
    CU_ASSERT_EQUAL(value, -2);
    CU_ASSERT_EQUAL(number_first("c. 66,5"), 66.5);
    CU_ASSERT_EQUAL(number_first("M.M. 72-80"), 72);
    CU_ASSERT_EQUAL(number_first("Andante"), 0);
}

static void a_length_of_time_is_read(void)
{
    CU_ASSERT_EQUAL(spz_seconds_from_text("7:10"), 430);
    CU_ASSERT_EQUAL(spz_seconds_from_text("1:02:15.5"), 3735.5);
    CU_ASSERT_EQUAL(spz_seconds_from_text("430"), 430);
    static const char *const none[] = {"", "7:", ":7", "7:60", "1:2:3:4", "-7", "7 10", "x", "2000000"};
    for (size_t i = 0; i < COUNT(none); i++)
        CU_ASSERT_TRUE(spz_seconds_from_text(none[i]) < 0);
}

/* Against the standard library in the "C" locale (C11, 7.4 and 7.11.1.1), for every byte. */
static void letters_are_those_of_ascii(void)
{
    for (int c = 0; c < 256; c++) {
        CU_ASSERT_EQUAL(ascii_is_digit(c), isdigit(c) != 0);
        CU_ASSERT_EQUAL(ascii_is_letter(c), isalpha(c) != 0);
        CU_ASSERT_EQUAL(ascii_is_blank(c), isspace(c) != 0);
        CU_ASSERT_EQUAL(ascii_lower(c), tolower(c));
        CU_ASSERT_EQUAL(ascii_upper(c), toupper(c));
    }
    CU_ASSERT_TRUE(ascii_same("Deutsch", "dEUTSCH"));
    CU_ASSERT_FALSE(ascii_same("de", "deu"));
}

void suite_numbers(void);
void suite_numbers(void)
{
    static const struct Statement statements[] = {
        STATEMENT(a_number_has_a_point_and_its_decimals),
        STATEMENT(a_number_is_written_to_the_last_digit),
        STATEMENT(a_number_is_read_up_to_its_end),
        STATEMENT(what_is_no_number_is_not_read),
        STATEMENT(a_number_is_read_to_the_last_bit),
        STATEMENT(decimals_without_end_are_cut),
        STATEMENT(people_write_a_comma_too),
        STATEMENT(a_length_of_time_is_read),
        STATEMENT(letters_are_those_of_ascii),
    };
    suite_of("numbers", statements, COUNT(statements));
}
