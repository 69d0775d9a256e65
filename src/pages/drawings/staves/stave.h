/* stave.h - a passage in notes, drawn without any engraver: a stave for each group that takes part, calls and answers in the colour of who plays, over
 * each a bracket (filled square: a call, hollow: an answer). Clefs come from the section, note values from the durations, beams from the beat: it is
 * there to be read at a glance; words are left to the engraver. */
#ifndef PAGES_DRAWINGS_STAVE_H
#define PAGES_DRAWINGS_STAVE_H
#include "pages/drawings/score_view.h"

enum { STAVES_MOST = 5 };

typedef struct StaveLook {
    double width;      /* units, of which a space between two lines has four */
    size_t staves_most;
    bool signs;        /* slurs, bow marks, lines and accents too: for those who bow it */
} StaveLook;
extern const StaveLook stave_short, stave_full; /* beside a line of words; over the whole page */

/* One line of notes from bar `first` on: as many bars of the passage as have room, two at least. Returns the bar after the last one drawn; `first` where
 * there is nothing to draw. */
size_t stave_line(const ScoreView *view, const spz_passage *passage, size_t first, StaveLook look);
#endif
