/* What else could have been chosen: no change at all, one change more, another order of the works. */
#include "season/planning/concert_plan.h"

static const Hundredths offered_least = 10; /* of a point: nobody moves a chair for less */

static double points(Hundredths hundredths)
{
    return (double)hundredths / 100;
}

static const char *title_of(const ConcertPlan *plan, size_t work)
{
    return plan->draft->row->works.at[work].title;
}

static void fill(spz_other_plan *out, const ConcertChoice *choice)
{
    *out = (spz_other_plan){.possible = true, .points = points(choice->loss), .price = points(choice->price), .changes = choice->changes};
}

/* What each movement gets and gives up in this row of seatings. */
static spz_status list_movements(ConcertPlan *plan, const int *seatings, spz_other_plan *out)
{
    spz_planned_movement *movements = arena_take(&plan->season->arena, plan->task.count + 1, sizeof *movements);
    if (!movements)
        return SPZ_NO_MEMORY;
    for (size_t i = 0; i < plan->task.count; i++)
        if (plan->sources[i].result)
            plan_tell_movement(plan, seatings, i, &movements[out->movement_count++]);
    out->movements = movements;
    return SPZ_OK;
}

static spz_status find_unchanged(ConcertPlan *plan, int *seatings, spz_other_plan *out)
{
    ConcertChoice choice;
    bool possible;
    spz_status status = concert_choose(&plan->task, 0, seatings, &choice, &possible);
    if (status == SPZ_OK && possible) {
        fill(out, &choice);
        out->seating = plan->hall->names[seatings[0]];
        status = list_movements(plan, seatings, out);
    }
    return status;
}

/* True price of the changes in the row; those that the house doesn't allow cost nothing here. */
static Hundredths allowed_prices(const ConcertPlan *plan, const int *seatings)
{
    Hundredths sum = 0;
    for (size_t i = 0; i < plan->task.count; i++) {
        int before = plan_seating_before(plan, seatings, i);
        Hundredths price = before >= 0 ? plan->task.price[plan->steps[i].gap][before][seatings[i]] : 0;
        sum += price < CONCERT_BANNED ? price : 0;
    }
    return sum;
}

/* The same task with changes at the interval alone, whatever they cost: a hundredth of a point, so that none is made for nothing. */
static void set_interval(const ConcertPlan *plan, ConcertTask *task)
{
    *task = plan->task;
    for (int from = 0; from < task->seatings; from++)
        for (int to = 0; to < task->seatings; to++) {
            if (from == to)
                continue;
            task->price[SPZ_AT_INTERVAL][from][to] = 1;
            task->price[SPZ_BETWEEN_WORKS][from][to] = task->price[SPZ_BETWEEN_MOVEMENTS][from][to] = CONCERT_BANNED;
        }
}

static spz_status tell_interval(ConcertPlan *plan, const int *seatings, spz_other_plan *out)
{
    spz_changeover *change = arena_take(&plan->season->arena, 1, sizeof *change);
    spz_status status = change ? list_movements(plan, seatings, out) : SPZ_NO_MEMORY;
    for (size_t i = 1; status == SPZ_OK && i < plan->task.count; i++)
        if (seatings[i] != seatings[i - 1]) {
            status = plan_tell_change(plan, seatings, i, seatings[i - 1], change);
            out->change = change;
        }
    return status;
}

static spz_status find_at_interval(ConcertPlan *plan, int *seatings, const spz_other_plan *unchanged, spz_other_plan *out)
{
    ConcertTask task;
    ConcertChoice choice;
    bool possible;
    set_interval(plan, &task);
    spz_status status = concert_choose(&task, 1, seatings, &choice, &possible);
    if (status != SPZ_OK || !possible || choice.changes == 0)
        return status;
    choice.price = allowed_prices(plan, seatings);
    if (unchanged->possible && points(choice.loss + offered_least) > unchanged->points)
        return SPZ_OK;
    fill(out, &choice);
    return tell_interval(plan, seatings, out);
}

/* The same task without prices and bans between works and at the interval; between movements the house's word holds. */
static void set_free(const ConcertPlan *plan, ConcertTask *task)
{
    *task = plan->task;
    for (int from = 0; from < task->seatings; from++)
        for (int to = 0; to < task->seatings; to++) {
            task->price[SPZ_AT_INTERVAL][from][to] = task->price[SPZ_BETWEEN_WORKS][from][to] = 0;
            if (plan->rules.allowed[SPZ_BETWEEN_MOVEMENTS])
                task->price[SPZ_BETWEEN_MOVEMENTS][from][to] = 0;
        }
}

static spz_other_change tell_change(const ConcertPlan *plan, size_t step, const int *seatings)
{
    const PlanStep *source = &plan->sources[step];
    Carried carried = changeover_carried(plan_layout_before(plan, seatings, step), plan_layout(plan, seatings, step), &plan->rules);
    Hundredths price = plan->task.price[plan->steps[step].gap][seatings[step - 1]][seatings[step]];
    bool allowed = price < CONCERT_BANNED;
    return (spz_other_change){.gap = plan->steps[step].gap, .movement = source->movement, .after = title_of(plan, plan->sources[step - 1].work),
                              .before = title_of(plan, source->work), .to = plan->hall->names[seatings[step]], .minutes = carried.minutes,
                              .price = allowed ? points(price) : 0, .allowed = allowed};
}

static spz_status list_changes(ConcertPlan *plan, const int *seatings, spz_other_plan *out)
{
    spz_other_change *list = arena_take(&plan->season->arena, (size_t)out->changes + 1, sizeof *list);
    if (!list)
        return SPZ_NO_MEMORY;
    for (size_t i = 1; i < plan->task.count; i++)
        if (seatings[i] != seatings[i - 1])
            list[out->list_count++] = tell_change(plan, i, seatings);
    out->list = list;
    return SPZ_OK;
}

static spz_status find_more(ConcertPlan *plan, int more, int *seatings, spz_other_plan *out)
{
    ConcertTask task;
    ConcertChoice choice;
    bool possible;
    set_free(plan, &task);
    spz_status status = concert_choose(&task, plan->choice.changes + more, seatings, &choice, &possible);
    if (status != SPZ_OK || !possible || choice.loss + offered_least > plan->choice.loss)
        return status;
    choice.price = allowed_prices(plan, seatings);
    fill(out, &choice);
    return list_changes(plan, seatings, out);
}

static spz_status find_other_order(ConcertPlan *plan, spz_other_plan *out)
{
    OtherOrder order;
    spz_status status = orders_find(&plan->task, plan->works, plan->draft->row->works.count, &plan->choice, &order);
    if (status != SPZ_OK || !order.found)
        return status;
    const char **titles = arena_take(&plan->season->arena, order.count, sizeof *titles);
    if (!titles)
        return SPZ_NO_MEMORY;
    fill(out, &order.choice);
    for (size_t i = 0; i < order.count; i++)
        titles[i] = title_of(plan, order.works[i]);
    out->order = titles;
    out->order_count = order.count;
    return SPZ_OK;
}

spz_status plan_alternatives(ConcertPlan *plan, spz_planned_concert *out)
{
    int *seatings = arena_take(&plan->season->arena, plan->task.count, sizeof *seatings);
    spz_status status = seatings ? find_unchanged(plan, seatings, &out->unchanged) : SPZ_NO_MEMORY;
    if (status == SPZ_OK)
        status = find_at_interval(plan, seatings, &out->unchanged, &out->at_interval);
    if (status == SPZ_OK)
        status = find_more(plan, 1, seatings, &out->one_more);
    if (status == SPZ_OK && !out->one_more.possible)
        status = find_more(plan, 2, seatings, &out->two_more);
    return status == SPZ_OK ? find_other_order(plan, &out->other_order) : status;
}
