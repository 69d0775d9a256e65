/* The phrases of every language: the same keys (the build sees to that), the same slots, and players, numbers and lists as each says them. */
#include "support/suite.h"
#include "wording/phrase.h"
#include <stdio.h>
#include <string.h>

static char said[400];

static const char *heard(spz_language language, Phrase phrase, const Slot *slots, size_t count)
{
    Buffer out;
    buffer_init(&out);
    say(&out, language, phrase, slots, count);
    snprintf(said, sizeof said, "%s", out.text ? out.text : "");
    buffer_free(&out);
    return said;
}

/* Next slot's name of a text, without its form; false at the end. A brace that never closes is named '{'. */
static bool next_slot(const char **text, char name[40])
{
    const char *open = strchr(*text, '{');
    while (open && open[1] == '{')
        open = strchr(open + 2, '{');
    if (!open)
        return false;
    const char *close = strchr(open, '}');
    snprintf(name, 40, "%.*s", close ? (int)strcspn(open + 1, ".|}") : 1, close ? open + 1 : "{");
    if (name[0] >= 'A' && name[0] <= 'Z')
        name[0] = (char)(name[0] + 32);
    *text = close ? close + 1 : open + 1;
    return true;
}

static bool has_slot(const char *text, const char *wanted)
{
    char name[40];
    while (next_slot(&text, name))
        if (!strcmp(name, wanted))
            return true;
    return false;
}

static void no_language_asks_for_a_slot_that_english_does_not_fill(void)
{
    for (int phrase = 0; phrase < PHRASE_COUNT; phrase++)
        for (int language = 0; language < SPZ_LANGUAGE_COUNT; language++) {
            const char *text = phrase_text((spz_language)language, (Phrase)phrase);
            char name[40];
            while (next_slot(&text, name))
                if (!strcmp(name, "{") || !has_slot(phrase_text(SPZ_ENGLISH, (Phrase)phrase), name)) {
                    char fault[120];
                    snprintf(fault, sizeof fault, "%s: %s: {%s}", spz_language_code((spz_language)language), phrase_keys[phrase], name);
                    CU_assertImplementation(CU_FALSE, __LINE__, fault, __FILE__, "", CU_FALSE);
                }
        }
}

/* Players in a form, as a phrase would ask for them. */
static const char *in_form(spz_language language, const char *form, const spz_group *players, size_t count)
{
    char text[40];
    Buffer out;
    Slot slot = slot_players("who", players, count);
    buffer_init(&out);
    snprintf(text, sizeof text, "{%s%s}", form[0] == 'T' ? "Who." : "who.", form[0] == 'T' ? "to" : form);
    say_template(&out, language, text, &slot, 1);
    snprintf(said, sizeof said, "%s", out.text ? out.text : "");
    buffer_free(&out);
    return said;
}

static void players_are_named_in_the_case_that_the_phrase_asks_for(void)
{
    const spz_group seconds = {.section = SPZ_VN2}, low[] = {{.section = SPZ_VA}, {.section = SPZ_DB}};
    const spz_group second_viola = {.section = SPZ_VA, .number = 2, .orchestra = 1};
    CU_ASSERT_STRING_EQUAL(in_form(SPZ_ENGLISH, "to", &seconds, 1), "to the second violins");
    CU_ASSERT_STRING_EQUAL(in_form(SPZ_GERMAN, "by", low, 2), "von den Bratschen und den Kontrabässen");
    CU_ASSERT_STRING_EQUAL(in_form(SPZ_FRENCH, "To", low, 2), "Aux altos et aux contrebasses");
    CU_ASSERT_STRING_EQUAL(in_form(SPZ_GERMAN, "the", &second_viola, 1), "die zweiten Bratschen des ersten Orchesters");
    CU_ASSERT_STRING_EQUAL(in_form(SPZ_ENGLISH, "short", &second_viola, 1), "Va 2 (orchestra 1)");
}

static void a_list_has_its_last_word_joined(void)
{
    const char *const items[] = {"12", "20", "31"};
    Buffer out;
    buffer_init(&out);
    say_list(&out, SPZ_GERMAN, items, 3);
    CU_ASSERT_STRING_EQUAL(out.text, "12, 20 und 31");
    buffer_free(&out);
}

static void a_slot_that_nobody_fills_is_seen(void)
{
    CU_ASSERT_STRING_EQUAL(heard(SPZ_ENGLISH, PHRASE_NUMBER_TIMES, NULL, 0), "?n? times");
}

static void languages_are_known_by_code_and_name(void)
{
    spz_language language = SPZ_ENGLISH;
    CU_ASSERT_TRUE(spz_language_from_name("FR", &language));
    CU_ASSERT_EQUAL(language, SPZ_FRENCH);
    CU_ASSERT_TRUE(spz_language_from_name("deutsch", &language));
    CU_ASSERT_EQUAL(language, SPZ_GERMAN);
    CU_ASSERT_FALSE(spz_language_from_name("xx", &language));
    CU_ASSERT_EQUAL(language, SPZ_GERMAN);
}

static const struct Statement statements[] = {
    STATEMENT(no_language_asks_for_a_slot_that_english_does_not_fill),
    STATEMENT(players_are_named_in_the_case_that_the_phrase_asks_for),
    STATEMENT(a_list_has_its_last_word_joined),
    STATEMENT(a_slot_that_nobody_fills_is_seen),
    STATEMENT(languages_are_known_by_code_and_name),
};
void suite_phrases(void) { suite_of("phrases", statements, COUNT(statements)); }
