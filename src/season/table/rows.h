/* rows.h - from the cells of one row to a work of a concert. */
#ifndef SEASON_TABLE_ROWS_H
#define SEASON_TABLE_ROWS_H
#include "season/table/season_table.h"

typedef struct Row {
    long line;
    char *cells[COLUMN_COUNT]; /* trimmed; "" where there is none */
} Row;

typedef struct Rows {
    SeasonTable *table;
    const spz_sink *sink;
    long concert;   /* index of the row above's; -1: none yet */
    double order;   /* of the row above */
    bool lost;      /* a row that can't be used may have named another concert since */
} Rows;

/* Adds the row, or says why it can't be used. SPZ_NO_MEMORY. */
spz_status rows_add(Rows *rows, const Row *row);
/* A row that can't be used, with what its cells of concert and date say: it may have opened a concert, and rows under it that name none
 * are then not of the concert before it. */
void rows_lose(Rows *rows, const char *name, const char *day);
/* Puts the works of each concert in order. */
void rows_finish(Rows *rows);
#endif
