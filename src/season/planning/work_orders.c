#include "season/planning/work_orders.h"
#include "support/memory.h"
#include <string.h>

typedef struct Search {
    const ConcertTask *task;
    const WorkSteps *works;
    size_t work_count;
    const ConcertChoice *present;
    ConcertStep *steps; /* in the order under trial */
    int *seatings;
    size_t first, count;             /* the half */
    size_t order[ORDERS_WORKS_MOST]; /* works of the half */
    size_t moved;                    /* how many of them stand elsewhere */
    OtherOrder *best;
    size_t best_moved;
} Search;

/* Puts the steps of all works in the order under trial; the gaps between works stay where they were. */
static void lay_out(Search *search)
{
    size_t used = 0;
    for (size_t i = 0; i < search->work_count; i++) {
        bool inside = i >= search->first && i < search->first + search->count;
        const WorkSteps *work = &search->works[inside ? search->order[i - search->first] : i];
        memcpy(&search->steps[used], &search->task->steps[work->first], work->count * sizeof *search->steps);
        search->steps[used].gap = search->task->steps[search->works[i].first].gap;
        used += work->count;
    }
}

static bool is_better(const Search *search, const ConcertChoice *choice)
{
    if (!search->best->found)
        return true;
    const ConcertChoice *best = &search->best->choice;
    if (choice->changes != best->changes)
        return choice->changes < best->changes;
    int order = concert_compare(choice, best);
    return order < 0 || (order == 0 && search->moved < search->best_moved);
}

static spz_status try_order(Search *search)
{
    ConcertTask task = *search->task;
    ConcertChoice choice;
    bool possible;
    search->moved = 0;
    for (size_t i = 0; i < search->count; i++)
        search->moved += search->order[i] != search->first + i;
    if (search->moved == 0)
        return SPZ_OK;
    lay_out(search);
    task.steps = search->steps;
    spz_status status = concert_choose(&task, CONCERT_ANY_CHANGES, search->seatings, &choice, &possible);
    if (status != SPZ_OK || !possible || choice.changes >= search->present->changes ||
        choice.loss + choice.price > search->present->loss + search->present->price || !is_better(search, &choice))
        return status;
    search->best->found = true;
    search->best->first = search->first;
    search->best->count = search->count;
    search->best->choice = choice;
    search->best_moved = search->moved;
    memcpy(search->best->works, search->order, sizeof search->order);
    return SPZ_OK;
}

/* Next order in lexicographic succession (Knuth, The Art of Computer Programming 4A, 7.2.1.2, algorithm L); false after the last. */
static bool next_order(size_t *order, size_t count)
{
    size_t i = count, j = count - 1;
    while (i > 1 && order[i - 2] >= order[i - 1])
        i--;
    if (i <= 1)
        return false;
    while (order[i - 2] >= order[j])
        j--;
    size_t kept = order[i - 2];
    order[i - 2] = order[j];
    order[j] = kept;
    for (size_t left = i - 1, right = count - 1; left < right; left++, right--) {
        kept = order[left];
        order[left] = order[right];
        order[right] = kept;
    }
    return true;
}

static spz_status try_half(Search *search, size_t first, size_t end)
{
    spz_status status = SPZ_OK;
    search->first = first;
    search->count = end - first;
    if (search->count < 2 || search->count > ORDERS_WORKS_MOST)
        return status;
    for (size_t i = 0; i < search->count; i++)
        search->order[i] = first + i;
    do
        status = try_order(search);
    while (status == SPZ_OK && next_order(search->order, search->count));
    return status;
}

static spz_status try_halves(Search *search)
{
    spz_status status = SPZ_OK;
    for (size_t first = 0, end; status == SPZ_OK && first < search->work_count; first = end) {
        for (end = first + 1; end < search->work_count && !search->works[end - 1].interval_after;)
            end++;
        status = try_half(search, first, end);
    }
    return status;
}

spz_status orders_find(const ConcertTask *task, const WorkSteps *works, size_t work_count, const ConcertChoice *present, OtherOrder *out)
{
    Search search = {.task = task, .works = works, .work_count = work_count, .present = present, .best = out};
    *out = (OtherOrder){.found = false};
    if (present->changes == 0)
        return SPZ_OK;
    search.steps = memory_resize(NULL, task->count, sizeof *search.steps);
    search.seatings = memory_resize(NULL, task->count, sizeof *search.seatings);
    spz_status status = search.steps && search.seatings ? try_halves(&search) : SPZ_NO_MEMORY;
    memory_free(search.steps);
    memory_free(search.seatings);
    return status;
}
