/* cells.h - what people write into the cells of a season's table. */
#ifndef SEASON_TABLE_CELLS_H
#define SEASON_TABLE_CELLS_H
#include <stdbool.h>
#include <stddef.h>

typedef enum Column {
    COLUMN_CONCERT, COLUMN_DATE, COLUMN_HALL, COLUMN_ORDER, COLUMN_WORK, COLUMN_SCORE, COLUMN_COMPOSED, COLUMN_INTERVAL, COLUMN_FIXED,
    COLUMN_NOTE, COLUMN_TIME, COLUMN_REHEARSALS, COLUMN_SOLOIST, COLUMN_PIANO, COLUMN_PODIUM, COLUMN_COUNT
} Column;
/* The column of that name in English, German or French, whatever its capitals, blanks and underscores; COLUMN_COUNT when there is none. */
Column column_of(const char *head);

/* Without blanks at both ends and line ends within, in place. */
char *cell_trim(char *text);
/* 'Pause', 'Interval', 'Entracte' and the like by itself. */
bool cell_interval_word(const char *text);
/* 'yes', 'no', 'x', '1', '0', 'ja', 'oui', 'WAHR', 'Pause', '20 min', ...; blank is no. False for what is none of these. */
bool cell_yes(const char *text, bool *yes);
/* A number of 0 or more: '2', '2.5', '2nd', '2.', 'No. 2', 'II', 'second', 'zweites'; what comes last: 'encore'. */
bool cell_order(const char *text, double *order);
/* The year in '1788', 'c. 1720', '1804-06' (the first); false where there is none from 1000 to 2100. */
bool cell_year(const char *text, int *year);
/* Whether `text` begins as `name` does, up to the end of `name`, whatever the capitals and however many blanks; `*rest` is then what
 * follows in `text`. */
bool cell_begins(const char *text, const char *name, const char **rest);
/* The same words, whatever the capitals and however many blanks. */
bool cell_same(const char *a, const char *b);
#endif
