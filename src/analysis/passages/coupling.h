/* coupling.h - two groups that move together: unison, octaves, parallel thirds or sixths in one rhythm. It argues for sitting
 * together, the more so the faster, softer and more exact it is. Every two groups get a pairing (shares of the movement); of the
 * stretches only those worth a conductor's mark become passages. Cost: one merge of two melodies for each pair. */
#ifndef ANALYSIS_PASSAGES_COUPLING_H
#define ANALYSIS_PASSAGES_COUPLING_H
#include "analysis/passages/findings.h"
#include "spezzato/settings.h"

/* Two groups (the one first in score order) from bar `first` to bar `last`, where the conductor hears them move together: a passage with the strength
 * that it has by itself, however slight. `*made` false where the notes don't bear it: less than half of the attacks are shared, or no kind of
 * interval prevails. */
spz_status coupling_raise(Findings *findings, const size_t groups[2], size_t first, size_t last, bool *made);
spz_status detect_coupling(Findings *findings, const spz_settings *settings);
#endif
