#include "seating/evidence/basis.h"
#include <stdlib.h>

static int by_bar(const void *a, const void *b)
{
    const BarSpan *one = a, *two = b;
    if (one->first != two->first)
        return one->first < two->first ? -1 : 1;
    return (one->last > two->last) - (one->last < two->last);
}

static bool number_bars(Arena *arena, const Movement *movement, size_t first, size_t last, spz_bars *out)
{
    *out = (spz_bars){first, last, arena_string(arena, movement->bars[first].number), arena_string(arena, movement->bars[last].number)};
    return out->first_bar && out->last_bar;
}

bool basis_of_spans(Arena *arena, const Movement *movement, SpanList *spans, spz_basis *out)
{
    spz_bars *bars = spans->count ? arena_take(arena, spans->count, sizeof *bars) : NULL;
    *out = (spz_basis){.bars = bars};
    if (!spans->count)
        return true;
    if (!bars)
        return false;
    qsort(spans->at, spans->count, sizeof *spans->at, by_bar);
    for (size_t i = 0; i < spans->count;) {
        BarSpan span = spans->at[i];
        for (i++; i < spans->count && spans->at[i].first <= span.last + 1; i++)
            if (spans->at[i].last > span.last)
                span.last = spans->at[i].last;
        if (!number_bars(arena, movement, span.first, span.last, &bars[out->bar_count++]))
            return false;
    }
    return true;
}

static int by_weight(const void *a, const void *b)
{
    const Item *one = a, *two = b;
    if (one->weight < two->weight || one->weight > two->weight)
        return one->weight > two->weight ? -1 : 1;
    return (one->passage > two->passage) - (one->passage < two->passage); /* in the order of the findings */
}

static bool cite(Arena *arena, const SeatingEvidence *evidence, const spz_passage *passage, spz_cited *out)
{
    *out = (spz_cited){.passage = (size_t)(passage - evidence->findings->passages.at), .kind = passage->kind, .strength = passage->strength,
                       .sides = {passage->sides[0].section, passage->sides[1].section}};
    return number_bars(arena, evidence->movement, passage->first, passage->last, &out->bars);
}

/* Of the items as they stand, at most `most`. */
static bool take_items(Arena *arena, const SeatingEvidence *evidence, const ItemList *items, size_t most, spz_basis *out)
{
    SpanList spans = {0};
    size_t count = items->count < most ? items->count : most;
    spz_cited *passages = arena_take(arena, count + 1, sizeof *passages);
    bool good = passages != NULL;
    for (size_t i = 0; i < count && good; i++) {
        BarSpan span = {items->at[i].passage->first, items->at[i].passage->last};
        good = array_push(&spans, span) && cite(arena, evidence, items->at[i].passage, &passages[i]);
    }
    good = good && basis_of_spans(arena, evidence->movement, &spans, out);
    array_free(&spans);
    out->passages = passages;
    out->passage_count = good ? count : 0;
    return good;
}

bool basis_weightiest(Arena *arena, const SeatingEvidence *evidence, const ItemList *items, size_t most, spz_basis *out)
{
    ItemList sorted = {0};
    bool good = true;
    *out = (spz_basis){0};
    for (size_t i = 0; i < items->count && good; i++)
        good = array_push(&sorted, items->at[i]);
    if (good && sorted.count) {
        qsort(sorted.at, sorted.count, sizeof *sorted.at, by_weight);
        good = take_items(arena, evidence, &sorted, most, out);
    }
    array_free(&sorted);
    return good;
}

bool basis_of_items(Arena *arena, const SeatingEvidence *evidence, const ItemList *items, spz_basis *out)
{
    return basis_weightiest(arena, evidence, items, items->count, out);
}

static bool copy_bars(Arena *arena, const spz_bars *from, spz_bars *out)
{
    *out = *from;
    out->first_bar = arena_string(arena, from->first_bar);
    out->last_bar = arena_string(arena, from->last_bar);
    return out->first_bar && out->last_bar;
}

bool basis_copy(Arena *arena, const spz_basis *from, spz_basis *out)
{
    spz_bars *bars = arena_take(arena, from->bar_count + 1, sizeof *bars);
    spz_cited *passages = arena_take(arena, from->passage_count + 1, sizeof *passages);
    bool good = bars && passages;
    *out = (spz_basis){bars, from->bar_count, passages, from->passage_count};
    for (size_t i = 0; i < from->bar_count && good; i++)
        good = copy_bars(arena, &from->bars[i], &bars[i]);
    for (size_t i = 0; i < from->passage_count && good; i++) {
        passages[i] = from->passages[i];
        good = copy_bars(arena, &from->passages[i].bars, &passages[i].bars);
    }
    return good;
}
