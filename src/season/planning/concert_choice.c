#include "season/planning/concert_choice.h"
#include "support/memory.h"

/* What is still to come from a step on, in the order in which plans are compared. */
typedef struct Ahead {
    Hundredths total;
    int changes, unusual;
    int next; /* seating of the step after */
} Ahead;

/* One cell for each step, number of changes left, and seating. Without a limit there is one layer. */
typedef struct Grid {
    const ConcertTask *task;
    int most, layers;
    Ahead *cells;
} Grid;

static Ahead *cell(const Grid *grid, size_t step, int left, int seating)
{
    size_t layer = step * (size_t)grid->layers + (size_t)left;
    return &grid->cells[layer * CONCERT_SEATINGS + (size_t)seating];
}

static bool is_open(const ConcertStep *step, int seating)
{
    return step->open >> seating & 1u;
}

static int compare_ahead(const Ahead *a, const Ahead *b)
{
    if (a->total != b->total)
        return a->total < b->total ? -1 : 1;
    if (a->changes != b->changes)
        return a->changes - b->changes;
    return a->unusual - b->unusual;
}

/* The way on from `seating` over the gap before `step` into `next`; false when there is none. */
static bool step_into(const Grid *grid, size_t step, int left, int seating, int next, Ahead *out)
{
    const ConcertTask *task = grid->task;
    spz_gap gap = task->steps[step].gap;
    bool moved = seating >= 0 && next != seating, counted = moved && gap != SPZ_BEFORE_CONCERT;
    Hundredths price = moved ? task->price[gap][seating][next] : 0;
    if (price >= CONCERT_BANNED || (counted && grid->most >= 0 && left == 0))
        return false;
    int after = grid->most >= 0 && counted ? left - 1 : left;
    *out = *cell(grid, step, after, next);
    out->total += price;
    out->changes += counted;
    out->next = next;
    return out->total < CONCERT_BANNED;
}

/* The best seating of `step` when the one before it is `seating`; of equals the first in the list. */
static Ahead best_way(const Grid *grid, size_t step, int left, int seating)
{
    Ahead best = {.total = CONCERT_BANNED, .next = -1}, way;
    for (int next = 0; next < grid->task->seatings; next++)
        if (step_into(grid, step, left, seating, next, &way) && (best.next < 0 || compare_ahead(&way, &best) < 0))
            best = way;
    return best;
}

static void fill_cell(const Grid *grid, size_t step, int left, int seating)
{
    const ConcertTask *task = grid->task;
    Ahead ahead = {.next = -1};
    if (!is_open(&task->steps[step], seating)) {
        ahead.total = CONCERT_BANNED;
    } else {
        if (step + 1 < task->count)
            ahead = best_way(grid, step + 1, left, seating);
        ahead.total += task->steps[step].loss[seating];
        ahead.unusual += seating != task->usual;
    }
    if (ahead.total > CONCERT_BANNED)
        ahead.total = CONCERT_BANNED;
    *cell(grid, step, left, seating) = ahead;
}

static void fill(const Grid *grid)
{
    for (size_t step = grid->task->count; step-- > 0;)
        for (int left = 0; left < grid->layers; left++)
            for (int seating = 0; seating < grid->task->seatings; seating++)
                fill_cell(grid, step, left, seating);
}

/* Follows the best way from the stage as it stands before the concert. */
static bool follow(const Grid *grid, int *seatings)
{
    const ConcertTask *task = grid->task;
    int left = grid->layers - 1, before = task->usual;
    for (size_t step = 0; step < task->count; step++) {
        Ahead way = best_way(grid, step, left, before);
        if (way.next < 0)
            return false;
        bool counted = before >= 0 && way.next != before && task->steps[step].gap != SPZ_BEFORE_CONCERT;
        left -= grid->most >= 0 && counted;
        seatings[step] = before = way.next;
    }
    return true;
}

spz_status concert_choose(const ConcertTask *task, int most, int *seatings, ConcertChoice *choice, bool *possible)
{
    if (most > (int)task->count)
        most = (int)task->count;
    Grid grid = {.task = task, .most = most, .layers = most < 0 ? 1 : most + 1};
    *possible = false;
    grid.cells = memory_resize(NULL, (task->count + 1) * (size_t)grid.layers * CONCERT_SEATINGS, sizeof *grid.cells);
    if (!grid.cells)
        return SPZ_NO_MEMORY;
    fill(&grid);
    if (follow(&grid, seatings))
        *possible = concert_cost(task, seatings, choice);
    memory_free(grid.cells);
    return SPZ_OK;
}

bool concert_cost(const ConcertTask *task, const int *seatings, ConcertChoice *choice)
{
    int before = task->usual;
    *choice = (ConcertChoice){0};
    for (size_t i = 0; i < task->count; i++) {
        const ConcertStep *step = &task->steps[i];
        bool moved = before >= 0 && seatings[i] != before;
        Hundredths price = moved ? task->price[step->gap][before][seatings[i]] : 0;
        if (!is_open(step, seatings[i]) || price >= CONCERT_BANNED)
            return false;
        choice->loss += step->loss[seatings[i]];
        choice->price += price;
        choice->changes += moved && step->gap != SPZ_BEFORE_CONCERT;
        choice->unusual += seatings[i] != task->usual;
        before = seatings[i];
    }
    return true;
}

int concert_compare(const ConcertChoice *a, const ConcertChoice *b)
{
    Ahead left = {a->loss + a->price, a->changes, a->unusual, 0}, right = {b->loss + b->price, b->changes, b->unusual, 0};
    return compare_ahead(&left, &right);
}
