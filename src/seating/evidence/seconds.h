/* seconds.h - where the second violins carry the melody: bars in which they move while the firsts rest or hold, or lie above them
 * and move more. */
#ifndef SEATING_SECONDS_H
#define SEATING_SECONDS_H
#include "seating/evidence/seating_evidence.h"

/* Appends spans of at least two such bars; `share` is theirs of the movement's bars. */
spz_status seconds_find_melody(const SectionMap *map, SpanList *spans, double *share);
#endif
