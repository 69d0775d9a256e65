/* strip.h - a movement as a strip: time across, a lane for each section (or three rows: first violins, second violins, all others). Calls are
 * filled, answers hollow, in the colour of who plays; a dashed frame is what another seating would lose. Widths are shares of the page, heights
 * are fixed: letters never shrink. Each passage is a link to its place in the list. */
#ifndef PAGES_DRAWINGS_STRIP_H
#define PAGES_DRAWINGS_STRIP_H
#include "pages/drawings/score_view.h"

enum { STRIP_LANES_MOST = 180 }; /* bars that fit side by side with all lanes */

/* The whole movement in one line: all lanes up to STRIP_LANES_MOST bars, three rows beyond. Clear passages and cited ones; the ranges of bars
 * where there is room, of the `named` ones above all. */
void strip_whole(const ScoreView *view, const size_t *named, size_t named_count);
/* The same with all lanes and every passage that the report shows, line under line. */
void strip_systems(const ScoreView *view);
/* Three rows without words, for a list of movements; underlined is what the other seating would lose, where `lost` is set. */
void strip_thumb(const ScoreView *view, const char *label, bool lost);
/* What the marks mean, as a row of samples. `lost`: what the dashed frame means, "" where nothing can be lost; `lost_with`: the same with # for the
 * name of an arrangement, for a script that shows another one. */
void strip_key(const ScoreView *view, const char *lost, const char *lost_with);
#endif
