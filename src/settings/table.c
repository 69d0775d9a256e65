#include "settings/table.h"

/* section, key, kind, default, least, most, words, unit, meaning, source */
#define NUMBER(section, key, initial, least, most, unit, meaning, source) \
    { section, key, SPZ_NUMBER, initial, least, most, "", unit, meaning, source }
#define WORD(section, key, initial, words, meaning, source) { section, key, SPZ_WORD, initial, 0, 0, words, "", meaning, source }
#define TEXT(section, key, initial, meaning, source) { section, key, SPZ_TEXT, initial, 0, 0, "", "", meaning, source }
#define YES_NO(section, key, initial, meaning, source) { section, key, SPZ_YES_NO, initial, 0, 0, "", "", meaning, source }

/* Rows of one section stand together: `spezzato settings` prints them in this order. */
const spz_setting settings_table[] = {
    NUMBER("players", "first violins", "14", 0, 40, "players", "players of the first violins", "common practice"),
    NUMBER("players", "second violins", "12", 0, 40, "players", "players of the second violins", "common practice"),
    NUMBER("players", "third violins", "0", 0, 40, "players", "players of a third violin section", "common practice"),
    NUMBER("players", "violas", "10", 0, 40, "players", "players of the violas", "common practice"),
    NUMBER("players", "cellos", "8", 0, 40, "players", "players of the cellos", "common practice"),
    NUMBER("players", "basses", "6", 0, 40, "players", "players of the double basses", "common practice"),
};
const size_t settings_table_count = sizeof settings_table / sizeof settings_table[0];

const char *const settings_free_sections[] = { "sections", "arrangement " };
const size_t settings_free_section_count = sizeof settings_free_sections / sizeof settings_free_sections[0];
