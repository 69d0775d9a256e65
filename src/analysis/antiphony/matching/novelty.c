#include "analysis/antiphony/matching/novelty.h"
#include <stdlib.h>

enum {
    HEAD = 3,             /* notes by whose rhythm a gesture is known */
    AROUND_HALF = 8,      /* times that count half in `around` */
    RARE_HALF = 16,       /* ... and in `rare` */
    COUNTER_NOTES = 3     /* notes under the call that make a counter-line */
};

typedef struct RhythmEntry {
    uint64_t key;
    Ticks onset;
} RhythmEntry;

struct RhythmIndex {
    ARRAY(RhythmEntry) entries; /* sorted by key, then onset; each beginning twice: for its melody and for all */
};

static uint64_t rhythm_of(const NoteEvent *t)
{
    uint64_t a = (uint64_t)(t[1].onset - t[0].onset), b = (uint64_t)(t[2].onset - t[1].onset);
    return a * 0x9E3779B97F4A7C15u ^ b * 0xC2B2AE3D27D4EB4Fu;
}

static uint64_t within(uint64_t rhythm, size_t melody)
{
    return (rhythm ^ (melody + 1)) * 0xD6E8FEB86659FD93u;
}

static int by_key_and_onset(const void *left, const void *right)
{
    const RhythmEntry *a = left, *b = right;
    if (a->key != b->key)
        return a->key < b->key ? -1 : 1;
    return (a->onset > b->onset) - (a->onset < b->onset);
}

void rhythm_index_free(RhythmIndex *index)
{
    if (index)
        array_free(&index->entries);
    memory_free(index);
}

static bool note_rhythms(RhythmIndex *index, const Melody *melody, size_t melody_index)
{
    for (size_t i = 0; i + HEAD - 1 < melody->count; i++) {
        const NoteEvent *event = &melody->events[i];
        if (!(event->flags & (EVENT_ON_BEAT | EVENT_AFTER_REST)))
            continue;
        RhythmEntry entry = {rhythm_of(event), event->onset}, own = {within(entry.key, melody_index), event->onset};
        if (!array_push(&index->entries, entry) || !array_push(&index->entries, own))
            return false;
    }
    return true;
}

spz_status rhythm_index_make(const Melody *melodies, size_t melody_count, RhythmIndex **out)
{
    *out = NULL;
    RhythmIndex *index = memory_get(sizeof *index);
    if (!index)
        return SPZ_NO_MEMORY;
    *index = (RhythmIndex){0};
    for (size_t t = 0; t < melody_count; t++)
        if (!note_rhythms(index, &melodies[t], t)) {
            rhythm_index_free(index);
            return SPZ_NO_MEMORY;
        }
    if (index->entries.count)
        qsort(index->entries.at, index->entries.count, sizeof *index->entries.at, by_key_and_onset);
    *out = index;
    return SPZ_OK;
}

static size_t first_entry(const RhythmIndex *index, uint64_t key, Ticks when)
{
    RhythmEntry wanted = {key, when};
    size_t low = 0, high = index->entries.count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        if (by_key_and_onset(&index->entries.at[middle], &wanted) < 0)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

static double times_between(const RhythmIndex *index, uint64_t key, Ticks from, Ticks to)
{
    return (double)(first_entry(index, key, to) - first_entry(index, key, from));
}

static double times_around(const RhythmIndex *index, uint64_t key, const Match *match, Ticks window)
{
    return times_between(index, key, match->onset - window, match->onset) + times_between(index, key, match->end, match->end + window);
}

/* Whether a gesture begins in `melody` at `when` in the rhythm of the notes at `head`. */
static bool has_rhythm(const Melody *melody, const NoteEvent *head, Ticks when)
{
    size_t i = melody_at(melody, when);
    if (i + HEAD - 1 >= melody->count)
        return false;
    for (size_t k = 0; k < HEAD; k++)
        if (melody->events[i + k].onset - when != head[k].onset - head[0].onset)
            return false;
    return true;
}

/* The statements of a match: how many of them the responder has already, the caller has again. */
static void compare_statements(const Melody *melodies, const Match *match, Novelty *out)
{
    const Melody *caller = &melodies[match->caller], *responder = &melodies[match->responder];
    uint32_t call = match->call_first, answer = match->answer_first;
    const NoteEvent *called, *answered, *last = NULL;
    double statements = 0;
    while (match_next_pair(melodies, match, &call, &answer, &called, &answered)) {
        bool begins = !last || (event_is_fresh(called) && event_is_fresh(answered)) || called->onset - last->onset >= match->lag;
        last = called;
        if (!begins || (size_t)(called - caller->events) + HEAD > caller->count)
            continue;
        statements++;
        out->ahead += has_rhythm(responder, called, called->onset);
        out->again += has_rhythm(caller, called, answered->onset);
    }
    if (statements > 0) {
        out->ahead /= statements;
        out->again /= statements;
    }
}

/* Both lines change hands: what one played under the call, the other plays under the answer. */
static double counter_line(const Melody *melodies, const Match *match)
{
    const Melody *under = &melodies[match->responder], *later = &melodies[match->caller];
    Ticks end = match->onset + match->lag < match->call_end ? match->onset + match->lag : match->call_end;
    double notes = 0, kept = 0;
    for (size_t i = melody_at(under, match->onset); i + 1 < under->count && under->events[i].onset < end; i++, notes++) {
        const NoteEvent *note = &under->events[i];
        size_t k = melody_at(later, note->onset + match->lag);
        kept += k + 1 < later->count && later->events[k].onset == note->onset + match->lag &&
                event_direction(note, note + 1) == event_direction(&later->events[k], &later->events[k + 1]);
    }
    return notes >= COUNTER_NOTES ? kept / notes : 0;
}

void novelty_of(const Melody *melodies, const RhythmIndex *rhythms, const Match *match, Ticks window, Novelty *out)
{
    const size_t who[] = {match->caller, match->responder};
    const Melody *caller = &melodies[match->caller];
    *out = (Novelty){.rare = 1};
    compare_statements(melodies, match, out);
    out->counter = counter_line(melodies, match);
    if (match->call_first + HEAD > caller->count)
        return;
    const NoteEvent *head = &caller->events[match->call_first];
    uint64_t key = rhythm_of(head);
    out->rare = 1 / (1 + times_around(rhythms, key, match, window) / RARE_HALF);
    for (int i = 0; i < 2; i++) {
        out->before[i] = has_rhythm(&melodies[who[i]], head, match->onset - match->lag);
        out->around[i] = 1 - 1 / (1 + times_around(rhythms, within(key, who[i]), match, window) / AROUND_HALF);
    }
}
