#include "wording/notes_language.h"
#include "support/ascii.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

char *clock_text(double seconds, char text[CLOCK_TEXT])
{
    long whole = seconds < 0 || seconds > 1e8 ? 0 : lround(seconds);
    if (whole >= 3600)
        snprintf(text, CLOCK_TEXT, "%ld:%02ld:%02ld", whole / 3600, whole / 60 % 60, whole % 60);
    else
        snprintf(text, CLOCK_TEXT, "%ld:%02ld", whole / 60, whole % 60);
    return text;
}

IntervalName interval_name(int semitones)
{
    static const signed char names[25] = {
        INTERVAL_SAME,   INTERVAL_STEP,     INTERVAL_STEP,     INTERVAL_THIRD,    INTERVAL_THIRD,   INTERVAL_FOURTH,   INTERVAL_NAMELESS,
        INTERVAL_FIFTH,  INTERVAL_SIXTH,    INTERVAL_SIXTH,    INTERVAL_SEVENTH,  INTERVAL_SEVENTH, INTERVAL_OCTAVE,   INTERVAL_NAMELESS,
        INTERVAL_NAMELESS, INTERVAL_TENTH,  INTERVAL_TENTH,    INTERVAL_NAMELESS, INTERVAL_NAMELESS, INTERVAL_TWELFTH, INTERVAL_NAMELESS,
        INTERVAL_NAMELESS, INTERVAL_NAMELESS, INTERVAL_NAMELESS, INTERVAL_TWO_OCTAVES};
    int size = abs(semitones);
    return size <= 24 ? (IntervalName)names[size] : INTERVAL_NAMELESS;
}

static void put_bar(Buffer *out, const char *number, size_t index)
{
    if (number && *number)
        buffer_puts(out, number);
    else
        buffer_printf(out, "(%zu.)", index + 1);
}

void put_bars(Buffer *out, const Citation *citation)
{
    put_bar(out, citation->bar_from, citation->passage->first);
    if (citation->passage->last == citation->passage->first)
        return;
    buffer_puts(out, "\xE2\x80\x93");
    put_bar(out, citation->bar_to, citation->passage->last);
}

bool letter_is_number(const Citation *citation)
{
    return ascii_is_digit((unsigned char)citation->letter[0]) != 0;
}
