/* score_result.h - what a season needs to know of a score once it was read and judged: small, kept in the store and in lines, the same however
 * it was come by. Points are whole hundredths for that reason. */
#ifndef SEASON_RESULTS_SCORE_RESULT_H
#define SEASON_RESULTS_SCORE_RESULT_H
#include "season/results/hundredths.h"
#include "support/arena.h"
#include "support/array.h"

typedef struct SeatingResult { /* the movement in one arrangement */
    const char *name;
    const spz_loss *losses; /* what it weakens; bars alone, no passages */
    size_t loss_count;
    Hundredths points; /* sum of its terms */
    size_t lost_bars;  /* as spz_ranked */
    long lost_tenths;  /* of a second */
} SeatingResult;

typedef struct MovementResult {
    const char *title;
    spz_statement statement; /* its margin to nine decimals, as lines have it */
    size_t bars;
    bool strings; /* some play */
    bool thirds, two_orchestras, chamber; /* chamber: one player a part */
    SeatingResult *seats; /* best first, as judged; none when nothing could be judged */
    size_t seat_count;
    int year;    /* of composition, as judged; 0 not known */
    long tenths; /* of a second: how long it lasts by the tempo marks, repeats counted */
} MovementResult;

typedef struct ResultMessage { /* what the reader had to say */
    spz_severity severity;
    long line;
    const char *part, *bar; /* NULL where there is none */
    spz_fault fault;        /* a doubt about the score, with its `name`, `other` and `count`; SPZ_NO_FAULT: `text` says it */
    const char *name, *other;
    long count;
    const char *text;       /* of an error, for the caller's sink; NULL */
} ResultMessage;

typedef struct ScoreResult {
    Arena arena;
    spz_status status; /* of the reading; then there are no movements */
    ARRAY(MovementResult) movements;
    ARRAY(ResultMessage) messages;
    size_t messages_left_out; /* past RESULT_MESSAGES_MOST */
} ScoreResult;

enum { RESULT_MESSAGES_MOST = 50 };

ScoreResult *score_result_new(void); /* NULL: no memory */
void score_result_free(ScoreResult *result);
/* Reads and judges the score `data`, named `path`. Inputs that are no scores are no failure here: the result says so. SPZ_NO_MEMORY. */
spz_status score_result_make(const void *data, size_t size, const char *path, const spz_settings *settings, int year, ScoreResult *result);
/* Hands the messages on under the name `path`; the errors of a score that could not be read at `row`, the line of a table
 * that names it (what is wrong with settings remains the score's). */
void score_result_tell(const ScoreResult *result, const char *path, const spz_message *row, const spz_sink *sink);
#endif
