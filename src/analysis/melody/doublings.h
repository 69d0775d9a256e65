/* doublings.h - who plays along with each note of a melody: in the same rhythm, in parallel, in unison or octaves, and whether winds
 * double it. Marked once, for the first 64 groups: more have never been seen in one score. Cost: groups squared times notes. */
#ifndef ANALYSIS_MELODY_DOUBLINGS_H
#define ANALYSIS_MELODY_DOUBLINGS_H
#include "analysis/melody/melody.h"

/* Fills `company`, `parallel`, `unison`, `leaders`, EVENT_DOUBLES and EVENT_DOUBLED of all events; one melody for each group of the map. */
void doublings_mark(const SectionMap *map, Melody *melodies);
#endif
