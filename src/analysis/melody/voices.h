/* voices.h - the melodies of a whole orchestra: the string groups first, in the map's order, then each wind and brass part. */
#ifndef ANALYSIS_MELODY_VOICES_H
#define ANALYSIS_MELODY_VOICES_H
#include "analysis/melody/melody.h"

enum { VOICES_MOST = 64 }; /* as many as doublings.h can tell apart; winds beyond are left out */

typedef struct Voices {
    SectionMap map;      /* a map whose groups are all voices; of it only movement, groups and their sounds are filled in */
    Melody *melodies;    /* one for each group of `map` */
    size_t string_count; /* the first so many are the string groups */
} Voices;

/* What begins from `from` on and before `to`, from `arena`; `strings` must outlive it. SPZ_NO_MEMORY. */
spz_status voices_of(const SectionMap *strings, Ticks from, Ticks to, Arena *arena, Voices *out);
#endif
