/* streams.h - the rows of a note stream: written order, or the order in which the bars sound. */
#ifndef REPORT_STREAMS_H
#define REPORT_STREAMS_H
#include "model/stream.h"
#include "sections/section_map.h"

typedef struct StreamRow {
    Ticks onset, duration; /* from the start of the movement as written, or as played */
    Ticks written;         /* where it begins on paper: gives bar and beat */
    const Note *note;
    uint16_t part;
} StreamRow;
typedef ARRAY(StreamRow) StreamRows;

/* Appends the sounds of a part, in order of onset. */
spz_status streams_written(const Movement *movement, size_t part, StreamRows *rows);

/* The same with repeats unfolded. A sound that is held over the end of what is played ends there; a note that is tied into a bar after a
 * jump goes on with what sounded before the jump where it has the same pitch and voice, else it is struck anew. */
spz_status streams_played(const Movement *movement, size_t part, StreamRows *rows);

/* The line of the score that a note belongs to: the most exact of those that fit; NULL when there is none. */
const spz_line *streams_line(const SectionMap *map, size_t part, const Note *note);
#endif
