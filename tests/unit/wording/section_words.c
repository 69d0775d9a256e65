/* How a line of the score was understood, in each language. */
#include "support/suite.h"
#include "wording/section_words.h"
#include <stdio.h>
#include <string.h>

static char said[400];

typedef void Sayer(Buffer *out, spz_language language, const spz_line *line);

static const char *heard(Sayer *sayer, spz_language language, const spz_line *line)
{
    Buffer out;
    buffer_init(&out);
    sayer(&out, language, line);
    snprintf(said, sizeof said, "%s", out.text ? out.text : "");
    buffer_free(&out);
    return said;
}

static void clues_make_one_sentence(void)
{
    const spz_clue clues[] = {{SPZ_CLUE_NAME, "Violini", 0}, {.kind = SPZ_CLUE_PLURAL}, {SPZ_CLUE_SHARED_NOTES, NULL, 97}};
    const spz_line line = {.clues = clues, .clue_count = 2}, guide = {.clues = &clues[2], .clue_count = 1}, nothing = {0};
    CU_ASSERT_STRING_EQUAL(heard(say_clues, SPZ_ENGLISH, &line), "its name says 'Violini', and the plural without a number means both violin sections");
    CU_ASSERT_STRING_EQUAL(heard(say_clues, SPZ_GERMAN, &line), "ihr Name lautet „Violini“, und die Mehrzahl ohne Nummer meint beide Violingruppen");
    CU_ASSERT_STRING_EQUAL(heard(say_clues, SPZ_FRENCH, &line), "son nom est «\u00A0Violini\u00A0», et le pluriel sans numéro désigne les deux groupes de violons");
    CU_ASSERT_STRING_EQUAL(heard(say_clues, SPZ_ENGLISH, &guide), "97 % of its notes are played by other parts at the same time");
    CU_ASSERT_STRING_EQUAL(heard(say_clues, SPZ_GERMAN, &nothing), "nichts in der Datei sagt, was sie ist");
}

static void a_line_is_placed_in_its_section(void)
{
    const spz_line line = {.staff = 2, .voice = "1", .section = SPZ_VC, .also = SPZ_DB, .orchestra = 2, .division = 3, .desk = "1. Pult"};
    const spz_line winds = {.family = SPZ_FAMILY_WOODWIND};
    CU_ASSERT_STRING_EQUAL(heard(say_line_section, SPZ_ENGLISH, &line), "Vc and Db");
    CU_ASSERT_STRING_EQUAL(heard(say_line_section, SPZ_GERMAN, &line), "Vc und Kb");
    CU_ASSERT_STRING_EQUAL(heard(say_line_section, SPZ_FRENCH, &winds), "-");
    CU_ASSERT_STRING_EQUAL(heard(say_line_staff, SPZ_FRENCH, &line), "portée 2, voix 1");
    CU_ASSERT_STRING_EQUAL(heard(say_line_place, SPZ_ENGLISH, &line), "orchestra 2, divided, line 3, 1. Pult");
    CU_ASSERT_STRING_EQUAL(words_family(SPZ_GERMAN, winds.family), "Holz");
    for (int family = 0; family < SPZ_FAMILY_COUNT; family++) /* in English as in data */
        CU_ASSERT_STRING_EQUAL(words_family(SPZ_ENGLISH, (spz_family)family), spz_family_name((spz_family)family));
}

static const struct Statement statements[] = {
    STATEMENT(clues_make_one_sentence),
    STATEMENT(a_line_is_placed_in_its_section),
};
void suite_section_words(void) { suite_of("section words", statements, COUNT(statements)); }
