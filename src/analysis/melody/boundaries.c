#include "analysis/melody/boundaries.h"
#include "analysis/melody/entry_marks.h"
#include "sections/slurs.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

static const char *const names[BOUNDARY_CUES] = {"rest", "longer", "leap", "bound", "slur", "marked", "bar", "half", "dots", "parallel"};

const char *boundary_cue_name(enum BoundaryCue cue)
{
    return names[cue];
}

/* Log odds of an entry, as tests/tools/fit_boundaries.py prints them. */
static const double weight_of[BOUNDARY_CUES] = {
    [BC_REST] = 0.85, [BC_LONGER] = 0.74, [BC_LEAP] = 0.99, [BC_BOUND] = -1.50, [BC_SLUR] = 0.54, [BC_MARKED] = 0.87,
    [BC_BAR] = 1.19, [BC_HALF] = 0.62, [BC_DOTS] = 0.53, [BC_PARALLEL] = 0.16,
};

enum { HEAD = 3, BARS = 8, REMEMBERED = 256 /* rhythms, by their last digits */ };

/* The last time that a rhythm began. */
typedef struct Beginning {
    uint64_t rhythm;
    const NoteEvent *event;
} Beginning;

static Ticks bar_of(const Movement *movement, const NoteEvent *event)
{
    const Bar *bar = &movement->bars[event->bar];
    return bar->nominal > 0 ? bar->nominal : bar->length;
}

static void cues_of_time(const Melody *melody, const NoteEvent *event, double *cues)
{
    const NoteEvent *before = event - 1;
    if (event == melody->events || event->flags & EVENT_AFTER_REST)
        cues[BC_REST] = 1;
    Ticks here = event->next - event->onset, led = event > melody->events ? event->onset - before->onset : 0;
    if (here > 0 && led > here)
        cues[BC_LONGER] = fmin(4, log2((double)led / (double)here));
}

/* In semitones and one, so that a repeated note changes too; 0 where there is no note before, or no such note. */
static double interval_to(const Melody *melody, const NoteEvent *event)
{
    return event > melody->events && event < melody->events + melody->count ? 1 + abs(event->midi - event[-1].midi) : 0;
}

static double degree_of_change(double from, double to)
{
    return from > 0 && to > from ? (to - from) / (to + from) : 0;
}

static void cues_of_pitch(const Melody *melody, const NoteEvent *event, double *cues)
{
    double here = interval_to(melody, event);
    cues[BC_LEAP] = degree_of_change(interval_to(melody, event - (event > melody->events)), here) + degree_of_change(interval_to(melody, event + 1), here);
}

static void cues_of_signs(const SectionMap *map, const Melody *melody, const NoteEvent *event, SlurPlace slur, double *cues)
{
    cues[BC_BOUND] = slur.from;
    cues[BC_SLUR] = slur.on && !slur.from;
    cues[BC_MARKED] = entry_is_marked(map, melody->group, event->onset);
    cues[BC_DOTS] = event > melody->events && (event->sound->note->flags ^ event[-1].sound->note->flags) & NOTE_STACCATO;
}

static void cues_of_metre(const Movement *movement, const NoteEvent *event, double *cues)
{
    const Bar *bar = &movement->bars[event->bar];
    Ticks place = event->onset - bar->onset, half = bar_of(movement, event) / 2;
    cues[BC_BAR] = place == 0;
    cues[BC_HALF] = half > 0 && bar->beat > 0 && half % bar->beat == 0 && place % half == 0;
}

static double sum_of(const double *cues)
{
    double sum = 0;
    for (int c = 0; c < BOUNDARY_CUES; c++)
        sum += weight_of[c] * cues[c];
    return sum;
}

/* The same rhythm beginning again begins a group where it began one before. */
static double parallel(const Movement *movement, const Melody *melody, const NoteEvent *event, Beginning *beginnings)
{
    uint64_t rhythm = 0;
    if (event + HEAD >= melody->events + melody->count)
        return 0;
    for (int i = 0; i < HEAD; i++)
        rhythm = (rhythm ^ (uint64_t)(event[i].next - event[i].onset)) * 0x9E3779B97F4A7C15u;
    Beginning *last = &beginnings[rhythm >> 56];
    double more = 0;
    if (last->event && last->rhythm == rhythm && event->onset - last->event->onset <= BARS * bar_of(movement, event))
        more = fmin(3, fmax(0, (double)last->event->boundary - (double)event->boundary));
    *last = (Beginning){rhythm, event};
    return more;
}

void boundaries_mark(const SectionMap *map, Melody *melody, double *cues)
{
    Beginning beginnings[REMEMBERED] = {{0, NULL}};
    SlurBook book = {.count = 0};
    const Group *group = melody->group;
    NoteEvent *event = melody->events, *end = event + melody->count;
    for (size_t s = 0; s < group->sound_count && event < end; s++) {
        SlurPlace slur = slur_place(&book, group->sounds, group->sound_count, s);
        double own[BOUNDARY_CUES] = {0};
        if (event->sound != &group->sounds[s])
            continue;
        cues_of_time(melody, event, own);
        cues_of_pitch(melody, event, own);
        cues_of_signs(map, melody, event, slur, own);
        cues_of_metre(map->movement, event, own);
        event->boundary = (float)sum_of(own);
        own[BC_PARALLEL] = parallel(map->movement, melody, event, beginnings);
        event->boundary += (float)(weight_of[BC_PARALLEL] * own[BC_PARALLEL]);
        if (cues)
            memcpy(cues + (size_t)(event - melody->events) * BOUNDARY_CUES, own, sizeof own);
        event++;
    }
}

void boundaries_mark_all(const SectionMap *map, Melody *melodies)
{
    for (size_t i = 0; melodies && i < map->group_count; i++)
        boundaries_mark(map, &melodies[i], NULL);
}
