/* score_walk.h - the scores that a list of files and folders leads to. */
#ifndef LIBRARY_SCORE_WALK_H
#define LIBRARY_SCORE_WALK_H
#include "season/table/score_cells.h"

/* Adds the paths from the root of all scores below `place`, each once, folder by folder in the order of names. Links to folders are not followed
 * inside a folder. What can't be opened is told and counted in `*missing`. Paths live in the arena. SPZ_NO_MEMORY. */
spz_status folders_walk(const char *place, const spz_sink *sink, Arena *arena, FileList *paths, size_t *missing);
/* The path from the root of what is named, links followed; the name itself where nothing is there. NULL: no memory. */
const char *folders_path(const char *name, Arena *arena);
#endif
