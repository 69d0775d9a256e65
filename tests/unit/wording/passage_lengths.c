/* A distance from call to answer as a musician counts it, in each language. */
#include "support/suite.h"
#include "wording/passage_words.h"
#include <stdio.h>
#include <string.h>

static char said[100];

static const char *told(spz_language language, spz_length length)
{
    Buffer out = {0};
    words_length(language, length, &out);
    snprintf(said, sizeof said, "%s", out.text ? out.text : "");
    buffer_free(&out);
    return said;
}

/* In 4/4. */
static spz_length beats(long over, long under)
{
    return (spz_length){{over, under}, SPZ_IN_BEATS, (double)over / (double)under / 4};
}

static void up_to_three_bars_beats_are_counted_and_then_bars(void)
{
    CU_ASSERT_STRING_EQUAL(told(SPZ_ENGLISH, beats(3, 2)), "one and a half beats");
    CU_ASSERT_STRING_EQUAL(told(SPZ_ENGLISH, beats(11, 1)), "eleven beats");
    CU_ASSERT_STRING_EQUAL(told(SPZ_ENGLISH, beats(14, 1)), "three and a half bars");
    CU_ASSERT_STRING_EQUAL(told(SPZ_ENGLISH, beats(41, 2)), "about five bars");
    CU_ASSERT_STRING_EQUAL(told(SPZ_GERMAN, beats(14, 1)), "dreieinhalb Takte");
    CU_ASSERT_STRING_EQUAL(told(SPZ_GERMAN, beats(41, 2)), "etwa fünf Takte");
    CU_ASSERT_STRING_EQUAL(told(SPZ_FRENCH, beats(14, 1)), "trois mesures et demie");
    CU_ASSERT_STRING_EQUAL(told(SPZ_FRENCH, beats(41, 2)), "environ cinq mesures");
    CU_ASSERT_STRING_EQUAL(told(SPZ_ENGLISH, (spz_length){{8, 1}, SPZ_IN_BARS, 8}), "eight bars");
}

static const struct Statement statements[] = {
    STATEMENT(up_to_three_bars_beats_are_counted_and_then_bars),
};
void suite_passage_lengths(void);
void suite_passage_lengths(void) { suite_of("words: distances", statements, COUNT(statements)); }
