#include "sections/shared_staff.h"
#include "sections/names/name_tokens.h"
#include <string.h>

enum { UPPER = 1, LOWER = 2, MARKED_ONE = 4, MARKED_BOTH = 8 };

static void see_notes(const Part *part, const bool *second, unsigned char *bars)
{
    for (size_t i = 0; i < part->note_count; i++)
        if (!(part->notes[i].flags & (NOTE_CUE | NOTE_SLASH)))
            bars[part->notes[i].bar] |= second[part->notes[i].voice] ? LOWER : UPPER;
}

static bool is_one_of(const char *text, const char *const *list)
{
    for (; *list; list++)
        if (strcmp(text, *list) == 0)
            return true;
    return false;
}

static void see_marks(const Part *part, unsigned char *bars)
{
    static const char *const one[] = { "i", "i.", "1", "1.", "1o", "1o.", "1*", "solo", "1. solo", "i. solo", NULL };
    static const char *const both[] = { "a 2", "a2", "a 2.", "a2.", "zu 2", "a due", "unis", "unis.", "unisono", "tutti", "zus", "zus.", "zusammen", "tous", NULL };
    for (size_t i = 0; i < part->direction_count; i++) {
        char folded[40];
        if (part->directions[i].kind != DIRECTION_WORDS || !part->directions[i].text)
            continue;
        name_fold(part->directions[i].text, folded, sizeof folded);
        bars[part->directions[i].bar] |= is_one_of(folded, one) ? MARKED_ONE : is_one_of(folded, both) ? MARKED_BOTH : 0;
    }
}

/* From `bar` on, past silent bars in direction `step`: does the lower voice come in alone? */
static bool answered(const unsigned char *bars, size_t count, size_t bar, long step)
{
    enum { SILENT_BARS = 1 }; /* an answer may wait this long */
    long at = (long)bar + step;
    for (int silent = 0; at >= 0 && at < (long)count && silent <= SILENT_BARS; at += step) {
        unsigned voices = bars[at] & (UPPER | LOWER);
        if (voices)
            return voices == LOWER;
        silent++;
    }
    return false;
}

/* Length of the stretch of the upper voice alone from `bar` on. */
static size_t stretch(const unsigned char *bars, size_t count, size_t bar)
{
    size_t end = bar;
    while (end < count && (bars[end] & (UPPER | LOWER)) == UPPER)
        end++;
    return end - bar;
}

/* Bars of one stretch: marks first, then the neighbours. */
static void judge_stretch(const unsigned char *seen, size_t count, size_t first, size_t length, unsigned char *out)
{
    bool both = !answered(seen, count, first, -1) && !answered(seen, count, first + length - 1, 1);
    for (size_t i = first; i < first + length; i++) {
        if (seen[i] & (MARKED_ONE | MARKED_BOTH))
            both = (seen[i] & MARKED_BOTH) != 0;
        out[i] = both;
    }
}

unsigned char *shared_staff_bars(const Movement *movement, size_t part, const bool *second, Arena *arena)
{
    size_t count = movement->bar_count;
    unsigned char *seen = arena_take(arena, count + 1, 1), *out = arena_take(arena, count + 1, 1);
    if (!seen || !out)
        return NULL;
    see_notes(&movement->parts[part], second, seen);
    see_marks(&movement->parts[part], seen);
    for (size_t bar = 0; bar < count;) {
        size_t length = stretch(seen, count, bar);
        if (length)
            judge_stretch(seen, count, bar, length, out);
        bar += length ? length : 1;
    }
    return out;
}
