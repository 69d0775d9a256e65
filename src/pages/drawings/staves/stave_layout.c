#include "pages/drawings/staves/stave_layout.h"
#include "pages/drawings/staves/stave_glyphs.h"
#include <math.h>
#include <stdlib.h>

enum { SIGNS_ABOVE = 12, SIGNS_BELOW = 7 };
static const double least_moment = 7.5, last_air = 6; /* units: for a moment; for the flag or tie of the last one */

static int by_time(const void *a, const void *b)
{
    const Moment *one = a, *two = b;
    if (one->bar != two->bar)
        return one->bar < two->bar ? -1 : 1;
    return one->onset < two->onset ? -1 : one->onset > two->onset;
}

/* All moments at which something begins, each once; the longer until the next, the more room, but less than in proportion. */
static void gather_moments(Line *line)
{
    size_t count = 0, kept = 0;
    const Movement *movement = line->view->movement;
    for (size_t s = 0; s < line->count; s++)
        for (size_t i = 0; i < line->staves[s].chords.count && count < MOMENTS_MOST; i++)
            line->moments[count++] = (Moment){.bar = line->staves[s].chords.at[i].bar, .onset = line->staves[s].chords.at[i].onset};
    qsort(line->moments, count, sizeof *line->moments, by_time);
    for (size_t i = 0; i < count; i++)
        if (kept == 0 || by_time(&line->moments[kept - 1], &line->moments[i]) != 0)
            line->moments[kept++] = line->moments[i];
    line->moment_count = kept;
    for (size_t i = 0; i < kept; i++) {
        Moment *at = &line->moments[i];
        Ticks next = i + 1 < kept && line->moments[i + 1].bar == at->bar ? line->moments[i + 1].onset : movement->bars[at->bar].length;
        at->weight = 0.55 + pow((double)(next - at->onset) / (double)movement->per_crotchet, 0.6);
    }
}

static double weight_of(const Line *line)
{
    double sum = 0;
    for (size_t i = 0; i < line->moment_count; i++)
        sum += line->moments[i].weight;
    return sum;
}

static bool fill(Line *line)
{
    for (size_t s = 0; s < line->count; s++)
        if (!stave_fill(line->view, line->passage, &line->staves[s], line->first, line->end))
            return false;
    gather_moments(line);
    return true;
}

/* The bar in which the first answer that is drawn begins: it is to be seen beside its call. */
static size_t answered_in(const Line *line)
{
    for (size_t i = 0; i < line->passage->entry_count; i++)
        for (size_t s = 0; s < line->count; s++)
            if (view_answers(line->passage, &line->passage->entries[i]) && stave_has_entry(&line->staves[s], &line->passage->entries[i]))
                return line->passage->entries[i].bar;
    return line->passage->first;
}

/* As many bars as have room. */
bool stave_choose_bars(Line *line)
{
    size_t last = line->passage->last + 1, least = line->first == line->passage->first ? answered_in(line) + 1 : line->first + 1;
    line->end = line->first + BARS_MOST < last ? line->first + BARS_MOST : last;
    if (!fill(line))
        return false;
    while (line->end > line->first + 1 && line->end > least &&
           ((double)line->moment_count * least_moment + 8 * (double)(line->end - line->first) > line->look.width - line->left - 26)) {
        line->end--;
        if (!fill(line))
            return false;
    }
    return true;
}

double stave_y(const Line *line, size_t s, int place)
{
    return line->tops[s] + 4 * STAVE_SPACE - HALF_SPACE * (place - line->staves[s].bottom);
}

double stave_x(const Line *line, const StaveChord *chord)
{
    Moment key = {.bar = chord->bar, .onset = chord->onset};
    const Moment *found = bsearch(&key, line->moments, line->moment_count, sizeof key, by_time);
    return found ? found->x : line->left;
}

static void place_moments(Line *line, double signature)
{
    double from = line->left + signature, room = line->look.width - from - last_air, air = 6, bars = (double)(line->end - line->first);
    double each = (room - air * bars) / fmax(weight_of(line), 0.1), x = from;
    size_t i = 0;
    line->bars[0] = line->left;
    for (size_t bar = line->first; bar < line->end; bar++) {
        x += air;
        for (; i < line->moment_count && line->moments[i].bar == bar; i++) {
            line->moments[i].x = x + 2;
            x += line->moments[i].weight * each;
        }
        line->bars[bar - line->first + 1] = x;
    }
    line->bars[line->end - line->first] = line->look.width - 1;
}

/* Stems point to the middle line, together in a beam. */
bool stave_stem_up(const Stave *stave, size_t first, size_t end)
{
    int middle = stave->bottom + 4, above = 0, below = 0;
    for (size_t i = first; i < end; i++) {
        const StaveChord *chord = &stave->chords.at[i];
        above = chord->places[0] - middle > above ? chord->places[0] - middle : above;
        below = middle - chord->places[chord->count - 1] > below ? middle - chord->places[chord->count - 1] : below;
    }
    return below > above;
}

static void measure(Line *line)
{
    static const double loud = 8, number = 11, between = 4;
    const bool answered = spz_kind_is_antiphony(line->passage->kind); /* else nobody calls, and no bracket stands over the staves */
    const double bracket = answered ? 11 : 3;
    double y = number;
    for (size_t s = 0; s < line->count; s++) {
        const Stave *stave = &line->staves[s];
        double up = 2, down = 2;
        bool coloured = false; /* something is called or answered: how loud stands below */
        for (size_t i = 0; i < stave->chords.count; i++) {
            const StaveChord *chord = &stave->chords.at[i];
            if (chord->count == 0)
                continue;
            coloured = coloured || (answered && chord->entry);
            double top = HALF_SPACE * (chord->places[0] - stave->bottom - 8), low = HALF_SPACE * (stave->bottom - chord->places[chord->count - 1]);
            bool points_up = stave_stem_up(stave, i, i + 1);
            up = fmax(up, top + (points_up ? STEM + 1 : 4));
            down = fmax(down, low + (points_up ? 4 : STEM + 1));
        }
        up += line->look.signs ? SIGNS_ABOVE : 0;
        down += line->look.signs ? SIGNS_BELOW : 0;
        line->highest[s] = up;
        line->lowest[s] = down;
        line->tops[s] = y + up + bracket;
        y = line->tops[s] + 4 * STAVE_SPACE + down + (s + 1 < line->count ? between : 0) + (coloured ? loud : 0);
    }
    line->height = y;
}

void stave_place(Line *line, double signature)
{
    place_moments(line, signature);
    measure(line);
}
