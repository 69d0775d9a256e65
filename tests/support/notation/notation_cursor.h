/* notation_cursor.h - a line of music while it is read, and what its readers share. */
#ifndef TESTS_NOTATION_CURSOR_H
#define TESTS_NOTATION_CURSOR_H
#include "notation_score.h"

enum { LONGEST_REPETITION = 999 }; /* of a bar or a note */

/* The value in force starts as a crotchet on each line and in each voice. */
struct cursor {
    struct score *score;
    struct part *part;
    struct staff *staff;
    struct bar *bar; /* the open bar, NULL between bars */
    int voice, line, value, dots, actual, normal, pair_left;
    bool tuplet_opens;
    struct direction *pending;
};

/* The bar that is open, or the next one to be opened. */
int bar_index(const struct cursor *c);
/* False, having said what is wrong and where. */
#ifdef __GNUC__
__attribute__((format(printf, 2, 3)))
#endif
bool bar_fail(const struct cursor *c, const char *format, ...);
bool open_bar(struct cursor *c);
bool close_bar(struct cursor *c);
/* Kept for the next note or the end of the bar. */
bool add_pending(struct cursor *c, enum direction_kind kind, const char *text, size_t length);
bool at_bar_start(const struct cursor *c);

/* '{...}', and the signs that stand for whole bars: 'R*4', '%*4', of which `sign` is what follows the letter (notation_braces.c). */
bool read_brace(struct cursor *c, const char *token);
bool bars_of_rest(struct cursor *c, const char *sign);
bool bars_again(struct cursor *c, const char *sign);
#endif
