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
    DateOrder dates;
    long concert;   /* index of the row above's; -1: none yet */
    double order;   /* of the row above */
    size_t two_ways; /* dates in which nobody knows which is the month */
    long two_ways_line; /* of the first of them, and what it says */
    const char *two_ways_date;
} Rows;

/* Adds the row: its work, its interval, or the concert that it opens. A cell that can't be used is noted, and the row taken without it. SPZ_NO_MEMORY. */
spz_status rows_add(Rows *rows, const Row *row);
/* Puts the works of each concert in order, and notes what is doubtful in the whole. */
void rows_finish(Rows *rows);
#endif
