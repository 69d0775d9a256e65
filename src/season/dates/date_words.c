#include "season/dates/date_words.h"
#include "support/text/ascii.h"
#include <string.h>

/* Letters of Latin-1 that stand in these names, as the second byte of their UTF-8 (the first is C3), and the letter below the accent. */
static char without_accent(unsigned char second)
{
    static const struct { unsigned char second; char plain; } letters[] = {
        {0xA0, 'a'}, {0x80, 'a'}, {0xA4, 'a'}, {0x84, 'a'}, {0xA8, 'e'}, {0x88, 'e'}, {0xA9, 'e'}, {0x89, 'e'}, {0xAA, 'e'}, {0x8A, 'e'},
        {0xBB, 'u'}, {0x9B, 'u'}, {0xBC, 'u'}, {0x9C, 'u'}};
    for (size_t i = 0; i < sizeof letters / sizeof letters[0]; i++)
        if (letters[i].second == second)
            return letters[i].plain;
    return '\0';
}

void date_word_take(const char **text, char word[DATE_WORD_MOST])
{
    size_t length = 0;
    for (;;) {
        unsigned char first = (unsigned char)**text;
        char plain = ascii_is_letter(first) ? (char)ascii_lower(first) : first == 0xC3 ? without_accent((unsigned char)(*text)[1]) : '\0';
        if (!plain)
            break;
        *text += first == 0xC3 ? 2 : 1;
        if (length + 1 < DATE_WORD_MOST)
            word[length++] = plain;
    }
    word[length] = '\0';
}

static bool is_beginning(const char *word, const char *name)
{
    return strncmp(name, word, strlen(word)) == 0;
}

enum { LANGUAGES = 4 /* the last: shortened in their own way */ };

/* The one of `count` names that the word begins; -1 where there is none, or more than one. */
static int one_begun(const char *word, const char *const names[][LANGUAGES], int count)
{
    int found = -1;
    for (int i = 0; i < count; i++)
        for (int language = 0; language < LANGUAGES; language++)
            if (names[i][language] && is_beginning(word, names[i][language])) {
                if (found >= 0 && found != i)
                    return -1;
                found = i;
            }
    return found;
}

int date_word_month(const char *word)
{
    static const char *const names[12][LANGUAGES] = {
        {"january", "januar", "janvier", "janner"}, {"february", "februar", "fevrier", "feber"}, {"march", "marz", "mars", "mrz"},
        {"april", "april", "avril", NULL}, {"may", "mai", "mai", NULL}, {"june", "juni", "juin", NULL}, {"july", "juli", "juillet", NULL},
        {"august", "august", "aout", NULL}, {"september", "september", "septembre", NULL}, {"october", "oktober", "octobre", NULL},
        {"november", "november", "novembre", NULL}, {"december", "dezember", "decembre", NULL}};
    return strlen(word) < 3 ? 0 : one_begun(word, names, 12) + 1;
}

int date_word_weekday(const char *word)
{
    static const char *const names[7][LANGUAGES] = {
        {"monday", "montag", "lundi", "mo"}, {"tuesday", "dienstag", "mardi", "di"}, {"wednesday", "mittwoch", "mercredi", "mi"},
        {"thursday", "donnerstag", "jeudi", "do"}, {"friday", "freitag", "vendredi", "fr"}, {"saturday", "samstag", "samedi", "sa"},
        {"sunday", "sonntag", "dimanche", "so"}};
    if (strlen(word) > 2)
        return one_begun(word, names, 7);
    for (int i = 0; i < 7; i++)
        if (strcmp(word, names[i][3]) == 0)
            return i;
    return -1;
}

bool date_word_is_filler(const char *word)
{
    static const char *const fillers[] = {"the", "of", "on", "at", "den", "der", "am", "um", "uhr", "le", "de", "a", "st", "nd", "rd", "th", "er", "ten", "t", "z"};
    for (size_t i = 0; i < sizeof fillers / sizeof fillers[0]; i++)
        if (strcmp(word, fillers[i]) == 0)
            return true;
    return false;
}
