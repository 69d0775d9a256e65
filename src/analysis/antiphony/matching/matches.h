/* matches.h - where one group says what another said a while before: runs of notes with the same rhythm and a similar contour at a
 * fixed distance in time (the lag).
 *
 * Method: each note at which a gesture can begin (after a rest or a long note, or on a beat) is looked up by the rhythm and the
 * direction of its next notes among the recent notes of the other groups; each hit is grown along its lag as long as the two
 * groups agree, with a penalty for every note that only one of them has, and cut back to its best point (the idea of
 * local alignment: Smith and Waterman, J. Mol. Biol. 147 (1981) 195, with the X-drop of Altschul et al., J. Mol. Biol. 215 (1990) 403).
 *
 * Cost: bounded by notes x groups x `lookback` looked-up notes, each stretch of a lag grown once. Linear in the bars. */
#ifndef ANALYSIS_ANTIPHONY_MATCHES_H
#define ANALYSIS_ANTIPHONY_MATCHES_H
#include "analysis/antiphony/matching/match.h"

/* All matches between different melodies, in order of discovery. SPZ_OK or SPZ_NO_MEMORY. */
spz_status matches_find(const Movement *movement, const Melody *melodies, size_t melody_count, MatchList *out);

#endif
