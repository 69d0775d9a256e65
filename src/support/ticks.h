/* ticks.h - exact musical time: whole ticks, so many to the crotchet. */
#ifndef SUPPORT_TICKS_H
#define SUPPORT_TICKS_H
#include "spezzato/score.h"
#include <stdbool.h>
#include <stddef.h>

typedef spz_ticks Ticks;

Ticks ticks_common_divisor(Ticks a, Ticks b); /* both > 0 */

/* The smallest number that both divide, or 0 where it would pass `limit`. */
Ticks ticks_common_multiple(Ticks a, Ticks b, Ticks limit);

/* Writes `ticks` as crotchets, exactly: '7/2', '3', '-1/3'. Returns `text`. */
enum { TICKS_TEXT = 48 };
char *ticks_text(Ticks ticks, Ticks per_crotchet, char text[TICKS_TEXT]);

/* Index of the first of `things` (records with an `onset`, in order of it) at or after `when`; the count where there is none. */
#define FIRST_FROM(things, count, when) ((count) ? ticks_first_from(&(things)->onset, sizeof *(things), (count), (when)) : 0)

static inline size_t ticks_first_from(const Ticks *onsets, size_t step, size_t count, Ticks when)
{
    size_t low = 0, high = count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        if (*(const Ticks *)(const void *)((const char *)onsets + middle * step) < when)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}
#endif
