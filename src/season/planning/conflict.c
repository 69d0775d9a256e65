#include "season/planning/conflict.h"
#include <math.h>

/* The first work up to which no plan is possible; the number of works when all are. */
static spz_status first_impossible(const ConcertPlan *plan, size_t *work)
{
    ConcertTask task = plan->task;
    ConcertChoice choice;
    bool possible = true;
    spz_status status = SPZ_OK;
    size_t count = plan->draft->row->works.count;
    for (*work = 0; *work < count; ++*work) {
        task.count = plan->works[*work].first + plan->works[*work].count;
        status = concert_choose(&task, CONCERT_ANY_CHANGES, plan->seatings, &choice, &possible);
        if (status != SPZ_OK || !possible)
            break;
    }
    return status;
}

static bool is_fixed(const ConcertPlan *plan, size_t work)
{
    const TableWork *row = &plan->draft->row->works.at[work];
    return *row->fixed && hall_meant(plan->hall, row->fixed);
}

/* The least that a change from one of the seatings `before` to one of `after` takes at the step. */
static double least_minutes(const ConcertPlan *plan, uint32_t before, uint32_t after)
{
    double least = INFINITY;
    for (int from = 0; from < plan->hall->seatings; from++)
        for (int to = 0; to < plan->hall->seatings; to++)
            if (before >> from & after >> to & 1u)
                least = fmin(least, changeover_carried(plan->hall->plans[from], plan->hall->plans[to], &plan->rules).minutes);
    return least;
}

/* The best moment for a change between two works. */
static spz_gap best_gap(const ConcertPlan *plan, size_t before, size_t after)
{
    spz_gap gap = SPZ_BETWEEN_WORKS;
    for (size_t work = before + 1; work <= after; work++)
        if (plan->steps[plan->works[work].first].gap < gap)
            gap = plan->steps[plan->works[work].first].gap;
    return gap;
}

spz_status conflict_find(const ConcertPlan *plan, spz_conflict *out)
{
    size_t later;
    spz_status status = first_impossible(plan, &later);
    *out = (spz_conflict){.gap = SPZ_BEFORE_CONCERT};
    if (status != SPZ_OK || later >= plan->draft->row->works.count)
        return status;
    const TableWork *rows = plan->draft->row->works.at;
    size_t earlier = later;
    while (earlier > 0 && !is_fixed(plan, --earlier)) {}
    bool both = earlier < later && is_fixed(plan, earlier);
    uint32_t after = plan->steps[plan->works[later].first].open;
    uint32_t before = both ? plan->steps[plan->works[earlier].first].open : plan->task.usual >= 0 ? 1u << plan->task.usual : after;
    if (both) {
        out->gap = best_gap(plan, earlier, later);
        out->line = rows[earlier].line;
        out->work = rows[earlier].title;
        out->fixed = rows[earlier].fixed;
    }
    out->other_line = rows[later].line;
    out->other_work = rows[later].title;
    out->other_fixed = rows[later].fixed;
    out->minutes = least_minutes(plan, before, after);
    out->allowed = plan->rules.allowed[out->gap];
    out->longest = plan->rules.longest[out->gap];
    return SPZ_OK;
}
