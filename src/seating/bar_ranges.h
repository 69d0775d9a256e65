/* bar_ranges.h - lists of bars as musicians write them: '66-71, 102'. */
#ifndef SEATING_BAR_RANGES_H
#define SEATING_BAR_RANGES_H
#include "seating/seating_evidence.h"
#include "support/buffer.h"

/* The bars of the spans in order, those that touch drawn together. False: no memory. The spans are put in order. */
bool bars_write(Buffer *text, const Movement *movement, SpanList *spans);
/* The same for the passages of `items` whose strength is at least `least`. */
bool bars_write_items(Buffer *text, const Movement *movement, const ItemList *items, double least);
/* The `count` weightiest passages, in order of bars. */
bool bars_write_weightiest(Buffer *text, const Movement *movement, const ItemList *items, size_t count);
#endif
