/* work_orders.h - whether the works of a half, in another order, would need fewer changes. A remark for the conductor: what else an order
 * of works follows is not known here. */
#ifndef SEASON_PLANNING_WORK_ORDERS_H
#define SEASON_PLANNING_WORK_ORDERS_H
#include "season/planning/concert_choice.h"

typedef struct WorkSteps { /* the steps of one work, and whether the interval follows it */
    size_t first, count;
    bool interval_after;
} WorkSteps;

enum { ORDERS_WORKS_MOST = 7 }; /* 5040 orders; a half with more works is left as it is */

typedef struct OtherOrder {
    bool found;
    size_t first, count;                 /* works of the half */
    size_t works[ORDERS_WORKS_MOST];     /* their new order */
    ConcertChoice choice;
} OtherOrder;

/* The best order of one half, the others as they are: fewer changes than `present` at no higher sum; of equals the one that is nearest
 * to the order given. SPZ_NO_MEMORY. */
spz_status orders_find(const ConcertTask *task, const WorkSteps *works, size_t work_count, const ConcertChoice *present, OtherOrder *out);
#endif
