/* result_lines.h - a result as text: one line of JSON a movement. The store keeps such lines; `--format ndjson` writes them; batch systems
 * carry them about. A line says which file it is about, what that file held and under which terms it was judged. */
#ifndef SEASON_RESULTS_RESULT_LINES_H
#define SEASON_RESULTS_RESULT_LINES_H
#include "season/results/score_result.h"
#include "support/sha256.h"
#include "support/buffer.h"

typedef struct LineHead {
    const char *file;  /* from the table's folder; the store writes "" */
    char terms[SHA256_TEXT];   /* edition of the program, settings, year */
    char content[SHA256_TEXT]; /* of the file; "" where it could not be read */
} LineHead;

void lines_write(Buffer *out, const LineHead *head, const ScoreResult *result);

/* Puts lines together again. Lines of several files may come in any order, each file's movements too. */
typedef struct LineRead {
    LineHead head;     /* file: in the arena */
    size_t number, of; /* movement, from 1; 0 of 0 for a file that could not be read */
    MovementResult movement;
    spz_status status;
    ARRAY(ResultMessage) messages;
    size_t messages_left_out;
} LineRead;

/* False where the line is damaged, or of another kind. Texts live in the arena; the messages are the caller's to free. */
bool line_read(const char *text, size_t length, Arena *arena, LineRead *out);
/* The lines of one score to a result; false where anything is wrong with it. */
bool lines_read_result(const char *text, size_t length, const LineHead *expected, ScoreResult *result);
#endif
