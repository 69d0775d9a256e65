/* stored_lines.h - lines that earlier runs wrote, here or on other computers, put together by file. */
#ifndef SEASON_RESULTS_STORED_LINES_H
#define SEASON_RESULTS_STORED_LINES_H
#include "support/text_index.h"
#include "season/results/result_lines.h"

typedef struct StoredScore { /* one score */
    LineHead head;
    MovementResult *movements;
    bool *seen;
    size_t of, count; /* whole when count == of; a file that could not be read is of 0 */
    spz_status status;
    ARRAY(ResultMessage) messages;
    size_t messages_left_out;
} StoredScore;

typedef struct KeptLines { /* zeroed: none */
    Arena arena;
    ARRAY(StoredScore) list;
    Index by_file; /* 'FILE terms' */
} KeptLines;

/* Adds all lines of a file. Damaged ones are doubts, told with their line and left out. SPZ_CANNOT_OPEN, SPZ_CANNOT_READ, told. */
spz_status stored_lines_read(KeptLines *lines, const char *path, const spz_sink *sink);
/* The score under these terms with this content, whole; NULL when the lines don't have it. */
const StoredScore *stored_lines_find(const KeptLines *lines, const LineHead *head);
/* A result whose texts live as long as the lines. NULL: no memory. */
ScoreResult *stored_result(const StoredScore *kept);
void stored_lines_free(KeptLines *lines);
#endif
