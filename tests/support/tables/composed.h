/* composed.h - the passages that were composed into the scores of corpus/ (corpus/composed.csv), each held against what is found there.
 *
 * A passage is met when passages of its family between the same sections cover at least half of its bars. Families: antiphony
 * (exchange, hocket, split line, imitation), divisions, coupling. 'Violins' stands for either violin section; the order of a pair
 * doesn't count; 'Strings' against 'Strings' is one orchestra against the other, whatever section of it is named. */
#ifndef TESTS_COMPOSED_H
#define TESTS_COMPOSED_H
#include "spezzato/spezzato.h"

typedef struct Composed {
    char file[64];
    spz_kind kind;
    spz_section caller, responder; /* the responder of a division: SPZ_NO_SECTION */
    int first, last;               /* bars as printed */
    double strength;               /* 0.3 marginal, 0.65 clear, 0.9 striking */
    /* Filled by composed_try: */
    int bars_found;                /* covered by its family */
    int bars_as_named;             /* by passages of just its kind */
    double best;                   /* strength of the strongest passage that covers any of its bars */
} Composed;

enum { COMPOSED_MOST = 400 };
/* Reads the table; number of rows, -1 when it can't be read or a row makes no sense. */
int composed_read(const char *path, Composed *rows, int most);
/* Analyses each score once (`folder` holds them) and fills the rows. Status of the first that fails. */
spz_status composed_try(const char *folder, Composed *rows, int count);
bool composed_met(const Composed *row);    /* half of its bars, by its family */
bool composed_named(const Composed *row);  /* half of its bars, by its very kind */
/* Winds and whole orchestras are counted apart: the seating of the sections doesn't hang on them. */
bool composed_apart(const Composed *row);
#endif
