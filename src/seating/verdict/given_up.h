/* given_up.h - how much music an arrangement gives up against the best one. */
#ifndef SEATING_GIVEN_UP_H
#define SEATING_GIVEN_UP_H
#include "model/movement.h"
#include "spezzato/seating.h"

/* Fills lost_bars and lost_seconds of `ranked`: bars in which it weakens something that `best` doesn't. */
void given_up_measure(const Movement *movement, const spz_ranked *best, spz_ranked *ranked);
#endif
