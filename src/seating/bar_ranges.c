#include "seating/bar_ranges.h"
#include <stdlib.h>

static int by_bar(const void *a, const void *b)
{
    const BarSpan *one = a, *two = b;
    if (one->first != two->first)
        return one->first < two->first ? -1 : 1;
    return (one->last > two->last) - (one->last < two->last);
}

static void write_span(Buffer *text, const Movement *movement, BarSpan span)
{
    if (text->length)
        buffer_puts(text, ", ");
    buffer_puts(text, movement->bars[span.first].number);
    if (span.last > span.first)
        buffer_printf(text, "-%s", movement->bars[span.last].number);
}

bool bars_write(Buffer *text, const Movement *movement, SpanList *spans)
{
    Buffer list;
    buffer_init(&list);
    if (spans->count)
        qsort(spans->at, spans->count, sizeof *spans->at, by_bar);
    for (size_t i = 0; i < spans->count;) {
        BarSpan span = spans->at[i];
        for (i++; i < spans->count && spans->at[i].first <= span.last + 1; i++)
            if (spans->at[i].last > span.last)
                span.last = spans->at[i].last;
        write_span(&list, movement, span);
    }
    if (list.text)
        buffer_puts(text, list.text);
    bool good = !buffer_failed(&list) && !buffer_failed(text);
    buffer_free(&list);
    return good;
}

bool bars_write_items(Buffer *text, const Movement *movement, const ItemList *items, double least)
{
    SpanList spans = {0};
    bool good = true;
    for (size_t i = 0; i < items->count && good; i++) {
        const spz_passage *p = items->at[i].passage;
        BarSpan span = {p->first, p->last};
        good = p->strength < least || array_push(&spans, span);
    }
    good = good && bars_write(text, movement, &spans);
    array_free(&spans);
    return good;
}

static int by_weight(const void *a, const void *b)
{
    const Item *one = a, *two = b;
    if (one->weight < two->weight || one->weight > two->weight)
        return one->weight > two->weight ? -1 : 1;
    return (one->passage->first > two->passage->first) - (one->passage->first < two->passage->first);
}

bool bars_write_weightiest(Buffer *text, const Movement *movement, const ItemList *items, size_t count)
{
    ItemList sorted = {0};
    bool good = true;
    for (size_t i = 0; i < items->count && good; i++)
        good = array_push(&sorted, items->at[i]);
    if (good && sorted.count) {
        qsort(sorted.at, sorted.count, sizeof *sorted.at, by_weight);
        sorted.count = sorted.count < count ? sorted.count : count;
        good = bars_write_items(text, movement, &sorted, 0);
    }
    array_free(&sorted);
    return good;
}
