/* excerpt.h - a few bars of a few parts, cut out of a score file as a MusicXML score of their own: what stands in these bars is taken over
 * byte for byte (without slurs that lead out of them, with the colours that are asked for), and what is in force at their beginning (key, time, clefs, transposition) is put before it. */
#ifndef EDITING_EXCERPT_H
#define EDITING_EXCERPT_H
#include "model/movement.h"
#include "support/array.h"
#include "support/buffer.h"

typedef struct BarText {
    size_t begin, end; /* what is between <measure> and </measure>; both 0 where the part lacks the bar */
} BarText;

typedef struct SignText { /* a key, a time, a clef, ... */
    size_t part, bar, begin, end;
    int kind, number;     /* place in the order of <attributes>; staff, 0 for all */
} SignText;

typedef struct ExcerptSource {
    const Movement *movement;
    Buffer text;          /* the movement's file as UTF-8 */
    BarText *bars;        /* part * bar_count + bar */
    ARRAY(SignText) signs; /* in order of the file */
    ARRAY(size_t) lines;   /* where each line of the text ends */
    /* The colour of a note ("#184f7e"; NULL: as the others) by its part and its line in the file. Set by whoever cuts, NULL: none has a colour. */
    const char *(*colour)(const void *context, size_t part, uint32_t line);
    const void *context;
} ExcerptSource;

/* Opens the file that the movement was read from, once more. Not SPZ_OK where no excerpts can be cut: the file has gone or changed, is not in
 * UTF-8 or UTF-16, or holds several movements in one text. */
spz_status excerpt_open(ExcerptSource *source, const char *path, const Movement *movement);
void excerpt_close(ExcerptSource *source);
typedef struct ExcerptPart {
    size_t part;
    const char *name; /* as it is to stand before the staff */
} ExcerptPart;
/* Bars first..last of the parts, top to bottom. */
void excerpt_cut(const ExcerptSource *source, const ExcerptPart *parts, size_t count, size_t first, size_t last, Buffer *out);
#endif
