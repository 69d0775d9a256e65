/* What else could have been chosen: no change at all, one change more, another order of the works. */
#include "season/planning/concert_plan.h"
#include "support/buffer.h"
#include <math.h>

static double points(Hundredths hundredths)
{
    return (double)hundredths / 100;
}

static const char *title_of(const ConcertPlan *plan, size_t work)
{
    return plan->draft->row->works.at[work].title;
}

static const char *keep(ConcertPlan *plan, Buffer *text)
{
    const char *kept = buffer_failed(text) ? NULL : arena_string(&plan->season->arena, text->text ? text->text : "");
    buffer_free(text);
    return kept;
}

static void fill(spz_other_plan *out, const ConcertChoice *choice, const char *words)
{
    *out = (spz_other_plan){true, points(choice->loss), points(choice->price), choice->changes, words};
}

static spz_status find_unchanged(ConcertPlan *plan, int *seatings, spz_other_plan *out)
{
    ConcertChoice choice;
    bool possible;
    spz_status status = concert_choose(&plan->task, 0, seatings, &choice, &possible);
    out->words = "the fixed seatings ask for a change";
    if (status == SPZ_OK && possible)
        fill(out, &choice, plan->hall->names[seatings[0]]);
    return status;
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

/* One decimal with a point, whatever the user's language; `value` is not negative. */
static void add_tenths(Buffer *text, double value)
{
    long tenths = lround(value * 10);
    buffer_printf(text, "%ld.%ld", tenths / 10, tenths % 10);
}

static void add_price(Buffer *text, const ConcertPlan *plan, size_t step, int before, int after, double minutes)
{
    Hundredths price = plan->task.price[plan->steps[step].gap][before][after];
    buffer_puts(text, " (");
    add_tenths(text, minutes);
    buffer_puts(text, price < CONCERT_BANNED ? " minutes, at a price of " : " minutes, which the house doesn't allow there)");
    if (price >= CONCERT_BANNED)
        return;
    add_tenths(text, points(price));
    buffer_puts(text, " points)");
}

static void add_change(Buffer *text, const ConcertPlan *plan, size_t step, const int *seatings)
{
    int before = seatings[step - 1], after = seatings[step];
    const PlanStep *source = &plan->sources[step];
    Carried carried = changeover_carried(plan_layout_before(plan, seatings, step), plan_layout(plan, seatings, step), &plan->rules);
    if (source->movement)
        buffer_printf(text, "before movement %zu of '%s'", source->movement + 1, title_of(plan, source->work));
    else
        buffer_printf(text, "between '%s' and '%s'", title_of(plan, source->work - 1), title_of(plan, source->work));
    buffer_printf(text, "%s to %s", plan->steps[step].gap == SPZ_AT_INTERVAL ? ", at the interval," : "", plan->hall->names[after]);
    add_price(text, plan, step, before, after, carried.minutes);
}

/* 'between 'A' and 'B' to violins opposed, ... (3.5 minutes, at a price of 13.5 points)' for each change. */
static const char *changes_in_words(ConcertPlan *plan, const int *seatings)
{
    Buffer text;
    buffer_init(&text);
    for (size_t i = 1; i < plan->task.count; i++) {
        if (seatings[i] == seatings[i - 1])
            continue;
        buffer_puts(&text, text.length ? "; " : "");
        add_change(&text, plan, i, seatings);
    }
    return keep(plan, &text);
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

static spz_status find_more(ConcertPlan *plan, int more, int *seatings, spz_other_plan *out)
{
    ConcertTask task;
    ConcertChoice choice;
    bool possible;
    set_free(plan, &task);
    spz_status status = concert_choose(&task, plan->choice.changes + more, seatings, &choice, &possible);
    if (status != SPZ_OK || !possible || choice.loss >= plan->choice.loss)
        return status;
    choice.price = allowed_prices(plan, seatings);
    fill(out, &choice, changes_in_words(plan, seatings));
    return out->words ? SPZ_OK : SPZ_NO_MEMORY;
}

static spz_status find_other_order(ConcertPlan *plan, spz_other_plan *out)
{
    OtherOrder order;
    Buffer text;
    spz_status status = orders_find(&plan->task, plan->works, plan->draft->row->works.count, &plan->choice, &order);
    if (status != SPZ_OK || !order.found)
        return status;
    buffer_init(&text);
    for (size_t i = 0; i < order.count; i++)
        buffer_printf(&text, "%s'%s'", i == 0 ? "" : i + 1 < order.count ? ", " : " and then ", title_of(plan, order.works[i]));
    fill(out, &order.choice, keep(plan, &text));
    return out->words ? SPZ_OK : SPZ_NO_MEMORY;
}

spz_status plan_alternatives(ConcertPlan *plan, spz_planned_concert *out)
{
    int *seatings = arena_take(&plan->season->arena, plan->task.count, sizeof *seatings);
    spz_status status = seatings ? find_unchanged(plan, seatings, &out->unchanged) : SPZ_NO_MEMORY;
    if (status == SPZ_OK)
        status = find_more(plan, 1, seatings, &out->one_more);
    if (status == SPZ_OK && !out->one_more.possible)
        status = find_more(plan, 2, seatings, &out->two_more);
    return status == SPZ_OK ? find_other_order(plan, &out->other_order) : status;
}
