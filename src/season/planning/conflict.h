/* conflict.h - why the fixed seatings of a concert can't all be had: the two rows, and the change between them that the house doesn't allow. */
#ifndef SEASON_PLANNING_CONFLICT_H
#define SEASON_PLANNING_CONFLICT_H
#include "season/planning/concert_plan.h"

/* For a concert that has no plan. SPZ_NO_MEMORY. */
spz_status conflict_find(const ConcertPlan *plan, spz_conflict *out);
#endif
