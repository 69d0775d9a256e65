#include "support/ticks.h"
#include <inttypes.h>
#include <stdio.h>

Ticks ticks_common_divisor(Ticks a, Ticks b)
{
    while (b != 0) {
        Ticks rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

Ticks ticks_common_multiple(Ticks a, Ticks b, Ticks limit)
{
    Ticks factor = b / ticks_common_divisor(a, b);
    return a > limit / factor ? 0 : a * factor;
}

char *ticks_text(Ticks ticks, Ticks per_crotchet, char text[TICKS_TEXT])
{
    Ticks divisor = ticks ? ticks_common_divisor(ticks < 0 ? -ticks : ticks, per_crotchet) : per_crotchet;
    Ticks above = ticks / divisor, below = per_crotchet / divisor;
    if (below == 1)
        snprintf(text, TICKS_TEXT, "%" PRId64, above);
    else
        snprintf(text, TICKS_TEXT, "%" PRId64 "/%" PRId64, above, below);
    return text;
}
