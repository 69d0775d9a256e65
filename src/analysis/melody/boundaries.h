/* boundaries.h - how strongly a listener hears a new group begin at each note of a melody.
 *
 * Strength is a weighted sum of cues. Each compares a note with its neighbours, as in the grouping preference rules of Lerdahl and Jackendoff (*A Generative
 * Theory of Tonal Music*, 1983: a rest or the end of a slur, rule 2a; a longer distance of onsets, 2b; a leap, 3a; dynamics, 3b; articulation, 3c; parallelism,
 * 6) and their quantified forms (Frankland and Cohen, *Music Perception* 21 (2004) 499; Temperley, *The Cognition of Basic Musical Structures*, 2001, who adds
 * metre; both from memory). What leaps out is measured by the degree of change of Cambouropoulos' local boundary detection (*Proc. ICMC* 2001): the difference
 * of neighbouring intervals over their sum. The weights are fitted to published entries of the main melody (tests/tools/fit_boundaries.py). */
#ifndef ANALYSIS_MELODY_BOUNDARIES_H
#define ANALYSIS_MELODY_BOUNDARIES_H
#include "analysis/melody/melody.h"

enum BoundaryCue {
    BC_REST,     /* 1 after a rest */
    BC_LONGER,   /* log2 of the distance from the onset before over that to the next, 0 to 4 */
    BC_LEAP,     /* degree of change of the interval that leads here against its neighbours, where it is wider: 0 to 2 */
    BC_BOUND,    /* 1 under a slur that comes from before */
    BC_SLUR,     /* 1 where a slur begins and none comes from before */
    BC_MARKED,   /* 1 where a dynamic or words stand within half a crotchet */
    BC_BAR, BC_HALF, /* 1 on the first beat of a bar; on a beat that halves it */
    BC_DOTS,     /* 1 where staccato begins or ends */
    BC_PARALLEL, /* by how much the rhythm of the next three steps began more strongly when it began last, within eight bars: 0 to 3 */
    BOUNDARY_CUES
};

const char *boundary_cue_name(enum BoundaryCue cue);

/* Fills `boundary` of every note; linear in the notes. `cues` may be NULL: BOUNDARY_CUES for each note. */
void boundaries_mark(const SectionMap *map, Melody *melody, double *cues);
/* Of all melodies of the map; NULL: none. */
void boundaries_mark_all(const SectionMap *map, Melody *melodies);
#endif
