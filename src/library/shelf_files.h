/* shelf_files.h - a work's scores by its name. */
#ifndef LIBRARY_SHELF_FILES_H
#define LIBRARY_SHELF_FILES_H
#include "library/score_walk.h"
#include "store/transactions.h"

typedef struct ShelfFiles {
    size_t works;      /* that have the name */
    const char *names; /* of the first of them, where they are several; else NULL */
    FileList paths;       /* of the one work, each once, in order; the caller frees the list */
} ShelfFiles;

/* Names and paths live in the arena. What goes wrong is told. SPZ_CANNOT_READ, SPZ_NO_MEMORY. */
spz_status shelf_files(Store *store, const char *name, const spz_sink *sink, Arena *arena, ShelfFiles *out);
#endif
