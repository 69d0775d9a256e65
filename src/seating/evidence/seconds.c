#include "seating/evidence/seconds.h"

enum {
    LEAST_ONSETS = 3,  /* fewer notes in a bar are no melody */
    LEAST_CHANGES = 2, /* repeated notes are accompaniment */
    LEAST_PITCHES = 3, /* so are two notes in turn */
    UPPER_LINE = 2,    /* from so many notes in a bar on, whoever lies above has the line, however slow: the rest is figuration */
    HELD_BACK = 16,    /* sounds before the bar that are asked whether they last into it */
    LEAST_BARS = 2     /* a single bar is an answer, which the exchanges tell already */
};

/* A group's bar in short. */
typedef struct BarVoice {
    int onsets, changes, pitches, highest; /* changes: notes that differ from the one before; highest: MIDI, -1 for silence */
} BarVoice;

/* The highest note that lasts into the bar; -1 for none. */
static int held_into(const Group *group, size_t from, const Bar *bar)
{
    int highest = -1;
    for (size_t back = 1; back <= HELD_BACK && back <= from; back++) {
        const GroupSound *sound = &group->sounds[from - back];
        if (sound->onset + sound->duration > bar->onset && sound->note->midi > highest)
            highest = sound->note->midi;
    }
    return highest;
}

static BarVoice hear_bar(const Group *group, const Bar *bar)
{
    size_t from = FIRST_FROM(group->sounds, group->sound_count, bar->onset);
    BarVoice voice = {.highest = held_into(group, from, bar)};
    bool heard[128] = {false};
    Ticks last_onset = -1;
    int last_pitch = -1;
    for (size_t i = from; i < group->sound_count; i++) {
        const GroupSound *sound = &group->sounds[i];
        if (sound->onset >= bar->onset + bar->length)
            break;
        if (sound->duration <= 0 || sound->note->midi < 0 || sound->onset == last_onset)
            continue; /* the top note of a chord comes first */
        voice.onsets++;
        voice.pitches += !heard[sound->note->midi & 127];
        heard[sound->note->midi & 127] = true;
        voice.changes += last_pitch >= 0 && sound->note->midi != last_pitch;
        voice.highest = sound->note->midi > voice.highest ? sound->note->midi : voice.highest;
        last_onset = sound->onset;
        last_pitch = sound->note->midi;
    }
    return voice;
}

/* A line over the seconds is the melody however slowly it moves; what moves under it is figuration. */
static bool seconds_lead(BarVoice first, BarVoice second)
{
    if (second.onsets < LEAST_ONSETS || second.changes < LEAST_CHANGES || second.pitches < LEAST_PITCHES)
        return false;
    return second.highest > first.highest && (first.onsets <= 1 || second.changes > first.changes);
}

/* Whether the winds, merged, have a line that lies as high. */
static bool winds_cover(const SectionMap *map, const Bar *bar, BarVoice second)
{
    int higher = 0;
    Ticks last = -1;
    for (size_t i = FIRST_FROM(map->others, map->other_count, bar->onset); i < map->other_count; i++) {
        const GroupSound *sound = &map->others[i];
        if (sound->onset >= bar->onset + bar->length)
            break;
        if (sound->duration > 0 && sound->note->midi >= second.highest && sound->onset != last) {
            higher++;
            last = sound->onset;
        }
    }
    return higher >= UPPER_LINE;
}

/* A soloist who lies as high has the melody. */
static bool soloist_covers(const SectionMap *map, const Bar *bar, BarVoice second)
{
    for (size_t i = 0; i < map->group_count; i++) {
        if (!map->groups[i].about.solo)
            continue;
        BarVoice solo = hear_bar(&map->groups[i], bar);
        if (solo.highest >= second.highest && solo.onsets >= UPPER_LINE)
            return true;
    }
    return false;
}

static bool is_melody_bar(const SectionMap *map, const Group *first, const Group *second, const Bar *bar)
{
    BarVoice two = hear_bar(second, bar);
    return two.onsets >= LEAST_ONSETS && seconds_lead(hear_bar(first, bar), two) && !winds_cover(map, bar, two) &&
           !soloist_covers(map, bar, two);
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
    BarSpan span = {0};
    bool open = false;
    double bars = 0;
    *share = 0;
    if (!first || !second)
        return SPZ_OK;
    for (size_t bar = 0; bar < movement->bar_count; bar++) {
        bool leads = is_melody_bar(map, first, second, &movement->bars[bar]);
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
