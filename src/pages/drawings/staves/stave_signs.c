#include "pages/drawings/staves/stave_signs.h"
#include "pages/drawings/staves/stave_glyphs.h"
#include "sections/slurs.h"
#include "support/memory.h"
#include <math.h>
#include <string.h>

static const double off_head = 5, bow_off = 7, slur_off = 4, slur_height = 4; /* units */

typedef struct Bound { /* of a chord */
    bool on, begins, ends; /* to the next; a slur begins, ends with it */
} Bound;

static bool has_note(const StaveChord *chord, const Note *note)
{
    for (int n = 0; n < chord->count; n++)
        if (chord->notes[n] == note)
            return true;
    return false;
}

/* Slurs are counted from the beginning of the movement: one may lead into the line. */
static void find_bound(const Line *line, const Stave *stave, SlurBook *book, Bound *bound)
{
    const Bar *bars = line->view->movement->bars;
    Ticks from = bars[line->first].onset, to = bars[line->end - 1].onset + bars[line->end - 1].length;
    for (size_t i = 0; i < stave->sound_count && stave->sounds[i].onset < to; i++) {
        const GroupSound *sound = &stave->sounds[i];
        SlurPlace place = slur_place(book, stave->sounds, stave->sound_count, i);
        for (size_t c = 0; c < stave->chords.count && sound->onset + sound->duration > from; c++)
            if (has_note(&stave->chords.at[c], sound->note)) {
                bound[c].on = bound[c].on || place.on;
                bound[c].begins = bound[c].begins || sound->slur_starts || sound->note->flags & NOTE_SLUR_START;
                bound[c].ends = bound[c].ends || sound->slur_stops || sound->note->flags & NOTE_SLUR_STOP;
            }
    }
}

/* Whether the stem of a chord points up, its beam's being one for all. */
static bool points_up(const Stave *stave, size_t at)
{
    const StaveChord *chords = stave->chords.at;
    size_t first = at, end = at + 1;
    while (chords[at].beam && first > 0 && chords[first - 1].beam == chords[at].beam)
        first--;
    while (chords[at].beam && end < stave->chords.count && chords[end].beam == chords[at].beam)
        end++;
    return stave_stem_up(stave, first, end);
}

/* The outermost that a chord reaches above, or below, stem counted in. */
static double reach(const Line *line, size_t s, size_t at, bool above)
{
    const Stave *stave = &line->staves[s];
    const StaveChord *chord = &stave->chords.at[at];
    double top = stave_y(line, s, chord->places[0]), low = stave_y(line, s, chord->places[chord->count - 1]);
    bool stem = chord->value.type > 0, up = points_up(stave, at);
    return above ? top - (stem && up ? STEM : 0) : low + (stem && !up ? STEM : 0);
}

/* Below where all stems point up, else above. */
static void draw_slur(const Line *line, size_t s, size_t first, size_t last)
{
    const Stave *stave = &line->staves[s];
    bool above = false, leads_on = last >= stave->chords.count;
    size_t end = leads_on ? stave->chords.count - 1 : last;
    for (size_t i = first; i <= end; i++)
        above = above || (stave->chords.at[i].count && !points_up(stave, i));
    double way = above ? -1 : 1, x1 = stave_x(line, &stave->chords.at[first]), x2 = leads_on ? line->look.width - 3 : stave_x(line, &stave->chords.at[end]);
    double y1 = reach(line, s, first, above) + way * slur_off, y2 = leads_on ? y1 : reach(line, s, end, above) + way * slur_off, most = above ? fmin(y1, y2) : fmax(y1, y2);
    for (size_t i = first; i <= end; i++)
        if (stave->chords.at[i].count) {
            double y = reach(line, s, i, above) + way * slur_off;
            most = above ? fmin(most, y) : fmax(most, y);
        }
    double bend = most + way * slur_height;
    glyph_path(line->view->html, "pen", 1, "M# #C# # # # # #", (const double[]){x1, y1, x1 + (x2 - x1) / 4, bend, x2 - (x2 - x1) / 4, bend, x2, y2}, 8);
}

static void draw_slurs(const Line *line, size_t s, const Bound *bound)
{
    const ChordList *chords = &line->staves[s].chords;
    for (size_t i = 0; i < chords->count;) {
        size_t end = i;
        while (end < chords->count && chords->at[end].count && bound[end].on && !(end > i && bound[end].ends && bound[end].begins))
            end++;
        if (end > i)
            draw_slur(line, s, i, end < chords->count && !chords->at[end].count ? end - 1 : end);
        i = end > i ? end : i + 1;
    }
}

/* Lines and accents stand by the head, away from the stem; bow marks above everything. */
static void draw_marks(const Line *line, size_t s, size_t at)
{
    const Stave *stave = &line->staves[s];
    const StaveChord *chord = &stave->chords.at[at];
    Markup *html = line->view->html;
    uint32_t flags = 0;
    for (int n = 0; n < chord->count; n++)
        flags |= chord->went_on ? 0 : chord->notes[n]->flags;
    bool below = points_up(stave, at);
    double x = stave_x(line, chord), way = below ? 1 : -1, y = stave_y(line, s, chord->places[below ? chord->count - 1 : 0]) + way * (off_head + (flags & NOTE_STACCATO ? 2 : 0));
    if (flags & NOTE_TENUTO)
        glyph_path(html, "pen", 1.2, "M# #h6", (const double[]){x - 3, y}, 2);
    if (flags & NOTE_ACCENT)
        glyph_path(html, "pen", 1, "M# #l7 2.5l-7 2.5", (const double[]){x - 3.5, y + way * 3 - 2.5}, 2);
    y = fmin(line->tops[s], reach(line, s, at, true)) - bow_off;
    if (flags & NOTE_UP_BOW)
        glyph_path(html, "pen", 1.1, "M# #l2.5 6l2.5 -6", (const double[]){x - 2.5, y - 3}, 2);
    if (flags & NOTE_DOWN_BOW)
        glyph_path(html, "pen", 1.3, "M# #v-5h6v5", (const double[]){x - 3, y + 2}, 2);
}

void stave_signs(const Line *line, size_t s)
{
    const Stave *stave = &line->staves[s];
    size_t count = stave->chords.count;
    SlurBook *book = memory_get(sizeof *book);
    Bound *bound = memory_resize(NULL, count + 1, sizeof *bound);
    if (book && bound) {
        *book = (SlurBook){.count = 0};
        memset(bound, 0, (count + 1) * sizeof *bound);
        find_bound(line, stave, book, bound);
        markup_open_class(line->view->html, "g", stave->group ? view_class(stave->group->about.section) : "winds");
        draw_slurs(line, s, bound);
        for (size_t i = 0; i < count; i++)
            if (stave->chords.at[i].count)
                draw_marks(line, s, i);
        markup_close(line->view->html);
    } else
        line->view->html->failed = true;
    memory_free(book);
    memory_free(bound);
}
