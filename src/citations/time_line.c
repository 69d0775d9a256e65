#include "citations/time_line.h"
#include <string.h>

/* Seconds by the tempo marks at which the bar of that printed number begins; negative when there is none, or it never sounds. */
static double bar_begins(const spz_movement *movement, const char *number)
{
    for (size_t bar = 0; bar < spz_movement_bars(movement); bar++)
        if (!strcmp(spz_movement_bar_number(movement, bar), number))
            return spz_movement_sounding(movement, bar, spz_movement_bar(movement, bar).onset, 0, 0);
    return -1;
}

static void add(TimeLine *line, double marked, double heard)
{
    line->marked[line->count] = marked;
    line->heard[line->count++] = heard;
}

/* Where the user's last moment leaves the end open, the rest goes on in the tempo that led there. */
static double end_heard(const TimeLine *line, double lasts, double whole)
{
    size_t last = line->count - 1;
    if (lasts > 0)
        return lasts;
    if (last == 0 || line->marked[last] <= 0)
        return whole;
    return line->heard[last] * whole / line->marked[last];
}

spz_status time_line_make(const spz_movement *movement, double lasts, const spz_note_anchor *anchors, size_t count, TimeLine *line)
{
    double whole = spz_movement_duration(movement);
    line->count = 0;
    if (count > ANCHORS_MOST)
        return SPZ_BAD_ARGUMENT;
    add(line, 0, 0);
    for (size_t i = 0; i < count; i++) {
        double marked = bar_begins(movement, anchors[i].bar), before = line->marked[line->count - 1];
        if (marked < 0 || (marked <= before && marked > 0) || anchors[i].seconds <= line->heard[line->count - 1])
            return SPZ_BAD_ARGUMENT;
        if (marked == 0)
            line->count = 0; /* the first bar itself does not begin at nought */
        add(line, marked, anchors[i].seconds);
    }
    double end = end_heard(line, lasts, whole);
    if (end <= line->heard[line->count - 1] && count)
        return SPZ_BAD_ARGUMENT;
    add(line, whole, end);
    return SPZ_OK;
}

double time_line_at(const TimeLine *line, double marked)
{
    size_t at = 1;
    while (at + 1 < line->count && line->marked[at] < marked)
        at++;
    double from = line->marked[at - 1], length = line->marked[at] - from;
    double share = length > 0 ? (marked - from) / length : 0;
    return line->heard[at - 1] + share * (line->heard[at] - line->heard[at - 1]);
}

double time_line_end(const TimeLine *line)
{
    return line->heard[line->count - 1];
}
