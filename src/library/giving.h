/* giving.h - what each work gives up in each arrangement. Works for which nothing speaks give up nothing in any; an arrangement that the house forbids to one of its movements is
 * none for the work. Read in one pass over the seats and added up here: quicker than any grouping by SQL. */
#ifndef LIBRARY_GIVING_H
#define LIBRARY_GIVING_H
#include "library/inside.h"
#include "support/arena.h"
#include "support/array.h"

typedef struct Giver { /* a work */
    long long work;
    size_t judged;   /* movements */
    int orchestras;
    bool asked;      /* meets the conditions */
} Giver;

typedef struct Giving {
    Arena arena;
    ARRAY(Giver) works;       /* by number */
    ARRAY(const char *) ways; /* arrangements, by name */
    double *lost;             /* [work][way] */
    unsigned *seats;          /* likewise: movements that can sit so */
} Giving;

/* Within a transaction; giving_free in any case. SPZ_NO_MEMORY and what goes wrong with the store. */
spz_status giving_read(Store *store, Giving *out);
void giving_free(Giving *giving);
/* Place of the work; SIZE_MAX. */
size_t giving_find(const Giving *giving, long long work);
/* What it gives up so; INFINITY where it can't sit so. */
double giving_lost(const Giving *giving, size_t work, size_t way);
#endif
