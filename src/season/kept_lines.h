/* kept_lines.h - lines that earlier runs wrote, here or on other computers, put together by file. */
#ifndef SEASON_KEPT_LINES_H
#define SEASON_KEPT_LINES_H
#include "season/index.h"
#include "season/lines.h"

typedef struct Kept { /* one score */
    LineHead head;
    DigestMovement *movements;
    bool *seen;
    size_t of, count; /* whole when count == of; a file that could not be read is of 0 */
    spz_status status;
    ARRAY(DigestMessage) messages;
    size_t messages_left_out;
} Kept;

typedef struct KeptLines { /* zeroed: none */
    Arena arena;
    ARRAY(Kept) list;
    Index by_file; /* 'FILE terms' */
} KeptLines;

/* Adds all lines of a file. Damaged ones are doubts, told with their line and left out. SPZ_CANNOT_OPEN, SPZ_CANNOT_READ, told. */
spz_status kept_lines_read(KeptLines *lines, const char *path, const spz_sink *sink);
/* The score under these terms with this content, whole; NULL when the lines don't have it. */
const Kept *kept_lines_find(const KeptLines *lines, const LineHead *head);
/* A digest whose texts live as long as the lines. NULL: no memory. */
Digest *kept_digest(const Kept *kept);
void kept_lines_free(KeptLines *lines);
#endif
