#include "report/streams.h"
#include <string.h>

const spz_line *streams_line(const SectionMap *map, size_t part, const Note *note)
{
    const spz_line *best = NULL;
    int best_exactness = -1;
    const char *voice = map->movement->parts[part].voices[note->voice];
    for (size_t i = 0; i < map->line_count; i++) {
        const spz_line *line = &map->lines[i];
        if (line->part != part || (line->staff && line->staff != note->staff) || (line->voice && strcmp(line->voice, voice) != 0))
            continue;
        int exactness = (line->staff != 0) + 2 * (line->voice != NULL);
        if (exactness > best_exactness) {
            best = line;
            best_exactness = exactness;
        }
    }
    return best;
}

spz_status streams_written(const Movement *movement, size_t part, StreamRows *rows)
{
    SoundList sounds = {0};
    spz_status status = stream_of_part(movement, part, &sounds);
    for (size_t i = 0; i < sounds.count && !status; i++) {
        const Sound *sound = &sounds.at[i];
        StreamRow row = {sound->onset, sound->duration, sound->onset, sound->note, sound->part};
        if (!array_push(rows, row))
            status = SPZ_NO_MEMORY;
    }
    array_free(&sounds);
    return status;
}

/* A run of bars that are played as they stand on paper. */
typedef struct Stretch {
    Ticks first, end; /* on paper */
    Ticks played;     /* when it begins to sound */
} Stretch;

static Ticks bar_end(const Movement *movement, int32_t bar)
{
    return movement->bars[bar].onset + movement->bars[bar].length;
}

/* The stretch that begins at place `*place` of the playing order; moves `*place` behind it. */
static Stretch next_stretch(const Movement *movement, size_t *place, Ticks played)
{
    size_t at = *place;
    Stretch stretch = {movement->bars[movement->played[at]].onset, 0, played};
    while (at + 1 < movement->played_count && movement->played[at + 1] == movement->played[at] + 1)
        at++;
    stretch.end = bar_end(movement, movement->played[at]);
    *place = at + 1;
    return stretch;
}

static bool same_pitch_and_voice(const Note *a, const Note *b)
{
    return a->midi == b->midi && a->step == b->step && a->voice == b->voice && a->staff == b->staff;
}

/* A row of the stretch before (they are rows from `from` on) that sounds to its end and that the note takes up by a tie. */
static StreamRow *taken_up(StreamRows *rows, size_t from, const Note *note, Ticks now)
{
    for (size_t i = rows->count; i > from; i--) {
        StreamRow *row = &rows->at[i - 1];
        if (row->duration > 0 && row->onset + row->duration == now && (row->note->flags & NOTE_TIE_START) &&
            same_pitch_and_voice(row->note, note))
            return row;
    }
    return NULL;
}

static bool add_piece(StreamRows *rows, size_t from, const Sound *sound, const Stretch *stretch)
{
    Ticks end = sound->onset + sound->duration;
    bool held_in = sound->onset < stretch->first;
    Ticks begins = held_in ? stretch->first : sound->onset;
    Ticks ends = end > stretch->end ? stretch->end : end;
    bool tied_in = held_in || (begins == stretch->first && (sound->note->flags & NOTE_TIE_STOP));
    Ticks now = stretch->played + (begins - stretch->first);
    StreamRow *before = tied_in ? taken_up(rows, from, sound->note, now) : NULL;
    if (before) {
        before->duration += ends - begins;
        return true;
    }
    StreamRow row = {now, ends - begins, begins, sound->note, sound->part};
    return array_push(rows, row);
}

/* First sound that can reach into the stretch: sounds are in order of onset, `longest` is the longest of them. */
static size_t first_that_reaches(const SoundList *sounds, Ticks longest, Ticks first)
{
    size_t low = 0, high = sounds->count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        if (sounds->at[middle].onset + longest < first)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

static bool add_stretch(const SoundList *sounds, Ticks longest, const Stretch *stretch, StreamRows *rows, size_t from)
{
    for (size_t i = first_that_reaches(sounds, longest, stretch->first); i < sounds->count; i++) {
        const Sound *sound = &sounds->at[i];
        if (sound->onset >= stretch->end)
            break;
        bool begins_here = sound->onset >= stretch->first;
        bool reaches_in = sound->onset + sound->duration > stretch->first;
        if ((begins_here || reaches_in) && !add_piece(rows, from, sound, stretch))
            return false;
    }
    return true;
}

static Ticks longest_of(const SoundList *sounds)
{
    Ticks longest = 0;
    for (size_t i = 0; i < sounds->count; i++)
        longest = sounds->at[i].duration > longest ? sounds->at[i].duration : longest;
    return longest;
}

spz_status streams_played(const Movement *movement, size_t part, StreamRows *rows)
{
    SoundList sounds = {0};
    spz_status status = stream_of_part(movement, part, &sounds);
    Ticks longest = longest_of(&sounds), played = 0;
    size_t before = rows->count; /* rows of the stretch before begin here */
    for (size_t place = 0; place < movement->played_count && !status;) {
        Stretch stretch = next_stretch(movement, &place, played);
        size_t from = before;
        before = rows->count;
        if (!add_stretch(&sounds, longest, &stretch, rows, from))
            status = SPZ_NO_MEMORY;
        played += stretch.end - stretch.first;
    }
    array_free(&sounds);
    return status;
}
