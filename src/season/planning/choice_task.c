/* From the results of a concert's scores to the task of choosing. */
#include "season/planning/concert_plan.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

enum { SEATINGS_TEXT = 400 };

static size_t count_steps(const ConcertPlan *plan, size_t work)
{
    const WorkDraft *draft = &plan->draft->works[work];
    size_t count = 0;
    for (size_t i = 0; i < draft->job_count; i++)
        count += plan->season->jobs.list.at[draft->jobs[i]].result->movements.count;
    return count ? count : 1;
}

static spz_status take_room(ConcertPlan *plan)
{
    Arena *arena = &plan->season->arena;
    size_t works = plan->draft->row->works.count, steps = 0;
    for (size_t i = 0; i < works; i++)
        steps += count_steps(plan, i);
    plan->steps = arena_take(arena, steps, sizeof *plan->steps);
    plan->sources = arena_take(arena, steps, sizeof *plan->sources);
    plan->seatings = arena_take(arena, steps, sizeof *plan->seatings);
    plan->works = arena_take(arena, works, sizeof *plan->works);
    return plan->steps && plan->sources && plan->seatings && plan->works ? SPZ_OK : SPZ_NO_MEMORY;
}

const SeatingResult *plan_seat(const MovementResult *movement, const char *name)
{
    for (size_t i = 0; i < movement->seat_count; i++)
        if (strcmp(movement->seats[i].name, name) == 0)
            return &movement->seats[i];
    return NULL;
}

/* How far each seating of the hall falls short of the best of them. */
static void set_losses(const Hall *hall, const MovementResult *movement, ConcertStep *step)
{
    const SeatingResult *best = NULL;
    if (movement->seat_count == 0)
        return;
    for (int i = 0; i < hall->seatings; i++) {
        const SeatingResult *seat = plan_seat(movement, hall->names[i]);
        if (seat && (!best || seat->points > best->points))
            best = seat;
    }
    for (int i = 0; i < hall->seatings; i++) {
        const SeatingResult *seat = plan_seat(movement, hall->names[i]);
        if (seat)
            step->loss[i] = best->points - seat->points;
        else
            step->open &= ~(1u << i);
    }
}

static void add_step(ConcertPlan *plan, size_t work, const PlanStep *source, uint32_t open)
{
    WorkSteps *steps = &plan->works[work];
    bool first = steps->count == 0;
    ConcertStep *step = &plan->steps[plan->task.count];
    step->gap = !first ? SPZ_BETWEEN_MOVEMENTS
                : work == 0 ? SPZ_BEFORE_CONCERT
                : plan->works[work - 1].interval_after ? SPZ_AT_INTERVAL : SPZ_BETWEEN_WORKS;
    step->open = open;
    if (source->result)
        set_losses(plan->hall, source->result, step);
    plan->sources[plan->task.count++] = *source;
    steps->count++;
}

/* Nobody moves two orchestras for one movement of a work. */
static bool asks_for_two(const ConcertPlan *plan, const WorkSteps *work)
{
    bool two = false;
    for (size_t i = work->first; i < work->first + work->count; i++)
        two = two || (plan->sources[i].result && plan->sources[i].result->two_orchestras);
    return two;
}

static bool has_strings(const ConcertPlan *plan, const WorkSteps *work)
{
    bool strings = false;
    for (size_t i = work->first; i < work->first + work->count; i++)
        strings = strings || !plan->sources[i].result || (plan->sources[i].result->strings && !plan->sources[i].chamber);
    return strings;
}

static void seat_work(ConcertPlan *plan, const WorkSteps *work, bool two)
{
    for (size_t i = work->first; i < work->first + work->count; i++)
        plan->sources[i].two_orchestras = two;
}

/* Works without strings, and chamber music, leave the chairs as they stand, or as the first work with strings after them in their half wants them. */
static void seat_orchestras(ConcertPlan *plan)
{
    size_t count = plan->draft->row->works.count;
    for (size_t first = 0, end; first < count; first = end) {
        bool two = false, known = false;
        for (end = first; end < count && (end == first || !plan->works[end - 1].interval_after); end++)
            if (!known && has_strings(plan, &plan->works[end])) {
                two = asks_for_two(plan, &plan->works[end]);
                known = true;
            }
        if (!known && first)
            two = plan->sources[plan->works[first - 1].first].two_orchestras;
        for (size_t i = first; i < end; i++) {
            two = has_strings(plan, &plan->works[i]) ? asks_for_two(plan, &plan->works[i]) : two;
            seat_work(plan, &plan->works[i], two);
        }
    }
}

static bool is_chamber(const ConcertPlan *plan, const WorkSteps *work)
{
    for (size_t i = work->first; i < work->first + work->count; i++)
        if (!plan->sources[i].result || !plan->sources[i].result->chamber)
            return false;
    return true;
}

/* Chamber music has the seating that gives up least in all its movements, of those that the row leaves open; whatever the sections sit in, it gives up that. */
static void seat_chamber(ConcertPlan *plan, const WorkSteps *work, uint32_t open)
{
    int own = 0;
    double least = INFINITY;
    for (int seating = 0; seating < plan->hall->seatings; seating++) {
        double sum = open & (uint32_t)1 << seating ? 0 : INFINITY;
        for (size_t i = work->first; i < work->first + work->count; i++)
            sum += (double)plan->steps[i].loss[seating];
        own = sum < least ? seating : own;
        least = fmin(sum, least);
    }
    for (size_t i = work->first; i < work->first + work->count; i++) {
        ConcertStep *step = &plan->steps[i];
        Hundredths loss = step->loss[own];
        for (int seating = 0; seating < plan->hall->seatings; seating++)
            step->loss[seating] = loss;
        step->open = ~0u;
        plan->sources[i].chamber = true;
        plan->sources[i].own = own;
    }
}

static void add_work(ConcertPlan *plan, size_t work, uint32_t open)
{
    const WorkDraft *draft = &plan->draft->works[work];
    size_t movement = 0;
    plan->works[work] = (WorkSteps){plan->task.count, 0, draft->row->interval_after};
    for (size_t i = 0; i < draft->job_count; i++) {
        const Job *job = &plan->season->jobs.list.at[draft->jobs[i]];
        for (size_t m = 0; m < job->result->movements.count; m++)
            add_step(plan, work, &(PlanStep){.work = work, .movement = movement++, .job = job, .result = &job->result->movements.at[m], .number = m + 1}, open);
    }
    if (movement == 0)
        add_step(plan, work, &(PlanStep){.work = work}, open);
    else if (is_chamber(plan, &plan->works[work]))
        seat_chamber(plan, &plan->works[work], open);
}

/* ''violins opposed, cellos inside left'; ...' */
static const char *seatings_in_words(const Hall *hall, char *text, size_t size)
{
    size_t used = 0;
    text[0] = '\0';
    for (int i = 0; i < hall->seatings && used < size; i++)
        used += (size_t)snprintf(text + used, size - used, "%s'%s'", i ? "; " : "", hall->names[i]);
    return text;
}

/* The seatings that the row leaves open; one that the hall doesn't have is told, and fixes nothing. */
static uint32_t open_seatings(ConcertPlan *plan, const TableWork *row, const spz_sink *sink)
{
    char names[SEATINGS_TEXT];
    uint32_t meant = *row->fixed ? hall_meant(plan->hall, row->fixed) : ~0u;
    if (meant)
        return meant;
    table_tell(&plan->season->table, sink, &(spz_table_note){.line = row->line, .fault = SPZ_FAULT_SEATING_UNKNOWN, .name = row->fixed,
                                                             .other = seatings_in_words(plan->hall, names, sizeof names)});
    return ~0u;
}

spz_status plan_set_task(ConcertPlan *plan, const spz_sink *sink)
{
    spz_status status = take_room(plan);
    if (status != SPZ_OK)
        return status;
    plan->task.steps = plan->steps;
    plan->task.seatings = plan->hall->seatings;
    plan->task.usual = plan->hall->usual;
    for (size_t i = 0; i < plan->draft->row->works.count; i++)
        add_work(plan, i, open_seatings(plan, &plan->draft->row->works.at[i], sink));
    seat_orchestras(plan);
    change_rules_read(plan->hall->settings, &plan->rules);
    changeover_prices(plan->hall, &plan->rules, &plan->task);
    return SPZ_OK;
}

int plan_seating_before(const ConcertPlan *plan, const int *seatings, size_t step)
{
    if (!step && plan->repeats)
        return seatings[plan->task.count - 1];
    return step ? seatings[step - 1] : plan->task.usual;
}

const spz_plan *plan_layout(const ConcertPlan *plan, const int *seatings, size_t step)
{
    return hall_plan(plan->hall, seatings[step], plan->sources[step].two_orchestras);
}

const spz_plan *plan_layout_before(const ConcertPlan *plan, const int *seatings, size_t step)
{
    if (!step && plan->repeats)
        return plan_layout(plan, seatings, plan->task.count - 1);
    return step ? plan_layout(plan, seatings, step - 1) : plan->hall->plans[plan->task.usual];
}
