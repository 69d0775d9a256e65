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

/* The upper of two that go on in the same direction speaks for both, unless the lower enters where the upper goes on; a soloist who plays along
 * with a section does not speak for it. */
static bool leads(const Melody *a, size_t i, const Melody *b, size_t j)
{
    const NoteEvent *x = &a->events[i], *y = &b->events[j];
    bool soloist = a->group->about.solo && !b->group->about.solo;
    return x->next == y->next && !soloist && !(event_is_fresh(y) && !event_is_fresh(x));
}

static void meet(Melody *a, size_t ai, size_t i, Melody *b, size_t bi, size_t j)
{
    NoteEvent *x = &a->events[i], *y = &b->events[j];
    if (x->next != y->next && x->end != y->end)
        return;
    x->company |= (uint64_t)1 << bi;
    y->company |= (uint64_t)1 << ai;
    if (next_step(a, i) != next_step(b, j))
        return;
    x->parallel |= (uint64_t)1 << bi;
    y->parallel |= (uint64_t)1 << ai;
    if (leads(a, i, b, j))
        y->leaders |= (uint64_t)1 << ai;
}

/* Whether `other`, of the same pitch class, has the pitch of the note at `i`: it sounds then or, where `melody` only strikes its note again, has been struck since
 * that began. So violas that repeat in quavers what cellos play in crotchets are in unison with them. */
static bool in_unison(const Melody *melody, size_t i, const NoteEvent *other, bool before)
{
    const NoteEvent *note = &melody->events[i];
    bool struck_again = before && i > 0 && melody->events[i - 1].midi == note->midi;
    return other->end > note->onset || (struck_again && other->onset >= melody->events[i - 1].onset);
}

/* All melodies at once, in time order: where each stands, and whose latest note has which pitch class. */
typedef struct Sweep {
    Melody *melodies;
    size_t count;
    uint32_t next[MASKED_GROUPS]; /* of each melody, the first note that has not begun */
    uint64_t of_class[12];        /* bit i: melody i */
} Sweep;

static unsigned pitch_class(const NoteEvent *note)
{
    return (unsigned)note->midi % 12; /* none is below 0 */
}

/* The melodies that begin a note then take it up. */
static uint64_t begin_notes(Sweep *sweep, Ticks when)
{
    uint64_t begin = 0;
    for (size_t m = 0; m < sweep->count; m++) {
        const Melody *melody = &sweep->melodies[m];
        size_t i = sweep->next[m];
        if (i == melody->count || melody->events[i].onset != when)
            continue;
        if (i > 0)
            sweep->of_class[pitch_class(&melody->events[i - 1])] &= ~((uint64_t)1 << m);
        sweep->of_class[pitch_class(&melody->events[i])] |= (uint64_t)1 << m;
        sweep->next[m]++;
        begin |= (uint64_t)1 << m;
    }
    return begin;
}

/* Who has the pitch of the latest note of a melody. */
static void mark_unison(Sweep *sweep, size_t m)
{
    const Melody *melody = &sweep->melodies[m];
    size_t i = sweep->next[m] - 1;
    NoteEvent *note = &melody->events[i];
    for (uint64_t same = sweep->of_class[pitch_class(note)] & ~((uint64_t)1 << m); same; same &= same - 1) {
        size_t o = (size_t)__builtin_ctzll(same);
        bool before = i > 0 && (note[-1].unison >> o & 1);
        if (in_unison(melody, i, &sweep->melodies[o].events[sweep->next[o] - 1], before))
            note->unison |= (uint64_t)1 << o;
    }
}

static void mark_company(Melody *melodies, size_t count)
{
    Sweep sweep = {.melodies = melodies, .count = count};
    for (size_t m; (m = melody_earliest(melodies, count, sweep.next)) < count;) {
        uint64_t begin = begin_notes(&sweep, melodies[m].events[sweep.next[m]].onset);
        for (; begin; begin &= begin - 1) {
            size_t a = (size_t)__builtin_ctzll(begin);
            mark_unison(&sweep, a);
            for (uint64_t others = begin & (begin - 1); others; others &= others - 1) {
                size_t b = (size_t)__builtin_ctzll(others);
                meet(&melodies[a], a, sweep.next[a] - 1, &melodies[b], b, sweep.next[b] - 1);
            }
        }
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
