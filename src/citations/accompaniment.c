#include "citations/accompaniment.h"
#include <math.h>
#include <stdlib.h>

/* A tune has so many pitches, and moves so many times; what has fewer is one by that share. So many note values are told apart. Common practice, no source. */
enum { TUNE_PITCHES = 5, TUNE_MOVES = 5, VALUES_MOST = 8 };

/* What one line plays, note by note. */
typedef struct Line {
    const SectionMap *map;
    spz_players dialogue;
    Ticks to;
    double sounding, pitch;
    size_t notes, shared, moves, pitches, values;
    Ticks value[VALUES_MOST];
    bool heard[128];
    Ticks onset, duration; /* of the note taken last */
    int midi;
} Line;

static bool is_shared(const Line *line)
{
    for (size_t g = 0; g < line->map->group_count && g < 64; g++) {
        const Group *group = &line->map->groups[g];
        if (!(line->dialogue >> g & 1))
            continue;
        for (size_t at = group_sound_at(group, line->onset); at < group->sound_count && group->sounds[at].onset == line->onset; at++)
            if (group->sounds[at].note->midi >= 0 && (group->sounds[at].note->midi - line->midi) % 12 == 0)
                return true;
    }
    return false;
}

static void count_value(Line *line)
{
    size_t i = 0;
    while (i < line->values && line->value[i] != line->duration)
        i++;
    if (i == line->values && i < VALUES_MOST)
        line->value[line->values++] = line->duration;
}

/* The note taken last is over where the next begins, or by its own length. */
static void end_note(Line *line, Ticks next)
{
    if (!line->notes)
        return;
    Ticks until = next - line->onset < line->duration ? next - line->onset : line->duration;
    line->sounding += (double)until;
    line->shared += is_shared(line);
    count_value(line);
}

static void take_note(Line *line, const GroupSound *sound)
{
    int midi = sound->note->midi;
    if (line->notes && sound->onset == line->onset) {
        line->midi = midi > line->midi ? midi : line->midi; /* the upper note of a chord */
        return;
    }
    end_note(line, sound->onset);
    line->moves += line->notes && midi != line->midi;
    line->pitches += !line->heard[midi & 127];
    line->heard[midi & 127] = true;
    line->pitch += midi;
    line->notes++;
    line->onset = sound->onset;
    line->duration = sound->duration;
    line->midi = midi;
}

static bool is_heard(const GroupSound *sound, Ticks from, Ticks to)
{
    return sound->onset >= from && sound->onset < to && sound->duration > 0 && sound->note->midi >= 0;
}

static double tune_in(Line *line, Ticks from)
{
    if (!line->notes)
        return 0;
    end_note(line, line->to);
    double own = 1 - (double)line->shared / (double)line->notes, sounding = fmin(1, line->sounding / (double)(line->to - from));
    return sounding * own * fmin(1, (double)line->pitches / TUNE_PITCHES) * fmin(1, (double)line->moves / TUNE_MOVES);
}

static void weigh(Line *line, Ticks from, double height, OtherTune *out)
{
    double tune = tune_in(line, from);
    if (tune > out->most) {
        out->most = tune;
        out->values = line->values;
    }
    if (tune > out->above && line->pitch / (double)line->notes >= height)
        out->above = tune;
}

/* The mean pitch of all their notes. */
static double height_of(const SectionMap *map, spz_players dialogue, Ticks from, Ticks to)
{
    double sum = 0, notes = 0;
    for (size_t g = 0; g < map->group_count && g < 64; g++) {
        const Group *group = &map->groups[g];
        for (size_t at = dialogue >> g & 1 ? group_sound_at(group, from) : group->sound_count; at < group->sound_count && group->sounds[at].onset < to; at++)
            if (is_heard(&group->sounds[at], from, to)) {
                sum += group->sounds[at].note->midi;
                notes++;
            }
    }
    return notes > 0 ? sum / notes : 0;
}

OtherTune tune_of_others(const SectionMap *map, spz_players dialogue, Ticks from, Ticks to)
{
    OtherTune out = {0};
    double height = height_of(map, dialogue, from, to);
    for (size_t g = 0; g < map->group_count && g < 64 && from < to; g++) {
        const Group *group = &map->groups[g];
        Line line = {.map = map, .dialogue = dialogue, .to = to};
        for (size_t at = dialogue >> g & 1 ? group->sound_count : group_sound_at(group, from); at < group->sound_count && group->sounds[at].onset < to; at++)
            if (is_heard(&group->sounds[at], from, to))
                take_note(&line, &group->sounds[at]);
        weigh(&line, from, height, &out);
    }
    for (size_t part = 0; map->movement && part < map->movement->part_count && map->other_count && from < to; part++) {
        Line line = {.map = map, .dialogue = dialogue, .to = to};
        for (size_t at = FIRST_FROM(map->others, map->other_count, from); at < map->other_count && map->others[at].onset < to; at++)
            if (map->others[at].part == part && is_heard(&map->others[at], from, to))
                take_note(&line, &map->others[at]);
        weigh(&line, from, height, &out);
    }
    return out;
}
