/* season_table.h - the season as people keep it: one row a work, read with libcsv. Comma or semicolon, header names in any order, UTF-8 with or
 * without a byte order mark. An empty concert, date or hall goes on from the row above. */
#ifndef SEASON_TABLE_SEASON_TABLE_H
#define SEASON_TABLE_SEASON_TABLE_H
#include "season/table/cells.h"
#include "season/table/dates.h"
#include "support/text_index.h"
#include "spezzato/status.h"
#include "support/arena.h"
#include "support/array.h"

typedef struct TableWork {
    long line;
    double order; /* rows without one follow the row above */
    const char *title, *scores, *fixed, *note; /* never NULL */
    int year;
    bool interval_after;
} TableWork;

typedef struct TableConcert {
    const char *name, *hall; /* never NULL; may be "" */
    Date date;
    long line;
    ARRAY(TableWork) works;  /* in order */
} TableConcert;

typedef struct SeasonTable {
    Arena arena;
    const char *path;
    ARRAY(TableConcert) concerts; /* in the order in which the table first names them */
    Index names;                  /* of concerts: name and date */
    size_t faults;                /* rows that could not be used */
} SeasonTable;

/* Codes of spz_season_plan. The table is to be freed in any case. */
spz_status table_read(const char *path, const spz_sink *sink, SeasonTable *out);
void table_free(SeasonTable *table);
#endif
