/* playing_parts.h - how many parts of the score play in each bar: what a passage has to be heard through. */
#ifndef ANALYSIS_MELODY_PLAYING_PARTS_H
#define ANALYSIS_MELODY_PLAYING_PARTS_H
#include "sections/section_map.h"

typedef struct PlayingParts {
    uint16_t *parts; /* a bar: string groups and other parts that begin a note in it */
    size_t bar_count;
} PlayingParts;

spz_status playing_parts_of(const SectionMap *map, Arena *arena, PlayingParts *out);

/* Share of the parts that play in the bars first..last that `own` of them make up, 0..1. */
double playing_parts_share(const PlayingParts *company, size_t first, size_t last, double own);
#endif
