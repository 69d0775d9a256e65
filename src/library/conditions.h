/* conditions.h - from conditions to SQL: pieces with places for values, and the values bound in the same order. Nothing that a user says becomes
 * part of the SQL. */
#ifndef LIBRARY_CONDITIONS_H
#define LIBRARY_CONDITIONS_H
#include "library/inside.h"
#include "support/buffer.h"

enum { VALUES_MOST = 64 };

typedef struct Value {
    const char *text; /* NULL: the number */
    double number;
} Value;

typedef struct Where {
    Buffer sql;
    Value values[VALUES_MOST];
    int count;
} Where;

void where_free(Where *where);
/* Whether anything is said of passages. */
bool conditions_of_passages(const spz_conditions *conditions);
/* ' AND ...' about passage p. */
void where_passages(Where *where, const spz_conditions *conditions, bool of_all); /* `of_all` movements, or of one */
/* ' AND ...' about movement m of work w. */
void where_movements(Where *where, const spz_conditions *conditions);
void where_bind(const Where *where, Query *query);
#endif
