#include "season/table/cells.h"
#include "support/text/ascii.h"
#include "support/numbers.h"
#include <stdlib.h>
#include <string.h>

enum { HEAD_TEXT = 32, FIRST_YEAR = 1000, LAST_YEAR = 2100, ORDER_DIGITS = 6 };

static const struct Head {
    const char *name;
    Column column;
} heads[] = { /* the first of each column is its name */
    {"concert", COLUMN_CONCERT}, {"date", COLUMN_DATE}, {"hall", COLUMN_HALL}, {"order", COLUMN_ORDER}, {"work", COLUMN_WORK},
    {"score", COLUMN_SCORE}, {"composed", COLUMN_COMPOSED}, {"interval after", COLUMN_INTERVAL}, {"fixed seating", COLUMN_FIXED},
    {"note", COLUMN_NOTE}, {"time", COLUMN_TIME}, {"rehearsals", COLUMN_REHEARSALS}, {"soloist", COLUMN_SOLOIST}, {"piano", COLUMN_PIANO}, {"podium", COLUMN_PODIUM},
    {"program", COLUMN_CONCERT}, {"programme", COLUMN_CONCERT}, {"konzert", COLUMN_CONCERT}, {"programm", COLUMN_CONCERT},
    {"veranstaltung", COLUMN_CONCERT},
    {"day", COLUMN_DATE}, {"date and time", COLUMN_DATE}, {"datum", COLUMN_DATE}, {"tag", COLUMN_DATE}, {"termin", COLUMN_DATE}, {"jour", COLUMN_DATE},
    {"start", COLUMN_TIME}, {"start time", COLUMN_TIME}, {"begins", COLUMN_TIME}, {"beginn", COLUMN_TIME}, {"uhrzeit", COLUMN_TIME}, {"heure", COLUMN_TIME},
    {"rehearsal", COLUMN_REHEARSALS}, {"proben", COLUMN_REHEARSALS}, {"r\xC3\xA9p\xC3\xA9titions", COLUMN_REHEARSALS},
    {"venue", COLUMN_HALL}, {"saal", COLUMN_HALL}, {"ort", COLUMN_HALL}, {"spielort", COLUMN_HALL}, {"salle", COLUMN_HALL}, {"lieu", COLUMN_HALL},
    {"no", COLUMN_ORDER}, {"no.", COLUMN_ORDER}, {"number", COLUMN_ORDER}, {"#", COLUMN_ORDER}, {"nr", COLUMN_ORDER}, {"nr.", COLUMN_ORDER},
    {"reihenfolge", COLUMN_ORDER}, {"folge", COLUMN_ORDER}, {"ordre", COLUMN_ORDER}, {"n\xC2\xB0", COLUMN_ORDER},
    {"title", COLUMN_WORK}, {"piece", COLUMN_WORK}, {"werk", COLUMN_WORK}, {"titel", COLUMN_WORK}, {"st\xC3\xBC" "ck", COLUMN_WORK},
    {"oeuvre", COLUMN_WORK}, {"\xC5\x93uvre", COLUMN_WORK}, {"\xC5\x92uvre", COLUMN_WORK}, {"titre", COLUMN_WORK},
    {"scores", COLUMN_SCORE}, {"file", COLUMN_SCORE}, {"partitur", COLUMN_SCORE}, {"datei", COLUMN_SCORE}, {"partition", COLUMN_SCORE}, {"fichier", COLUMN_SCORE},
    {"year", COLUMN_COMPOSED}, {"jahr", COLUMN_COMPOSED}, {"komponiert", COLUMN_COMPOSED}, {"ann\xC3\xA9" "e", COLUMN_COMPOSED},
    {"compos\xC3\xA9", COLUMN_COMPOSED},
    {"interval", COLUMN_INTERVAL}, {"intermission", COLUMN_INTERVAL}, {"intermission after", COLUMN_INTERVAL}, {"break", COLUMN_INTERVAL},
    {"pause", COLUMN_INTERVAL}, {"pause danach", COLUMN_INTERVAL}, {"pause nach", COLUMN_INTERVAL}, {"entracte", COLUMN_INTERVAL},
    {"seating", COLUMN_FIXED}, {"fixed", COLUMN_FIXED}, {"sitzordnung", COLUMN_FIXED}, {"aufstellung", COLUMN_FIXED}, {"disposition", COLUMN_FIXED},
    {"notes", COLUMN_NOTE}, {"remark", COLUMN_NOTE}, {"remarks", COLUMN_NOTE}, {"bemerkung", COLUMN_NOTE}, {"bemerkungen", COLUMN_NOTE},
    {"soloists", COLUMN_SOLOIST}, {"solist", COLUMN_SOLOIST}, {"solisten", COLUMN_SOLOIST}, {"soliste", COLUMN_SOLOIST}, {"solistes", COLUMN_SOLOIST},
    {"klavier", COLUMN_PIANO}, {"fl\xC3\xBC" "gel", COLUMN_PIANO}, {"fluegel", COLUMN_PIANO}, {"estrade", COLUMN_PODIUM}, {"dirigentenpodium", COLUMN_PODIUM},
    {"anmerkung", COLUMN_NOTE}, {"remarque", COLUMN_NOTE}, {"remarques", COLUMN_NOTE},
};
_Static_assert(COLUMN_COUNT == 15, "every column has its name in the first fifteen rows, in order");

static void fold_head(const char *head, char out[HEAD_TEXT])
{
    size_t used = 0;
    for (; *head && used + 1 < HEAD_TEXT; head++) {
        char c = *head == '_' || *head == '-' || ascii_is_blank((unsigned char)*head) ? ' ' : (char)ascii_lower((unsigned char)*head);
        if (c != ' ' || (used && out[used - 1] != ' '))
            out[used++] = c;
    }
    while (used && (out[used - 1] == ' ' || out[used - 1] == ':'))
        used--;
    out[used] = '\0';
}

Column column_of(const char *head)
{
    char folded[HEAD_TEXT];
    fold_head(head, folded);
    for (size_t i = 0; i < sizeof heads / sizeof heads[0]; i++)
        if (strcmp(heads[i].name, folded) == 0)
            return heads[i].column;
    return COLUMN_COUNT;
}

/* Line ends within a cell become one blank. */
static void join_lines(char *text)
{
    char *out = text;
    for (; *text; text++) {
        bool end = *text == '\r' || *text == '\n';
        if (!end)
            *out++ = *text;
        else if (out[-1] != ' ') /* a cell never begins with a blank here */
            *out++ = ' ';
    }
    *out = '\0';
}

char *cell_trim(char *text)
{
    static const char no_break[] = "\xC2\xA0"; /* spreadsheets like to leave them */
    while (ascii_is_blank((unsigned char)*text) || strncmp(text, no_break, 2) == 0)
        text += ascii_is_blank((unsigned char)*text) ? 1 : 2;
    size_t length = strlen(text);
    for (;;) {
        if (length && ascii_is_blank((unsigned char)text[length - 1]))
            length--;
        else if (length >= 2 && strncmp(text + length - 2, no_break, 2) == 0)
            length -= 2;
        else
            break;
    }
    text[length] = '\0';
    join_lines(text);
    return text;
}

bool cell_interval_word(const char *text)
{
    static const char *const words[] = {"interval", "intermission", "pause", "entracte", "break", "entr'acte", "*** pause ***"};
    char folded[HEAD_TEXT];
    fold_head(text, folded);
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++)
        if (strcmp(words[i], folded) == 0)
            return true;
    return false;
}

/* 'yes (20 min)', '20 min', '20\'': yes, and how long. */
static bool has_length(const char *folded)
{
    static const char *const behind[] = {"min", "minutes", "minuten", "'", "min.", "mn"};
    size_t digits = strspn(folded, "0123456789");
    const char *rest = folded + digits + strspn(folded + digits, " ");
    for (size_t i = 0; digits > 0 && i < sizeof behind / sizeof behind[0]; i++)
        if (strcmp(rest, behind[i]) == 0)
            return true;
    return false;
}

bool cell_yes(const char *text, bool *yes)
{
    static const char *const said[2][12] = {
        {"", "no", "n", "0", "-", "false", "nein", "non", "n/a", "falsch", "faux", "none"},
        {"yes", "y", "x", "1", "true", "ja", "j", "oui", "wahr", "vrai", "\xE2\x9C\x93", "\xE2\x9C\x94"},
    };
    char folded[HEAD_TEXT];
    fold_head(text, folded);
    const char *compared = strcmp(text, "-") == 0 ? text : folded;
    char *more = strchr(folded, '(');
    if (more && more > folded && more[-1] == ' ')
        more[-1] = '\0';
    *yes = cell_interval_word(folded) || has_length(folded);
    for (int side = 0; side < 2 && !*yes; side++)
        for (size_t i = 0; i < sizeof said[0] / sizeof said[0][0]; i++)
            if (strcmp(compared, said[side][i]) == 0) {
                *yes = side == 1;
                return true;
            }
    return *yes;
}

/* 'first', 'zweites', 'troisième'; 0 for none. */
static int order_word(const char *word)
{
    static const char *const words[10][4] = {
        {"first", "erst", "premi", "one"}, {"second", "zweit", "deuxi", "two"}, {"third", "dritt", "troisi", "three"}, {"fourth", "viert", "quatri", "four"},
        {"fifth", "f\xC3\xBCnft", "cinqui", "five"}, {"sixth", "sechst", "sixi", "six"}, {"seventh", "siebt", "septi", "seven"},
        {"eighth", "acht", "huiti", "eight"}, {"ninth", "neunt", "neuvi", "nine"}, {"tenth", "zehnt", "dixi", "ten"}};
    for (int i = 0; i < 10; i++)
        for (int language = 0; language < 3; language++)
            if (strncmp(word, words[i][language], strlen(words[i][language])) == 0)
                return i + 1;
    for (int i = 0; i < 10; i++)
        if (strcmp(word, words[i][3]) == 0)
            return i + 1;
    return 0;
}

/* I to XXXIX; 0 for none. */
static int roman(const char *word)
{
    static const char *const ones[] = {"", "i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix"};
    size_t tens = strspn(word, "x");
    for (int i = 0; i < 10 && tens < 4; i++)
        if (strcmp(word + tens, ones[i]) == 0)
            return (int)tens * 10 + i;
    return 0;
}

static bool is_ordinal_end(const char *text)
{
    static const char *const ends[] = {"", ".", ")", "st", "nd", "rd", "th", "e", "er", "re", "\xC3\xA8re", "\xC3\xA8me", "\xC2\xBA", "\xC2\xAA", ".)"};
    for (size_t i = 0; i < sizeof ends / sizeof ends[0]; i++)
        if (strcmp(text, ends[i]) == 0)
            return true;
    return false;
}

bool cell_order(const char *text, double *order)
{
    static const char *const before[] = {"no.", "no", "nr.", "nr", "n\xC2\xB0", "#", "("};
    char folded[HEAD_TEXT], number[HEAD_TEXT];
    fold_head(text, folded);
    const char *at = folded;
    for (size_t i = 0; i < sizeof before / sizeof before[0] && at == folded; i++)
        if (strncmp(folded, before[i], strlen(before[i])) == 0)
            at += strlen(before[i]);
    at += strspn(at, " ");
    bool last = strcmp(at, "last") == 0 || strcmp(at, "encore") == 0 || strcmp(at, "zugabe") == 0 || strcmp(at, "bis") == 0;
    int word = last ? 1000000 : order_word(at) ? order_word(at) : roman(at);
    size_t digits = strspn(at, "0123456789"), length = digits;
    if (strchr(".,", at[digits]) && ascii_is_digit((unsigned char)at[digits + (at[digits] != '\0')]))
        length += 1 + strspn(at + digits + 1, "0123456789");
    if (word || length == 0 || digits > ORDER_DIGITS || !is_ordinal_end(at + length)) {
        *order = word;
        return word > 0;
    }
    memcpy(number, at, length);
    number[length] = '\0';
    if (strchr(number, ','))
        *strchr(number, ',') = '.';
    return number_of(number, order);
}

bool cell_year(const char *text, int *year)
{
    const char *digits = text + strcspn(text, "0123456789");
    size_t length = strspn(digits, "0123456789");
    long read = length == 4 ? strtol(digits, NULL, 10) : 0;
    bool good = read >= FIRST_YEAR && read <= LAST_YEAR;
    *year = good ? (int)read : 0;
    return good;
}

bool cell_begins(const char *text, const char *name, const char **rest)
{
    while (*name) {
        if (ascii_is_blank((unsigned char)*name) != 0) {
            if (!ascii_is_blank((unsigned char)*text))
                return false;
            for (; ascii_is_blank((unsigned char)*name); name++) {}
            for (; ascii_is_blank((unsigned char)*text); text++) {}
        } else if (ascii_lower((unsigned char)*text++) != ascii_lower((unsigned char)*name++))
            return false;
    }
    *rest = text;
    return true;
}

bool cell_same(const char *a, const char *b)
{
    const char *rest;
    return cell_begins(a, b, &rest) && *rest == '\0';
}
