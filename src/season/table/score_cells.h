/* score_cells.h - what a cell of the column 'score' leads to: files, several with '|' between, or a folder of movements. */
#ifndef SEASON_TABLE_SCORE_CELLS_H
#define SEASON_TABLE_SCORE_CELLS_H
#include "season/table/season_table.h"

typedef ARRAY(const char *) FileList;

typedef struct ScoreSearch { /* who hears of what is not there */
    SeasonTable *table;
    long line;
    const spz_sink *sink;
    size_t missing;
} ScoreSearch;

/* Adds the files in playing order; names are taken from `folder` (ends with a slash, or "") unless they begin with one. The scores of
 * a folder are taken by name, numbers by their value: 'air-2' before 'air-10'. What is not there is noted and counted. Names live in the arena.
 * SPZ_NO_MEMORY. */
spz_status scores_find(ScoreSearch *search, const char *cell, const char *folder, Arena *arena, FileList *files);
/* Adds the paths of what a folder holds and is `wanted` by its name, in order of names. Paths live in the arena. SPZ_CANNOT_OPEN: errno tells why; SPZ_NO_MEMORY. */
spz_status scores_folder(const char *path, bool (*wanted)(const char *name), Arena *arena, FileList *files);
bool scores_is_name(const char *name); /* whether a file of that name is taken for a score: .musicxml, .mxl, .xml, whatever the capitals */
#endif
