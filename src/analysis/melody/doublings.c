#include "analysis/melody/doublings.h"

enum { MASKED_GROUPS = 64 };

static bool same_pitch_class(const NoteEvent *a, const NoteEvent *b)
{
    return (a->midi - b->midi) % 12 == 0;
}

/* Basses that double the cellos speak through them: their notes begin nothing of their own. */
static void mark_doubling(Melody *basses, const Melody *cellos)
{
    size_t c = 0;
    for (size_t i = 0; i < basses->count; i++) {
        NoteEvent *event = &basses->events[i];
        while (c < cellos->count && cellos->events[c].onset < event->onset)
            c++;
        if (c < cellos->count && cellos->events[c].onset == event->onset && same_pitch_class(&cellos->events[c], event))
            event->flags |= EVENT_DOUBLES;
    }
}

static void mark_basses(const SectionMap *map, Melody *melodies)
{
    for (size_t b = 0; b < map->group_count; b++)
        for (size_t c = 0; c < map->group_count; c++)
            if (map->groups[b].about.section == SPZ_DB && map->groups[c].about.section == SPZ_VC &&
                map->groups[b].about.orchestra == map->groups[c].about.orchestra)
                mark_doubling(&melodies[b], &melodies[c]);
}

static int next_step(const Melody *melody, size_t i)
{
    return i + 1 < melody->count ? event_direction(&melody->events[i], &melody->events[i + 1]) : 0;
}

/* The upper of two that move in parallel speaks for both, unless the lower enters where the upper goes on; a soloist who plays along
 * with a section does not speak for it. */
static bool leads(const Melody *a, size_t i, const Melody *b, size_t j)
{
    const NoteEvent *x = &a->events[i], *y = &b->events[j];
    bool soloist = a->group->about.solo && !b->group->about.solo;
    return x->next == y->next && next_step(a, i) == next_step(b, j) && !soloist && !(event_is_fresh(y) && !event_is_fresh(x));
}

static void meet(Melody *a, size_t ai, Melody *b, size_t bi)
{
    size_t i = 0, j = 0;
    while (i < a->count && j < b->count) {
        NoteEvent *x = &a->events[i], *y = &b->events[j];
        if (x->onset == y->onset && (x->next == y->next || x->end == y->end)) {
            x->company |= (uint64_t)1 << bi;
            y->company |= (uint64_t)1 << ai;
            if (next_step(a, i) == next_step(b, j)) {
                x->parallel |= (uint64_t)1 << bi;
                y->parallel |= (uint64_t)1 << ai;
            }
            if (leads(a, i, b, j))
                y->leaders |= (uint64_t)1 << ai;
        }
        Ticks when = x->onset < y->onset ? x->onset : y->onset;
        i += x->onset == when;
        j += y->onset == when;
    }
}

/* Whether `other` has the pitch of the note at `i`: it sounds then or, where `melody` only strikes its note again, has been struck since
 * that began. So violas that repeat in quavers what cellos play in crotchets are in unison with them. */
static bool in_unison(const Melody *melody, size_t i, const NoteEvent *other, bool before)
{
    const NoteEvent *note = &melody->events[i];
    if (!same_pitch_class(other, note))
        return false;
    bool struck_again = before && i > 0 && melody->events[i - 1].midi == note->midi;
    return other->end > note->onset || (struck_again && other->onset >= melody->events[i - 1].onset);
}

static void mark_unison(Melody *melody, const Melody *other, size_t other_index)
{
    size_t j = 0;
    bool unison = false;
    for (size_t i = 0; i < melody->count; i++) {
        while (j < other->count && other->events[j].onset <= melody->events[i].onset)
            j++;
        unison = j > 0 && in_unison(melody, i, &other->events[j - 1], unison);
        if (unison)
            melody->events[i].unison |= (uint64_t)1 << other_index;
    }
}

static void mark_company(Melody *melodies, size_t count)
{
    for (size_t i = 0; i < count; i++)
        for (size_t j = i + 1; j < count; j++) {
            meet(&melodies[i], i, &melodies[j], j);
            mark_unison(&melodies[i], &melodies[j], j);
            mark_unison(&melodies[j], &melodies[i], i);
        }
}

static void mark_doubled(const SectionMap *map, Melody *melody)
{
    size_t other = 0;
    for (size_t i = 0; i < melody->count; i++) {
        NoteEvent *event = &melody->events[i];
        while (other < map->other_count && map->others[other].onset < event->onset)
            other++;
        for (size_t o = other; o < map->other_count && map->others[o].onset == event->onset; o++)
            if (map->others[o].note->midi >= 0 && (map->others[o].note->midi - event->midi) % 12 == 0)
                event->flags |= EVENT_DOUBLED;
    }
}

void doublings_mark(const SectionMap *map, Melody *melodies)
{
    mark_basses(map, melodies);
    mark_company(melodies, map->group_count < MASKED_GROUPS ? map->group_count : MASKED_GROUPS);
    for (size_t i = 0; i < map->group_count; i++)
        mark_doubled(map, &melodies[i]);
}
