/* needs.h - how many string players a movement needs at least.
 *
 * A section needs one player for each line that it is divided into at once, a desk (two) for each where the score divides by desk, and whoever
 * steps out as a soloist besides those who stay. Parts of equal standing (Viola 1, 2, 3) and sections of several orchestras add up. Named desks are
 * counted by the lines alone. That the section sounds as one needs more; it is not counted here. */
#ifndef LIBRARY_NEEDS_H
#define LIBRARY_NEEDS_H
#include "spezzato/reading.h"

typedef struct Need {
    int players;
    size_t bar; /* where most are needed; SIZE_MAX: by its parts */
} Need;

/* needs[section] for each section up to SPZ_DB; 0 players where it does not play. */
void needs_of(const spz_movement_reading *reading, Need needs[SPZ_DB + 1]);
#endif
