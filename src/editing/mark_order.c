#include "editing/mark_order.h"
#include "support/memory.h"
#include <stdlib.h>

static bool has_span(const Advice *advice)
{
    return advice->kind != ADVICE_DIVIDE && advice->kind != ADVICE_UNISON && advice->to > advice->from;
}

/* Items with a span by group, and in each by who is signed first; of equals the one that stands first. */
static int by_right(const void *a, const void *b)
{
    const Advice *one = *(const Advice *const *)a, *two = *(const Advice *const *)b;
    bool coupled = one->kind == ADVICE_WITH, other = two->kind == ADVICE_WITH;
    Ticks length = one->to - one->from, other_length = two->to - two->from;
    if (one->group != two->group)
        return one->group < two->group ? -1 : 1;
    if (coupled != other)
        return other ? -1 : 1;
    if (length != other_length)
        return length > other_length ? -1 : 1;
    if (one->passage->strength > two->passage->strength || one->passage->strength < two->passage->strength)
        return one->passage->strength > two->passage->strength ? -1 : 1;
    return one < two ? -1 : one > two;
}

static bool is_nested(const Advice *inner, const Advice *outer)
{
    return outer->from <= inner->from && inner->to <= outer->to && spz_weight_of(outer->passage->strength) >= spz_weight_of(inner->passage->strength);
}

/* What those who go before it leave to `advice`. */
static void sign(const Advice *first, const Advice *const *before, size_t count, const Advice *advice, Signing *signs)
{
    Signing *own = &signs[advice - first];
    own->signed_to = advice->to;
    for (size_t i = 0; i < count; i++) {
        const Advice *other = before[i];
        Ticks end = signs[other - first].signed_to;
        own->dropped = own->dropped || is_nested(advice, other);
        if (other->from < own->signed_to && advice->from < end)
            own->signed_to = other->from > advice->from ? other->from : advice->from;
    }
}

/* A passage of which one side stays keeps all of them. */
static void keep_whole_passages(const AdviceList *list, Signing *signs)
{
    for (size_t i = 0; i < list->items.count; i++) {
        const Advice *advice = &list->items.at[i];
        for (size_t k = 0; k < list->items.count && signs[i].dropped; k++)
            signs[i].dropped = list->items.at[k].passage != advice->passage || signs[k].dropped || !has_span(&list->items.at[k]);
    }
}

Signing *mark_order(const AdviceList *list)
{
    size_t count = list->items.count, spans = 0;
    Signing *signs = memory_resize(NULL, count + 1, sizeof *signs);
    const Advice **order = memory_resize(NULL, count + 1, sizeof *order);
    for (size_t i = 0; signs && order && i < count; i++) {
        signs[i] = (Signing){false, list->items.at[i].from};
        if (has_span(&list->items.at[i]))
            order[spans++] = &list->items.at[i];
    }
    if (spans)
        qsort(order, spans, sizeof *order, by_right);
    for (size_t i = 0, first = 0; i < spans; i++) {
        first = order[i]->group == order[first]->group ? first : i;
        sign(list->items.at, order + first, i - first, order[i], signs);
    }
    if (signs && order)
        keep_whole_passages(list, signs);
    memory_free(order);
    if (!order) {
        memory_free(signs);
        return NULL;
    }
    return signs;
}
