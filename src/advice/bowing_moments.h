/* bowing_moments.h - the notes of one group as a bowing committee reads them: moments at which something begins, with all signs. */
#ifndef ADVICE_BOWING_MOMENTS_H
#define ADVICE_BOWING_MOMENTS_H
#include "advice/bowings.h"

typedef struct BowingMoment {
    Ticks onset;
    uint32_t signs; /* bit BowingSign; BOWING_SLUR: bound to the next moment */
} BowingMoment;

typedef struct BowingMoments {
    BowingMoment *at; /* owned */
    size_t count;
} BowingMoments;

/* All moments of the group, grace notes left out. False without memory. */
bool bowing_moments(const Group *group, BowingMoments *out);
/* The first moment at or after `when`. */
size_t bowing_moment_at(const BowingMoments *moments, Ticks when);
#endif
