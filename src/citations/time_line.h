/* time_line.h - seconds of a performance against seconds by the score's tempo marks: stretched to a known length, and bent so that known
 * moments fall where they were heard; between two of them in proportion. */
#ifndef CITATIONS_TIME_LINE_H
#define CITATIONS_TIME_LINE_H
#include "spezzato/sheets.h"

enum { ANCHORS_MOST = 256 };

typedef struct TimeLine {
    size_t count;
    double marked[ANCHORS_MOST + 2], heard[ANCHORS_MOST + 2]; /* rising; the first and the last are the movement's ends */
} TimeLine;

/* `lasts` 0: not known. SPZ_BAD_ARGUMENT for a bar that never sounds, moments that don't rise with the bars, or too many. */
spz_status time_line_make(const spz_movement *movement, double lasts, const spz_note_anchor *anchors, size_t count, TimeLine *line);
double time_line_at(const TimeLine *line, double marked);
double time_line_end(const TimeLine *line); /* seconds that the movement lasts */
#endif
