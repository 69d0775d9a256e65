/* season_table.h - the season as people keep it: one row a work, read with libcsv. Comma, semicolon or tab, or a spreadsheet file; header names in any order; UTF-8, UTF-16 or
 * Latin-1. An empty concert, date or hall goes on from the row above. What can't be used is noted with its line, the rest is taken. */
#ifndef SEASON_TABLE_SEASON_TABLE_H
#define SEASON_TABLE_SEASON_TABLE_H
#include "season/table/cells.h"
#include "season/dates/dates.h"
#include "support/text/text_index.h"
#include "spezzato/season.h"
#include "support/arena.h"
#include "support/array.h"

typedef struct TableWork {
    long line;
    double order; /* rows without one follow the row above */
    const char *title, *scores, *fixed, *note; /* never NULL */
    const char *soloist, *piano, *podium;      /* the same; "" where the stage has none, or the podium its usual place */
    int year;
    bool interval_after, ordered;
} TableWork;

typedef struct TableConcert {
    const char *name, *hall; /* never NULL; may be "" */
    Date date;
    int time; /* minutes after midnight; NO_TIME */
    long line, hall_line;
    ARRAY(TableWork) works;  /* in order */
    ARRAY(spz_moment) rehearsals; /* as they come */
} TableConcert;

typedef struct SeasonTable {
    Arena arena;
    const char *path;
    ARRAY(TableConcert) concerts; /* in the order in which the table first names them */
    Index names;                  /* of concerts: name and date */
    ARRAY(spz_table_note) notes;  /* as they came; texts in the arena */
    size_t faults;                /* notes that are no doubts */
    bool starved;                 /* a note was lost for want of memory */
} SeasonTable;

typedef struct TableOptions {
    DateOrder dates;   /* DATES_UNKNOWN: as the table shows itself */
    const char *sheet; /* of a spreadsheet; NULL: the first */
} TableOptions;

/* Codes of spz_season_plan. The table is to be freed in any case. `options` NULL: none. */
spz_status table_read(const char *path, const TableOptions *options, const spz_sink *sink, SeasonTable *out);
/* Keeps the note and tells it: as a fault, or a doubt. Texts are copied. */
void table_tell(SeasonTable *table, const spz_sink *sink, const spz_table_note *note);
/* The notes by line. */
void table_sort_notes(SeasonTable *table);
void table_free(SeasonTable *table);
#endif
