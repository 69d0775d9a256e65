/* split_line.h - one melody for two or three sections: all play all the time, but what is heard on top takes its notes from one and
 * the other in turn. Each part alone leaps; their upper envelope moves by step.
 *
 * Published pattern: Deutsch, J. Acoust. Soc. Am. 57 (1975) 1156: left C5 D4 A4 F4 F4 A4 D4 C5, right C4 B4 E4 G4 G4 E4 B4 C4. */
#ifndef ANALYSIS_ANTIPHONY_SPLIT_LINE_H
#define ANALYSIS_ANTIPHONY_SPLIT_LINE_H
#include "analysis/passages/findings.h"
#include "spezzato/settings.h"

/* Two groups, neighbours or not, from bar `first` to bar `last`, where the conductor hears one line shared out: the run in these bars that gains most,
 * however slight. `*made` false where the notes don't bear it: the line on top passes from hand to hand in less than three of its steps. */
spz_status split_line_raise(Findings *findings, const size_t groups[2], size_t first, size_t last, bool *made);
spz_status detect_split_line(Findings *findings, const spz_settings *settings);
#endif
