#include "model/bar_numbers.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { DIGITS_MOST = 8, BAR_NUMBER_TEXT = 24 };

/* The whole text as a number; false for '12a', '', 'X1'. */
static bool plain_number(const char *text, long *number)
{
    size_t length = strspn(text, "0123456789");
    if (length == 0 || length > DIGITS_MOST || text[length])
        return false;
    *number = strtol(text, NULL, 10);
    return true;
}

static bool is_short(const Bar *bar)
{
    return bar->nominal > 0 && bar->length > 0 && bar->length < bar->nominal;
}

/* Are both numbered, the second by one more than the first? */
static bool counted_on(const Bar *bar)
{
    long one, two;
    return plain_number(bar[0].number, &one) && plain_number(bar[1].number, &two) && two == one + 1;
}

bool upbeat_is_counted(const Movement *movement)
{
    long number;
    const Bar *bars = movement->bars;
    return movement->bar_count > 1 && is_short(&bars[0]) && !is_short(&bars[1]) && plain_number(bars[0].number, &number) && number == 1 && counted_on(bars);
}

/* A bar is split where a repeat sign or a double bar stands within it. */
static bool is_split(const Bar *bar)
{
    bool sign = bar->repeat_end || bar->double_bar || bar->final || bar->ending_stop || bar->fine || bar[1].repeat_start;
    return sign && is_short(&bar[0]) && is_short(&bar[1]) && bar[0].length + bar[1].length == bar[0].nominal;
}

size_t halves_counted(const Movement *movement, size_t from)
{
    for (size_t i = from; i + 1 < movement->bar_count; i++)
        if (is_split(&movement->bars[i]) && counted_on(&movement->bars[i]))
            return i;
    return movement->bar_count;
}

size_t numbers_leap(const Movement *movement, size_t from)
{
    for (size_t i = from + 1; i < movement->bar_count; i++) {
        const Bar *bar = &movement->bars[i];
        long one, two;
        bool ending = bar->ending && movement->bars[i].ending_start; /* second endings are numbered in several ways */
        if (!bar->implicit && !bar[-1].implicit && !ending && !is_split(&bar[-1]) && plain_number(bar[-1].number, &one) && plain_number(bar->number, &two) &&
            two != one + 1)
            return i;
    }
    return movement->bar_count;
}

/* What is added to the file's number `number` and to those behind it, where it stood at `shift` before. */
static long shift_from(const BarRule *rules, size_t count, long number, long shift)
{
    for (size_t i = 0; i < count; i++) {
        if (rules[i].kind == BARS_JOINED && rules[i].to == number)
            shift--;
        if (rules[i].kind == BARS_NUMBER && rules[i].from == number)
            shift = rules[i].to - number;
    }
    return shift;
}

static long first_shift(const Movement *movement, const BarRule *rules, size_t count)
{
    long number, shift = 0;
    for (size_t i = 0; i < count; i++)
        if (rules[i].kind == BARS_FIRST && movement->bar_count && plain_number(movement->bars[0].number, &number))
            shift = rules[i].to - number;
    return shift;
}

spz_status bar_numbers_apply(Movement *movement, const BarRule *rules, size_t count, Arena *arena)
{
    long number, shift = first_shift(movement, rules, count);
    for (size_t i = 0; i < movement->bar_count && count; i++) {
        char text[BAR_NUMBER_TEXT];
        Bar *bar = &movement->bars[i];
        if (!plain_number(bar->number, &number))
            continue;
        shift = shift_from(rules, count, number, shift);
        if (shift == 0 || number + shift < 0)
            continue;
        snprintf(text, sizeof text, "%ld", number + shift);
        const char *kept = arena_string(arena, text);
        if (!kept)
            return SPZ_NO_MEMORY;
        bar->number = kept;
    }
    return SPZ_OK;
}
