#include "advice/advice_order.h"
#include <stdlib.h>
#include <string.h>

static bool has_span(const Advice *advice)
{
    return advice->kind != ADVICE_DIVIDE && advice->kind != ADVICE_UNISON && advice->to > advice->from;
}

/* Whether `a` keeps its mark rather than `b`; of equals the one that stands first. */
static bool goes_before(const Advice *a, const Advice *b)
{
    bool coupled = a->kind == ADVICE_WITH, other = b->kind == ADVICE_WITH;
    Ticks length = a->to - a->from, other_length = b->to - b->from;
    if (coupled != other)
        return other;
    if (length != other_length)
        return length > other_length;
    if (a->passage->strength > b->passage->strength || a->passage->strength < b->passage->strength)
        return a->passage->strength > b->passage->strength;
    return a < b;
}

/* The next of a group's items that is neither taken nor struck; NULL when all are settled. */
static Advice *next_best(Advice *items, size_t count, const bool *settled)
{
    Advice *best = NULL;
    for (size_t i = 0; i < count; i++)
        if (!settled[i] && has_span(&items[i]) && (!best || goes_before(&items[i], best)))
            best = &items[i];
    return best;
}

/* What the one that is kept leaves of the others. */
static void clear_way(const Advice *kept, Advice *items, size_t count, bool *settled, bool *struck)
{
    for (size_t i = 0; i < count; i++) {
        Advice *other = &items[i];
        if (settled[i] || !has_span(other) || other->from >= kept->to || kept->from >= other->to)
            continue;
        if (other->from < kept->from)
            other->to = kept->from;
        else
            settled[i] = struck[i] = true;
    }
}

static void settle_group(Advice *items, size_t count, bool *settled, bool *struck)
{
    Advice *best;
    while ((best = next_best(items, count, settled)) != NULL) {
        settled[best - items] = true;
        clear_way(best, items, count, settled, struck);
    }
}

bool advice_settle(AdviceList *list)
{
    size_t count = list->items.count, kept = 0;
    bool *marks = memory_resize(NULL, 2 * count + 1, sizeof *marks);
    if (!marks)
        return false;
    memset(marks, 0, (2 * count + 1) * sizeof *marks);
    for (size_t first = 0, end; first < count; first = end) {
        for (end = first; end < count && list->items.at[end].group == list->items.at[first].group;)
            end++;
        settle_group(list->items.at + first, end - first, marks + first, marks + count + first);
    }
    for (size_t i = 0; i < count; i++)
        if (!marks[count + i])
            list->items.at[kept++] = list->items.at[i];
    list->items.count = kept;
    memory_free(marks);
    return true;
}
