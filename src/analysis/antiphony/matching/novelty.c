#include "analysis/antiphony/matching/novelty.h"

enum {
    HEAD = 3,             /* notes by whose rhythm a gesture is known */
    AROUND_HALF = 8,      /* times that count half in `around` */
    RARE_HALF = 16,       /* ... and in `rare` */
    COUNTER_NOTES = 3     /* notes under the call that make a counter-line */
};

/* One rhythm, in one melody or in all: where it begins. */
typedef struct Rhythm {
    uint64_t key;
    uint32_t first, count; /* of its onsets */
} Rhythm;

struct RhythmIndex {
    Rhythm *rhythms; /* found by their keys: 2^bits places, never all taken; a rhythm has the first free one from its key's on */
    unsigned bits;
    Ticks *onsets;   /* of each rhythm together, in order */
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

void rhythm_index_free(RhythmIndex *index)
{
    if (index) {
        memory_free(index->rhythms);
        memory_free(index->onsets);
    }
    memory_free(index);
}

/* The place of a rhythm; one without onsets where nobody has it. */
static Rhythm *rhythm_at(const RhythmIndex *index, uint64_t key)
{
    size_t most = ((size_t)1 << index->bits) - 1, at = (size_t)(key * 0x9E3779B97F4A7C15u >> (64 - index->bits));
    while (index->rhythms[at].count && index->rhythms[at].key != key)
        at = (at + 1) & most;
    return &index->rhythms[at];
}

static bool begins_rhythm(const Melody *melody, size_t i)
{
    return i + HEAD - 1 < melody->count && (melody->events[i].flags & (EVENT_ON_BEAT | EVENT_AFTER_REST));
}

static void count_rhythm(RhythmIndex *index, uint64_t key)
{
    Rhythm *rhythm = rhythm_at(index, key);
    rhythm->key = key;
    rhythm->count++;
}

/* Counts how often each rhythm begins, then gives it that room among the onsets. */
static void count_rhythms(RhythmIndex *index, const Melody *melodies, size_t melody_count)
{
    uint32_t room = 0;
    for (size_t m = 0; m < melody_count; m++)
        for (size_t i = 0; i < melodies[m].count; i++)
            if (begins_rhythm(&melodies[m], i)) {
                count_rhythm(index, rhythm_of(&melodies[m].events[i]));
                count_rhythm(index, within(rhythm_of(&melodies[m].events[i]), m));
            }
    for (size_t r = 0; r >> index->bits == 0; r++) {
        index->rhythms[r].first = room;
        room += index->rhythms[r].count;
    }
}

/* All melodies at once, in time order: `next` is where each stands, and `first` of a rhythm moves on to its last. */
static void place_onsets(RhythmIndex *index, const Melody *melodies, size_t melody_count, uint32_t *next)
{
    for (size_t m; (m = melody_earliest(melodies, melody_count, next)) < melody_count; next[m]++) {
        const NoteEvent *event = &melodies[m].events[next[m]];
        if (!begins_rhythm(&melodies[m], next[m]))
            continue;
        index->onsets[rhythm_at(index, rhythm_of(event))->first++] = event->onset;
        index->onsets[rhythm_at(index, within(rhythm_of(event), m))->first++] = event->onset;
    }
    for (size_t r = 0; r >> index->bits == 0; r++)
        index->rhythms[r].first -= index->rhythms[r].count;
}

spz_status rhythm_index_make(const Melody *melodies, size_t melody_count, RhythmIndex **out)
{
    size_t most = 1;
    RhythmIndex *index = *out = memory_zeroed(1, sizeof *index);
    uint32_t *next = memory_zeroed(melody_count, sizeof *next);
    for (size_t m = 0; m < melody_count; m++)
        most += 2 * melodies[m].count;
    if (index) {
        while (most >> index->bits)
            index->bits++;
        index->rhythms = memory_zeroed((size_t)1 << index->bits, sizeof *index->rhythms);
        index->onsets = memory_resize(NULL, most, sizeof *index->onsets);
    }
    bool room = next && index && index->rhythms && index->onsets;
    if (room) {
        count_rhythms(index, melodies, melody_count);
        place_onsets(index, melodies, melody_count, next);
    }
    memory_free(next);
    return room ? SPZ_OK : SPZ_NO_MEMORY;
}

static double times_between(const RhythmIndex *index, const Rhythm *rhythm, Ticks from, Ticks to)
{
    const Ticks *onsets = index->onsets + rhythm->first;
    return (double)(ticks_first_from(onsets, sizeof *onsets, rhythm->count, to) - ticks_first_from(onsets, sizeof *onsets, rhythm->count, from));
}

static double times_around(const RhythmIndex *index, uint64_t key, const Match *match, Ticks window)
{
    const Rhythm *rhythm = rhythm_at(index, key);
    return times_between(index, rhythm, match->onset - window, match->onset) + times_between(index, rhythm, match->end, match->end + window);
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
