#include "season/table/cells.h"
#include "support/ascii.h"
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
    {"note", COLUMN_NOTE},
    {"scores", COLUMN_SCORE}, {"year", COLUMN_COMPOSED}, {"interval", COLUMN_INTERVAL}, {"seating", COLUMN_FIXED},
    {"fixed", COLUMN_FIXED}, {"notes", COLUMN_NOTE},
};
_Static_assert(COLUMN_COUNT == 10, "every column has its name in the first ten rows, in order");

const char *column_name(Column column)
{
    return heads[column].name;
}

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

bool cell_yes(const char *text, bool *yes)
{
    static const char *const said[2][9] = {
        {"", "no", "n", "0", "-", "false", "nein", "non", "n/a"},
        {"yes", "y", "x", "1", "true", "ja", "j", "oui", "interval"},
    };
    char folded[HEAD_TEXT];
    fold_head(text, folded);
    const char *compared = strcmp(text, "-") == 0 ? text : folded;
    for (int side = 0; side < 2; side++)
        for (size_t i = 0; i < sizeof said[0] / sizeof said[0][0]; i++)
            if (strcmp(compared, said[side][i]) == 0) {
                *yes = side == 1;
                return true;
            }
    return false;
}

bool cell_order(const char *text, double *order)
{
    return strspn(text, "0123456789") <= ORDER_DIGITS && (ascii_is_digit(*text) || *text == '.') && !strchr(text, ',') && number_of(text, order);
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
