#include "analysis/melody/doublings.h"

/* Common practice of listening, graded by ear on scores; the order of the values matters more than their size. */
static const struct {
    double rest, held, long_note, twice, repeated, moving;
} quiet = {
    .rest = 1.0,
    .held = 0.9,      /* a held note leaves the foreground after its onset */
    .long_note = 0.7, /* a new note three times as long as the window: a harmony, not a gesture */
    .twice = 0.3,     /* twice as long: half a harmony */
    .repeated = 0.5, /* repeated pitch or tremolo: accompaniment, but heard */
    .moving = 0.05,
};

static bool on_beat(const Movement *movement, const NoteEvent *event)
{
    const Bar *bar = &movement->bars[event->bar];
    Ticks beat = bar->beat > 0 ? bar->beat : movement->per_crotchet;
    return (event->onset - bar->onset) % beat == 0;
}

static NoteEvent event_from(const Movement *movement, const GroupSound *sound)
{
    const Note *note = sound->note;
    NoteEvent event = {.onset = sound->onset, .end = sound->onset + sound->duration, .next = movement->length, .sound = sound,
                       .bar = note->bar, .midi = note->midi, .place = (int16_t)(7 * note->octave + note->step), .dynamic = note->dynamic};
    if (note->flags & NOTE_TREMOLO)
        event.flags |= EVENT_TREMOLO;
    if (note->flags & NOTE_PIZZICATO)
        event.flags |= EVENT_PIZZICATO;
    if (on_beat(movement, &event))
        event.flags |= EVENT_ON_BEAT;
    return event;
}

static void link_to_previous(NoteEvent *event, NoteEvent *before)
{
    Ticks length = before->end - before->onset;
    before->next = event->onset;
    if (before->end > event->onset)
        before->end = event->onset;
    bool rest = before->end < event->onset;
    if (rest)
        event->flags |= EVENT_AFTER_REST;
    else if (before->midi == event->midi)
        event->flags |= EVENT_REPEATED;
    if (length >= 2 * (event->end - event->onset))
        event->flags |= EVENT_AFTER_LONG;
}

static bool sounds(const GroupSound *sound)
{
    return sound->duration > 0 && sound->note->midi >= 0;
}

/* Where two lines of a divided section begin together the higher is heard, unless it stands still over one that moves. */
static const GroupSound *heard_at(const SectionMap *map, const Group *group, size_t at)
{
    const GroupSound *top = &group->sounds[at];
    if (top->duration < 2 * map->movement->per_crotchet)
        return top;
    for (size_t i = at + 1; i < group->sound_count && group->sounds[i].onset == top->onset; i++) {
        const GroupSound *other = &group->sounds[i];
        if (sounds(other) && other->line != top->line && top->duration >= 3 * other->duration)
            return other;
    }
    return top;
}

/* Whether a sound begins beneath a note of another line of its section that was there before and lasts longer, up to a semibreve: it
 * doesn't end that note. */
static bool lies_beneath(const SectionMap *map, const NoteEvent *before, Ticks before_end, const GroupSound *sound)
{
    Ticks held = before_end - before->onset;
    return before->sound->line != sound->line && before->midi > sound->note->midi && before_end > sound->onset && sound->duration < held &&
           held <= 4 * map->movement->per_crotchet;
}

static bool fill(Melody *melody, const SectionMap *map, Arena *arena)
{
    const Group *group = melody->group;
    melody->events = arena_take(arena, group->sound_count, sizeof *melody->events);
    if (!melody->events)
        return false;
    for (size_t i = 0; i < group->sound_count; i++) {
        if (!sounds(&group->sounds[i]))
            continue;
        NoteEvent *before = melody->count ? &melody->events[melody->count - 1] : NULL;
        if (before && before->onset == group->sounds[i].onset)
            continue; /* sorted from the top: what is heard of them was taken with the highest */
        const GroupSound *sound = heard_at(map, group, i);
        if (before && lies_beneath(map, before, before->onset + before->sound->duration, sound))
            continue;
        NoteEvent event = event_from(map->movement, sound);
        if (before)
            link_to_previous(&event, before);
        else
            event.flags |= EVENT_AFTER_REST;
        melody->events[melody->count++] = event;
    }
    return true;
}

/* Notes are looked up by time all the time: where to look first, by the crotchet. */
static bool index_by_time(Melody *melody, Ticks unit, Arena *arena)
{
    if (melody->count == 0)
        return true;
    Ticks first = melody->events[0].onset;
    size_t units = (size_t)((melody->events[melody->count - 1].onset - first) / unit) + 1, i = 0;
    melody->unit = unit;
    melody->by_time = arena_take(arena, units + 1, sizeof *melody->by_time);
    for (size_t u = 0; melody->by_time && u <= units; u++) {
        while (i < melody->count && melody->events[i].onset < first + (Ticks)u * unit)
            i++;
        melody->by_time[u] = (uint32_t)i;
    }
    return melody->by_time != NULL;
}

/* Soloists with less than a tenth of the notes of the busiest group step out of their section only for a moment. */
static void mark_passing_solos(const SectionMap *map, Melody *melodies)
{
    size_t most = 0;
    for (size_t i = 0; i < map->group_count; i++)
        if (melodies[i].count > most)
            most = melodies[i].count;
    for (size_t i = 0; i < map->group_count; i++)
        melodies[i].passing_solo = melodies[i].group->about.solo && melodies[i].count * 10 < most;
}

Melody *melodies_of(const SectionMap *map, Arena *arena)
{
    Melody *melodies = arena_take(arena, map->group_count, sizeof *melodies);
    for (size_t i = 0; melodies && i < map->group_count; i++) {
        melodies[i].group = &map->groups[i];
        melodies[i].group_index = i;
        if (!fill(&melodies[i], map, arena) || !index_by_time(&melodies[i], map->movement->per_crotchet, arena))
            return NULL;
    }
    if (melodies) {
        doublings_mark(map, melodies);
        mark_passing_solos(map, melodies);
    }
    return melodies;
}

size_t melody_at(const Melody *melody, Ticks when)
{
    if (!melody->by_time || when <= melody->events[0].onset)
        return FIRST_FROM(melody->events, melody->count, when);
    if (when > melody->events[melody->count - 1].onset)
        return melody->count;
    const uint32_t *around = &melody->by_time[(when - melody->events[0].onset) / melody->unit];
    return around[0] + FIRST_FROM(melody->events + around[0], around[1] - around[0], when);
}

const NoteEvent *melody_note_at(const Melody *melody, Ticks when)
{
    size_t at = melody_at(melody, when);
    return at < melody->count && melody->events[at].onset == when ? &melody->events[at] : NULL;
}

size_t melody_earliest(const Melody *melodies, size_t count, const uint32_t next[])
{
    size_t best = count;
    Ticks earliest = INT64_MAX;
    for (size_t i = 0; i < count; i++)
        if (next[i] < melodies[i].count && melodies[i].events[next[i]].onset < earliest) {
            earliest = melodies[i].events[next[i]].onset;
            best = i;
        }
    return best;
}

static double quiet_of_event(const NoteEvent *event, Ticks window)
{
    if (event->next - event->onset >= 3 * window)
        return quiet.long_note;
    bool trembles = (event->flags & EVENT_TREMOLO) && event->next - event->onset > window;
    if (trembles || (event->flags & EVENT_REPEATED))
        return quiet.repeated;
    if (event->next - event->onset >= 2 * window)
        return quiet.twice;
    return quiet.moving;
}

double melody_quietness(const Melody *melody, Ticks from, Ticks to)
{
    size_t i = melody_at(melody, from);
    if (i == melody->count || melody->events[i].onset >= to)
        return i > 0 && melody->events[i - 1].end > from ? quiet.held : quiet.rest;
    double least = 1.0;
    for (; i < melody->count && melody->events[i].onset < to; i++) {
        double q = quiet_of_event(&melody->events[i], to - from);
        if (q < least)
            least = q;
    }
    return least;
}
