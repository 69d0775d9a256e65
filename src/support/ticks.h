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
#endif
