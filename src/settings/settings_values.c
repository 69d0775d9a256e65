/* Values as people write them: '1.5' and '1,5', 'yes' and 'no'. Nothing depends on the locale. */
#include "settings/store.h"
#include "support/text/ascii.h"
#include "support/numbers.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

static bool read_yes_no(const char *text, double *out)
{
    static const char *const words[][2] = { { "yes", "no" }, { "on", "off" }, { "true", "false" }, { "1", "0" } };
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++)
        for (int no = 0; no < 2; no++)
            if (ascii_same(text, words[i][no])) {
                *out = no ? 0 : 1;
                return true;
            }
    return false;
}

static bool word_allowed(const char *words, const char *word)
{
    size_t length = strlen(word);
    for (const char *at = words; length; at++) {
        size_t size = strcspn(at, "|");
        if (size == length && strncmp(at, word, length) == 0)
            return true;
        at += size;
        if (!*at)
            break;
    }
    return false;
}

static const char *number_fault(const spz_setting *row, const char *value, double *number, char *text, size_t size)
{
    char least[NUMBER_TEXT], most[NUMBER_TEXT];
    const char *space = row->unit[0] ? " " : "";
    if (!number_of(value, number))
        snprintf(text, size, "has to be a number");
    else if (*number < row->least || *number > row->most)
        snprintf(text, size, "has to lie between %s and %s%s%s", number_text_short(row->least, 6, least), number_text_short(row->most, 6, most), space, row->unit);
    else if (strcmp(row->unit, "players") == 0 && *number > floor(*number))
        snprintf(text, size, "has to be a whole number of players");
    else
        return NULL;
    return text;
}

static const char *word_fault(const spz_setting *row, const char *value, char *text, size_t size)
{
    if (word_allowed(row->words, value))
        return NULL;
    size_t at = (size_t)snprintf(text, size, "has to be one of:");
    for (const char *word_at = row->words; at < size && *word_at;) {
        size_t length = strcspn(word_at, "|");
        at += (size_t)snprintf(text + at, size - at, " %.*s%s", (int)length, word_at, word_at[length] ? "," : "");
        word_at += length + (word_at[length] != '\0');
    }
    return text;
}

const char *settings_value_fault(const spz_setting *row, const char *value, double *number, char *text, size_t size)
{
    *number = 0;
    switch (row->kind) {
    case SPZ_NUMBER:
        return number_fault(row, value, number, text, size);
    case SPZ_WORD:
        return word_fault(row, value, text, size);
    case SPZ_YES_NO:
        return read_yes_no(value, number) ? NULL : "has to be yes or no";
    case SPZ_TEXT:
        break;
    }
    return NULL;
}
