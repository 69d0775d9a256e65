/* score_file.h - the bytes of a score's file, which name it. */
#ifndef SEASON_RESULTS_SCORE_FILE_H
#define SEASON_RESULTS_SCORE_FILE_H
#include "spezzato/status.h"
#include <stddef.h>

/* The caller gives them to memory_free. SPZ_CANNOT_OPEN, SPZ_CANNOT_READ, SPZ_OVER_LIMIT, SPZ_NO_MEMORY. */
spz_status score_file_read(const char *path, char **data, size_t *size);
#endif
