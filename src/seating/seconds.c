#include "seating/seconds.h"

enum {
    LEAST_ONSETS = 3,  /* fewer notes in a bar are no melody */
    LEAST_PITCHES = 2, /* repeated notes are accompaniment */
    LEAST_BARS = 2     /* a single bar is an answer, which the exchanges tell already */
};

/* A group's bar in short. */
typedef struct BarVoice {
    int onsets, changes, highest; /* changes: notes that differ from the one before; highest: MIDI, -1 for silence */
} BarVoice;

static BarVoice hear_bar(const Group *group, size_t *at, Ticks end)
{
    BarVoice voice = {0, 0, -1};
    Ticks last_onset = -1;
    int last_pitch = -1;
    for (; *at < group->sound_count && group->sounds[*at].onset < end; (*at)++) {
        const GroupSound *sound = &group->sounds[*at];
        if (sound->duration <= 0 || sound->note->midi < 0 || sound->onset == last_onset)
            continue; /* the top note of a chord comes first */
        voice.onsets++;
        voice.changes += last_pitch >= 0 && sound->note->midi != last_pitch;
        voice.highest = sound->note->midi > voice.highest ? sound->note->midi : voice.highest;
        last_onset = sound->onset;
        last_pitch = sound->note->midi;
    }
    return voice;
}

static bool seconds_lead(BarVoice first, BarVoice second)
{
    if (second.onsets < LEAST_ONSETS || second.changes < LEAST_PITCHES)
        return false;
    return first.onsets <= 1 || (second.highest > first.highest && second.changes > first.changes);
}

/* Whether another voice covers the bar: a wind or solo part that lies higher and moves as much. */
static bool is_covered(const SectionMap *map, size_t *at, Ticks end, BarVoice second)
{
    int higher = 0;
    Ticks last = -1;
    for (; *at < map->other_count && map->others[*at].onset < end; (*at)++) {
        const GroupSound *sound = &map->others[*at];
        if (sound->duration > 0 && sound->note->midi >= second.highest && sound->onset != last) {
            higher++;
            last = sound->onset;
        }
    }
    return higher >= second.onsets;
}

static bool keep_span(SpanList *spans, BarSpan span, double *bars)
{
    if (span.last + 1 - span.first < LEAST_BARS)
        return true;
    *bars += (double)(span.last + 1 - span.first);
    return array_push(spans, span);
}

spz_status seconds_find_melody(const SectionMap *map, SpanList *spans, double *share)
{
    const Group *first = section_map_group(map, SPZ_VN1, 0), *second = section_map_group(map, SPZ_VN2, 0);
    const Movement *movement = map->movement;
    size_t at_first = 0, at_second = 0, at_other = 0;
    BarSpan span = {0};
    bool open = false;
    double bars = 0;
    *share = 0;
    if (!first || !second)
        return SPZ_OK;
    for (size_t bar = 0; bar < movement->bar_count; bar++) {
        Ticks end = movement->bars[bar].onset + movement->bars[bar].length;
        BarVoice one = hear_bar(first, &at_first, end), two = hear_bar(second, &at_second, end);
        bool covered = is_covered(map, &at_other, end, two);
        bool leads = !covered && seconds_lead(one, two);
        if (leads && !open)
            span.first = bar;
        if (leads)
            span.last = bar;
        if (open && !leads && !keep_span(spans, span, &bars))
            return SPZ_NO_MEMORY;
        open = leads;
    }
    if (open && !keep_span(spans, span, &bars))
        return SPZ_NO_MEMORY;
    *share = movement->bar_count ? bars / (double)movement->bar_count : 0;
    return SPZ_OK;
}
