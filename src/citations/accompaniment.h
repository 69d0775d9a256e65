/* accompaniment.h - who else has a tune while a dialogue goes on: then the dialogue accompanies it. */
#ifndef CITATIONS_ACCOMPANIMENT_H
#define CITATIONS_ACCOMPANIMENT_H
#include "sections/section_map.h"
#include "spezzato/passages.h"

/* How much of a tune somebody else has, 0..1: the share of the time in which it sounds, times the share of its notes that are not those of the
 * dialogue, at any octave; less where it has few pitches or hardly moves. */
typedef struct OtherTune {
    double most, above; /* of any line; of those that lie as high as the dialogue or higher, on the mean */
    size_t values;      /* note values of the line that has most */
} OtherTune;

/* Between two moments, apart from these players (bits as in spz_entry). Cost: one pass over the sounds of that time for each line. */
OtherTune tune_of_others(const SectionMap *map, spz_players dialogue, Ticks from, Ticks to);
#endif
