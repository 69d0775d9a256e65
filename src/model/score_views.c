/* score_views.c - what score.h shows of the model. */
#include "model/stream.h"
#include "support/memory.h"
#include "support/path.h"
#include <string.h>
#include <stdio.h>

void spz_score_free(spz_score *score)
{
    if (!score)
        return;
    Arena arena = score->arena; /* the score itself may live outside it */
    arena_release(&arena);
    memory_free(score);
}

const char *spz_score_file(const spz_score *score)
{
    return score->file;
}

size_t spz_score_movement_count(const spz_score *score)
{
    return score->movement_count;
}

const spz_movement *spz_score_movement(const spz_score *score, size_t index)
{
    return index < score->movement_count ? &score->movements[index] : NULL;
}

const char *spz_movement_title(const spz_movement *movement)
{
    return movement->title;
}

const char *spz_movement_file(const spz_movement *movement)
{
    return movement->file;
}

const char *movement_part_name(const Movement *movement, size_t part, char text[PART_PLACE_TEXT])
{
    const char *name = movement->parts[part].name;
    snprintf(text, PART_PLACE_TEXT, "part %zu", part + 1);
    return name && name[strspn(name, " \t\n")] ? name : text;
}

const char *movement_score_name(const Movement *movement)
{
    return path_name(movement->score ? movement->score : movement->file);
}

const char *spz_movement_composer(const spz_movement *movement)
{
    return movement->composer;
}

int spz_movement_year(const spz_movement *movement)
{
    return movement->year;
}

spz_ticks spz_movement_per_crotchet(const spz_movement *movement)
{
    return movement->per_crotchet;
}

spz_ticks spz_movement_length(const spz_movement *movement)
{
    return movement->length;
}

double spz_movement_tempo(const spz_movement *movement, spz_ticks when)
{
    return movement_tempo_at(movement, when);
}

size_t spz_movement_bars(const spz_movement *movement)
{
    return movement->bar_count;
}

const char *spz_movement_bar_number(const spz_movement *movement, size_t bar)
{
    return bar < movement->bar_count ? movement->bars[bar].number : NULL;
}

spz_bar spz_movement_bar(const spz_movement *movement, size_t bar)
{
    if (bar >= movement->bar_count)
        return (spz_bar){0};
    const Bar *of = &movement->bars[bar];
    return (spz_bar){.number = of->number, .letter = of->rehearsal, .onset = of->onset, .length = of->length, .nominal = of->nominal,
                     .beat = of->beat, .fifths = of->fifths, .counted = !of->implicit};
}

size_t spz_movement_bar_at(const spz_movement *movement, spz_ticks when)
{
    int bar = movement_bar_at(movement, when);
    return bar > 0 ? (size_t)bar : 0;
}

size_t spz_movement_played(const spz_movement *movement)
{
    return movement->played_count;
}

spz_played_bar spz_movement_played_bar(const spz_movement *movement, size_t index)
{
    if (index >= movement->played_count)
        return (spz_played_bar){0};
    return (spz_played_bar){(size_t)movement->played[index], movement->played_pass[index]};
}

size_t spz_movement_parts(const spz_movement *movement)
{
    return movement->part_count;
}

const char *spz_movement_part_name(const spz_movement *movement, size_t part)
{
    return part < movement->part_count ? movement->parts[part].name : NULL;
}

spz_part spz_movement_part(const spz_movement *movement, size_t part)
{
    if (part >= movement->part_count)
        return (spz_part){0};
    const Part *of = &movement->parts[part];
    return (spz_part){.id = of->id, .name = of->name, .abbreviation = of->abbreviation, .groups = of->groups, .instrument = of->instrument,
                      .sound = of->sound, .midi_program = of->midi_program, .staves = of->staves, .directions = of->direction_count};
}

const char *spz_dynamic_name(spz_dynamic dynamic)
{
    static const char *const names[SPZ_DYNAMIC_COUNT] = {"", "pppp", "ppp", "pp", "p", "mp", "mf", "f", "ff", "fff", "ffff"};
    return (int)dynamic >= 0 && dynamic < SPZ_DYNAMIC_COUNT ? names[dynamic] : "";
}

static spz_fraction beat_in(const Movement *movement, int bar, Ticks when)
{
    Ticks beat, at = movement_beat_in(movement, bar, when, &beat);
    return fraction_of(at, beat);
}

spz_direction spz_movement_direction(const spz_movement *movement, size_t part, size_t index)
{
    if (part >= movement->part_count || index >= movement->parts[part].direction_count)
        return (spz_direction){0};
    const Direction *of = &movement->parts[part].directions[index];
    spz_direction direction = {.kind = (spz_direction_kind)of->kind, .onset = of->onset, .bar = (size_t)of->bar,
                               .beat = beat_in(movement, of->bar, of->onset), .staff = of->staff, .text = of->text ? of->text : "",
                               .value = of->value, .line = (long)of->line};
    if (of->kind == DIRECTION_DYNAMIC)
        direction.dynamic = (spz_dynamic)of->value, direction.value = 0;
    if (of->kind == DIRECTION_TEMPO)
        direction.tempo = of->rate;
    return direction;
}

struct spz_notes {
    size_t count;
    spz_note at[];
};

static spz_note view_of(const Movement *movement, const Sound *sound)
{
    const Note *note = sound->note;
    return (spz_note){.part = sound->part, .bar = (size_t)note->bar, .beat = beat_in(movement, note->bar, note->onset),
                      .onset = sound->onset, .duration = sound->duration, .staff = note->staff,
                      .voice = movement->parts[sound->part].voices[note->voice], .sounding = pitch_of(note), .written = pitch_written_of(note),
                      .cents = note->cents, .marks = note->flags, .dynamic = (spz_dynamic)note->dynamic, .passes = note->passes,
                      .line = (long)note->line};
}

static spz_status written_notes(const Movement *movement, size_t part, SoundList *out)
{
    const Part *of = &movement->parts[part];
    for (size_t i = 0; i < of->note_count; i++) {
        Sound sound = {.onset = of->notes[i].onset, .duration = of->notes[i].duration, .note = &of->notes[i], .part = (uint16_t)part};
        if (!array_push(out, sound))
            return SPZ_NO_MEMORY;
    }
    return SPZ_OK;
}

spz_status spz_notes_make(const spz_movement *movement, size_t part, spz_notes_as as, spz_notes **out)
{
    static spz_status (*const gather[])(const Movement *, size_t, SoundList *) = {
        [SPZ_NOTES_WRITTEN] = written_notes, [SPZ_NOTES_HEARD] = stream_of_part, [SPZ_NOTES_PLAYED] = stream_of_part_played};
    SoundList sounds = {NULL, 0, 0};
    *out = NULL;
    if (part >= movement->part_count || (int)as < 0 || (size_t)as >= sizeof gather / sizeof *gather)
        return SPZ_BAD_ARGUMENT;
    spz_status status = gather[as](movement, part, &sounds);
    spz_notes *notes = status == SPZ_OK ? memory_get(sizeof *notes + sounds.count * sizeof *notes->at) : NULL;
    if (notes) {
        notes->count = sounds.count;
        for (size_t i = 0; i < sounds.count; i++)
            notes->at[i] = view_of(movement, &sounds.at[i]);
    }
    array_free(&sounds);
    *out = notes;
    return notes ? SPZ_OK : SPZ_NO_MEMORY;
}

void spz_notes_free(spz_notes *notes)
{
    memory_free(notes);
}

size_t spz_notes_count(const spz_notes *notes)
{
    return notes->count;
}

const spz_note *spz_notes_at(const spz_notes *notes, size_t index)
{
    return index < notes->count ? &notes->at[index] : NULL;
}
