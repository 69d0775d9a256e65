/* holds.h - fermatas: for how long the music stands still. */
#ifndef SOUND_HOLDS_H
#define SOUND_HOLDS_H
#include "sections/section_map.h"

enum { HOLDS_MOST = 64 };
extern const double hold_factor; /* how many times its length a held note lasts */

typedef struct Holds { /* in order, none within another */
    struct {
        Ticks from, to;
    } at[HOLDS_MOST];
    size_t count;
} Holds;

/* Fermatas on notes that begin in [from, to), whoever has them: of several at once the music stands on what they share, as who moves under a held note goes on moving. */
void holds_find(const SectionMap *map, Ticks from, Ticks to, Holds *out);
#endif
