/* One concert: its task chosen, and the choice told in the terms of season.h. */
#include "season/planning/conflict.h"
#include "support/message.h"
#include <math.h>
#include <string.h>

static double points(Hundredths hundredths)
{
    return (double)hundredths / 100;
}

/* The first of the hall's seatings that gives up nothing. */
static const char *best_of(const ConcertPlan *plan, size_t step)
{
    for (int i = 0; i < plan->hall->seatings; i++)
        if (plan->steps[step].loss[i] == 0 && plan_seat(plan->sources[step].result, plan->hall->names[i]))
            return plan->hall->names[i];
    return NULL;
}

void plan_tell_movement(const ConcertPlan *plan, const int *seatings, size_t step, spz_planned_movement *out)
{
    const PlanStep *source = &plan->sources[step];
    const MovementResult *result = source->result;
    const char *seating = plan->hall->names[source->chamber ? source->own : seatings[step]];
    Hundredths loss = plan->steps[step].loss[seatings[step]];
    *out = (spz_planned_movement){.file = source->job->path, .title = result->title, .number = source->number, .bars = result->bars,
                                  .year = result->year, .seconds = (double)result->tenths / 10,
                                  .judged = result->seat_count > 0, .statement = result->statement,
                                  .seating = seating, .points = points(loss), .thirds = result->thirds};
    if (out->judged)
        out->best = best_of(plan, step);
    const SeatingResult *seat = loss > 0 ? plan_seat(result, seating) : NULL;
    out->losses = seat ? seat->losses : NULL;
    out->loss_count = seat ? seat->loss_count : 0;
    out->lost_bars = seat ? seat->lost_bars : 0;
    out->lost_seconds = seat ? (double)seat->lost_tenths / 10 : 0;
}

static void tell_problem(const ConcertPlan *plan, size_t work, spz_planned_work *out)
{
    const WorkDraft *draft = &plan->draft->works[work];
    if (plan->sources[plan->works[work].first].result)
        return;
    out->problem = draft->job_count ? SPZ_WORK_UNREADABLE : SPZ_WORK_WITHOUT_SCORE;
    if (draft->job_count)
        out->cause = plan->season->jobs.list.at[draft->jobs[0]].result->status;
}

/* Scores of the work that are not there or could not be read. */
static size_t scores_missing(const ConcertPlan *plan, size_t work)
{
    const WorkDraft *draft = &plan->draft->works[work];
    size_t missing = draft->missing;
    for (size_t i = 0; i < draft->job_count; i++)
        missing += plan->season->jobs.list.at[draft->jobs[i]].result->status != SPZ_OK;
    return missing;
}

static spz_status tell_work(const ConcertPlan *plan, size_t work, spz_planned_work *out)
{
    const TableWork *row = &plan->draft->row->works.at[work];
    const WorkSteps *steps = &plan->works[work];
    const PlanStep *first = &plan->sources[steps->first];
    int seating = first->chamber ? first->own : plan->seatings[steps->first];
    spz_planned_movement *movements = arena_take(&plan->season->arena, steps->count, sizeof *movements);
    if (!movements)
        return SPZ_NO_MEMORY;
    *out = (spz_planned_work){.title = row->title, .note = row->note, .soloist = row->soloist, .piano = row->piano, .podium = row->podium, .line = row->line, .year = row->year,
                              .interval_after = row->interval_after && work + 1 < plan->draft->row->works.count, .fixed = *row->fixed && hall_meant(plan->hall, row->fixed) ? row->fixed : NULL,
                              .seating = plan->hall->names[seating],
                              .order = spz_plan_order(plan->hall->plans[seating]),
                              .two_orchestras = first->two_orchestras, .chamber = first->chamber, .movements = movements};
    tell_problem(plan, work, out);
    for (size_t i = 0; i < steps->count && !out->problem; i++) {
        plan_tell_movement(plan, plan->seatings, steps->first + i, &movements[i]);
        out->points += movements[i].points;
        out->movement_count++;
    }
    out->scores_missing = scores_missing(plan, work);
    return SPZ_OK;
}

static bool has_thirds(const ConcertPlan *plan, size_t step)
{
    return plan->sources[step].result && plan->sources[step].result->thirds;
}

/* Where two orchestras come or go, the house may forbid a change or have no time for it; the works ask for it all the same. */
static void tell_limits(const ConcertPlan *plan, spz_changeover *out)
{
    out->not_allowed = !plan->rules.allowed[out->gap];
    if (!out->not_allowed && out->minutes > plan->rules.longest[out->gap])
        out->longest = plan->rules.longest[out->gap];
}

static void tell_desks(const DeskMoves *desks, const spz_plan *to, spz_changeover *out)
{
    out->desk_moves = desks->desks;
    out->struck = desks->struck;
    out->struck_count = desks->struck_count;
    out->struck_chairs = desks->struck_chairs;
    out->struck_stands = desks->struck_stands;
    out->store_chairs = desks->store_chairs;
    out->store_stands = desks->store_stands;
    out->stage_width = spz_plan_stage_width(to);
    out->stage_depth = spz_plan_stage_depth(to);
    out->stage_front = spz_plan_front(to);
}

spz_status plan_tell_change(const ConcertPlan *plan, const int *seatings, size_t step, int before, spz_changeover *out)
{
    const PlanStep *source = &plan->sources[step];
    int after = seatings[step];
    bool thirds = step > 0 && has_thirds(plan, step - 1);
    const spz_plan *from = plan_layout_before(plan, seatings, step), *to = plan_layout(plan, seatings, step);
    spz_section_move *moves = arena_take(&plan->season->arena, SPZ_SECTION_COUNT, sizeof *moves);
    DeskMoves desks = {.desks = arena_take(&plan->season->arena, spz_plan_desks(to) + 1, sizeof *desks.desks),
                       .struck = arena_take(&plan->season->arena, spz_plan_desks(from) + 1, sizeof *desks.struck)};
    if (!moves || !desks.desks || !desks.struck)
        return SPZ_NO_MEMORY;
    Carried carried = changeover_carried(from, to, &plan->rules);
    Hundredths price = plan->task.price[plan->steps[step].gap][before][after];
    const TableConcert *row = plan->draft->row;
    *out = (spz_changeover){.gap = plan->steps[step].gap, .work = source->work, .movement = source->movement,
                            .from = plan->hall->names[before], .to = plan->hall->names[after], .before = row->works.at[source->work].title,
                            .minutes = carried.minutes, .price = points(price), .chairs = carried.chairs, .stands = carried.stands,
                            .desks = (int)spz_plan_desks(to), .moves = moves, .two_before = spz_plan_is_double(from),
                            .two_after = spz_plan_is_double(to)};
    if (step > 0)
        out->after = row->works.at[plan->sources[step - 1].work].title;
    if (has_thirds(plan, step) && !thirds)
        out->violins = SPZ_VIOLINS_IN_THREE;
    else if (thirds && !has_thirds(plan, step))
        out->violins = SPZ_VIOLINS_IN_TWO_AGAIN;
    if (out->two_before == out->two_after)
        out->move_count = changeover_moves(from, to, moves);
    changeover_desks(from, to, &plan->rules, &desks);
    tell_desks(&desks, to, out);
    tell_limits(plan, out);
    return SPZ_OK;
}

/* The same works in the same seatings, in the same hall. */
static bool is_same_programme(const spz_planned_concert *a, const spz_planned_concert *b)
{
    if (a->problem || strcmp(a->hall, b->hall) != 0 || a->work_count != b->work_count)
        return false;
    for (size_t w = 0; w < a->work_count; w++) {
        const spz_planned_work *one = &a->works[w], *two = &b->works[w];
        if (strcmp(one->title, two->title) != 0 || one->movement_count != two->movement_count || one->two_orchestras != two->two_orchestras ||
            strcmp(one->seating ? one->seating : "", two->seating ? two->seating : "") != 0)
            return false;
        for (size_t m = 0; m < one->movement_count; m++)
            if (strcmp(one->movements[m].seating, two->movements[m].seating) != 0)
                return false;
    }
    return true;
}

/* The last performance before this one in the same hall, where it was of the same programme: the stage stands as it left it. */
static void tell_repeat(ConcertPlan *plan, spz_planned_concert *out)
{
    for (size_t i = plan->season->concerts.count; i > 0; i--) {
        const spz_planned_concert *earlier = &plan->season->concerts.at[i - 1];
        if (strcmp(earlier->hall, out->hall) != 0)
            continue;
        plan->repeats = out->repeats = is_same_programme(earlier, out);
        out->repeats_day[0] = earlier->year;
        out->repeats_day[1] = earlier->month;
        out->repeats_day[2] = earlier->day;
        return;
    }
}

static spz_status tell_setup(ConcertPlan *plan, spz_planned_concert *out)
{
    spz_changeover *setup = arena_take(&plan->season->arena, 1, sizeof *setup);
    tell_repeat(plan, out);
    int before = plan_seating_before(plan, plan->seatings, 0), first = plan->seatings[0];
    if (plan->repeats)
        out->price += points(plan->task.price[SPZ_BEFORE_CONCERT][before][first] -
                             (plan->task.usual < 0 ? 0 : plan->task.price[SPZ_BEFORE_CONCERT][plan->task.usual][first]));
    if (before < 0 || plan_layout(plan, plan->seatings, 0) == plan_layout_before(plan, plan->seatings, 0))
        return SPZ_OK;
    if (!setup)
        return SPZ_NO_MEMORY;
    out->setup = setup;
    return plan_tell_change(plan, plan->seatings, 0, before, setup);
}

static spz_status tell_changes(ConcertPlan *plan, spz_planned_concert *out)
{
    spz_changeover *changes = arena_take(&plan->season->arena, plan->task.count, sizeof *changes);
    spz_status status = changes ? tell_setup(plan, out) : SPZ_NO_MEMORY;
    plan->repeats = false; /* the plans that were not taken begin as any concert does */
    out->changes = changes;
    for (size_t i = 1; status == SPZ_OK && i < plan->task.count; i++) {
        if (plan_layout(plan, plan->seatings, i) == plan_layout(plan, plan->seatings, i - 1))
            continue;
        spz_changeover *change = &changes[out->change_count++];
        status = plan_tell_change(plan, plan->seatings, i, plan->seatings[i - 1], change);
        if (status == SPZ_OK)
            out->minutes += change->minutes;
    }
    return status;
}

static spz_status tell_works(const ConcertPlan *plan, spz_planned_concert *out)
{
    size_t count = plan->draft->row->works.count;
    spz_planned_work *works = arena_take(&plan->season->arena, count, sizeof *works);
    spz_status status = works ? SPZ_OK : SPZ_NO_MEMORY;
    out->works = works;
    out->work_count = count;
    for (size_t i = 0; status == SPZ_OK && i < count; i++)
        status = tell_work(plan, i, &works[i]);
    return status;
}

static const double minutes_around_work = 3; /* entrances and applause: common practice */

/* 0 where the length of a work is not known. */
static double minutes_in_all(const ConcertPlan *plan, const spz_planned_concert *concert)
{
    double minutes = concert->minutes;
    for (size_t w = 0; w < concert->work_count; w++) {
        const spz_planned_work *work = &concert->works[w];
        double seconds = 0;
        for (size_t m = 0; m < work->movement_count; m++)
            seconds += work->movements[m].seconds;
        if (seconds <= 0 || work->scores_missing)
            return 0;
        minutes += seconds / 60 + minutes_around_work + (work->interval_after ? plan->rules.longest[SPZ_AT_INTERVAL] : 0);
    }
    for (size_t i = 0; i < concert->change_count; i++) /* these go on in the interval */
        minutes -= concert->changes[i].gap == SPZ_AT_INTERVAL ? concert->changes[i].minutes : 0;
    return minutes;
}

static spz_status tell_plan(ConcertPlan *plan, spz_planned_concert *out)
{
    out->points = points(plan->choice.loss);
    out->price = points(plan->choice.price);
    spz_status status = tell_works(plan, out);
    if (status == SPZ_OK)
        status = tell_changes(plan, out);
    if (status == SPZ_OK)
        out->lasts = minutes_in_all(plan, out);
    return status == SPZ_OK ? plan_alternatives(plan, out) : status;
}

static spz_status tell_programme(spz_season *season, const TableConcert *row, spz_planned_concert *out)
{
    const char **titles = arena_take(&season->arena, row->works.count + 1, sizeof *titles);
    for (size_t i = 0; titles && i < row->works.count; i++)
        titles[i] = row->works.at[i].title;
    out->programme = titles;
    out->programme_count = titles ? row->works.count : 0;
    return titles ? SPZ_OK : SPZ_NO_MEMORY;
}

static void tell_row(const ConcertDraft *draft, spz_planned_concert *out)
{
    const TableConcert *row = draft->row;
    *out = (spz_planned_concert){.name = row->name, .hall = row->hall, .hall_settings = draft->hall->file, .hall_line = draft->hall->problem_line, .line = row->line,
                                 .year = row->date.year, .month = row->date.month, .day = row->date.day, .time = row->time,
                                 .rehearsals = row->rehearsals.at, .rehearsal_count = row->rehearsals.count, .usual_absence = draft->hall->usual_absence,
                                 .usual = draft->hall->usual_name, .usual_needs = {draft->hall->usual_needs[0], draft->hall->usual_needs[1]}};
    if (date_is_set(row->date))
        out->weekday = date_weekday(row->date);
}

/* For the list of what is not used; the message is sent by itself. */
static void note_unplanned(spz_season *season, long line, const spz_planned_concert *concert)
{
    table_tell(&season->table, NULL, &(spz_table_note){.line = line, .fault = SPZ_FAULT_CONCERT_NOT_PLANNED, .name = concert->name});
}

static void give_up(spz_season *season, spz_planned_concert *out, spz_concert_problem problem, const spz_sink *sink)
{
    static const char *const said[SPZ_CONCERT_PROBLEM_COUNT] = {
        [SPZ_CONCERT_TOO_LONG] = "it has more than 200 works",
        [SPZ_HALL_UNREADABLE] = "the settings of its hall can't be used",
        [SPZ_HALL_TOO_SMALL] = "no seating that the house allows fits on the stage of its hall",
        [SPZ_HALL_FORBIDS_ALL] = "",
    };
    spz_message place = {.severity = SPZ_ERROR, .file = season->table.path, .line = out->line};
    if (problem != SPZ_HALL_FORBIDS_ALL) /* that is told of the house, once */
        message_send(sink, &place, "the concert '%s' can't be planned: %s", out->name, said[problem]);
    out->problem = problem;
    note_unplanned(season, out->line, out);
}

/* The fixed seatings can't all be had: the two rows, what is fixed there, and what stands between them. */
static spz_status tell_conflict(const ConcertPlan *plan, const spz_sink *sink, spz_planned_concert *out)
{
    static const char *const moments[] = {[SPZ_BEFORE_CONCERT] = "before the concert", [SPZ_AT_INTERVAL] = "at the interval", [SPZ_BETWEEN_WORKS] = "between works"};
    spz_conflict *conflict = arena_take(&plan->season->arena, 1, sizeof *conflict);
    spz_status status = conflict ? conflict_find(plan, conflict) : SPZ_NO_MEMORY;
    if (status != SPZ_OK)
        return status;
    spz_message place = {.severity = SPZ_ERROR, .file = plan->season->table.path, .line = conflict->other_line};
    out->conflict = conflict;
    out->problem = SPZ_CONCERT_FIXED;
    note_unplanned(plan->season, conflict->other_line, out);
    Arena *arena = &plan->season->arena;
    const char *earlier = conflict->work ? arena_format(arena, "'%s' (line %ld) as '%s'", conflict->work, conflict->line, conflict->fixed) : "the house sits otherwise";
    const char *bound = conflict->allowed ? arena_format(arena, "gives %.1f minutes", conflict->longest) : "allows no change";
    if (!earlier || !bound)
        return SPZ_NO_MEMORY;
    message_send(sink, &place, "the concert '%s' can't be planned: '%s' is fixed as '%s', %s; the change takes %.1f minutes, and the house %s %s", out->name,
                 conflict->other_work, conflict->other_fixed, earlier, conflict->minutes, bound, moments[conflict->gap]);
    return SPZ_OK;
}

/* The plan then counts chairs for one orchestra. */
static void tell_narrow(const ConcertPlan *plan, const spz_sink *sink)
{
    for (size_t i = 0; i < plan->draft->row->works.count; i++) {
        const TableWork *row = &plan->draft->row->works.at[i];
        size_t step = plan->works[i].first;
        spz_message place = {.severity = SPZ_DOUBT, .file = plan->season->table.path, .line = row->line};
        if (plan->sources[step].two_orchestras && !plan->hall->doubles[plan->seatings[step]])
            message_send(sink, &place, "the stage of this hall doesn't hold the two orchestras of '%s'; chairs are counted for one", row->title);
    }
}

spz_status season_plan_concert(spz_season *season, const ConcertDraft *draft, const spz_sink *sink, spz_planned_concert *out)
{
    ConcertPlan plan = {.season = season, .draft = draft, .hall = draft->hall};
    tell_row(draft, out);
    spz_status status = tell_programme(season, draft->row, out);
    if (status != SPZ_OK)
        return status;
    if (draft->hall->problem || draft->row->works.count > PLAN_WORKS_MOST) {
        give_up(season, out, draft->hall->problem ? draft->hall->problem : SPZ_CONCERT_TOO_LONG, sink);
        return SPZ_OK;
    }
    status = plan_set_task(&plan, sink);
    if (status == SPZ_OK)
        status = concert_choose(&plan.task, CONCERT_ANY_CHANGES, plan.seatings, &plan.choice, &plan.possible);
    if (status == SPZ_OK && !plan.possible)
        return tell_conflict(&plan, sink, out);
    if (status != SPZ_OK || !plan.possible)
        return status;
    tell_narrow(&plan, sink);
    return tell_plan(&plan, out);
}
