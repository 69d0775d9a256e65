/* passage_facts.h - the small facts of which passages are made: pitches, fractions, sets of players and their names. */
#ifndef ANALYSIS_PASSAGES_PASSAGE_FACTS_H
#define ANALYSIS_PASSAGES_PASSAGE_FACTS_H
#include "sections/section_map.h"
#include "spezzato/passages.h"

spz_fraction beat_of(const Movement *movement, Ticks when);

static inline spz_players players_of_group(size_t group)
{
    return group < 63 ? (spz_players)1 << group : 0;
}

/* A side of one group. */
spz_side side_of_group(const SectionMap *map, size_t group);

extern const spz_side no_side;
#endif
