/* stave_layout.h - where everything of one line of staves stands: which bars have room, the moments that all staves share, how far notes reach. */
#ifndef PAGES_DRAWINGS_STAVE_LAYOUT_H
#define PAGES_DRAWINGS_STAVE_LAYOUT_H
#include "pages/drawings/staves/stave_bars.h"

enum { MOMENTS_MOST = 800, BARS_MOST = 16, HALF_SPACE = 2 /* units */, STEM = 14 };

/* Where each moment of the line stands: all staves share them. */
typedef struct Moment {
    size_t bar;
    Ticks onset;
    double weight, x;
} Moment;

typedef struct Line {
    const ScoreView *view;
    const spz_passage *passage;
    StaveLook look;
    Stave staves[STAVES_MOST];
    double tops[STAVES_MOST], highest[STAVES_MOST], lowest[STAVES_MOST]; /* top lines; how far notes reach above and below them, in units */
    size_t count, first, end;
    double left, height;
    Moment moments[MOMENTS_MOST];
    size_t moment_count;
    double bars[BARS_MOST + 1]; /* x of the bar lines */
    struct Strokes *strokes;
} Line;

/* What is drawn with one pen, as one path each: stems and ledger lines; full heads. */
typedef struct Strokes {
    Buffer lines, heads;
} Strokes;

/* As many bars from line->first on as have room; sets line->end. False without memory. */
bool stave_choose_bars(Line *line);
/* The moments' x behind a signature of that width; then tops and height. */
void stave_place(Line *line, double signature);
double stave_y(const Line *line, size_t s, int place);
double stave_x(const Line *line, const StaveChord *chord);
/* Whether the stem of chord `at`, or of the beam that it is in, points up. */
bool stave_stem_up(const Stave *stave, size_t first, size_t end);
#endif
