#include "model/movement.h"
#include "support/memory.h"
#include <stdio.h>
#include <string.h>

int movement_bar_at(const Movement *movement, Ticks when)
{
    size_t low = 0, high = movement->bar_count;
    while (low < high) { /* first bar that starts after `when` */
        size_t middle = low + (high - low) / 2;
        if (movement->bars[middle].onset <= when)
            low = middle + 1;
        else
            high = middle;
    }
    return low ? (int)low - 1 : (movement->bar_count ? 0 : -1);
}

/* An upbeat, and the second half of a split bar, are counted from the end: the last beat of 4/4 is the fourth also when it stands alone. */
static Ticks missing_at_start(const Movement *movement, size_t index)
{
    const Bar *bar = &movement->bars[index];
    bool counts_from_end = index == 0 || bar->implicit;
    return counts_from_end && bar->length < bar->nominal ? bar->nominal - bar->length : 0;
}

Ticks movement_beat_at(const Movement *movement, Ticks when, Ticks *beat)
{
    int index = movement_bar_at(movement, when);
    *beat = index >= 0 && movement->bars[index].beat > 0 ? movement->bars[index].beat : movement->per_crotchet;
    return index < 0 ? *beat : when - movement->bars[index].onset + missing_at_start(movement, (size_t)index) + *beat;
}

char *movement_beat_text(const Movement *movement, Ticks when, char text[TICKS_TEXT])
{
    Ticks beat, at = movement_beat_at(movement, when, &beat);
    return ticks_text(at, beat, text);
}

double movement_tempo_at(const Movement *movement, Ticks when)
{
    size_t low = 0, high = movement->tempo_count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        if (movement->tempos[middle].onset <= when)
            low = middle + 1;
        else
            high = middle;
    }
    return low ? movement->tempos[low - 1].rate : 0;
}

const char *movement_letter_at(const Movement *movement, int bar, int *after)
{
    *after = 0;
    for (int at = bar < (int)movement->bar_count ? bar : (int)movement->bar_count - 1; at >= 0; at--) {
        if (movement->bars[at].rehearsal)
            return movement->bars[at].rehearsal;
        *after += !movement->bars[at].implicit;
    }
    *after = 0;
    return "";
}

char *movement_rehearsal_text(const Movement *movement, int bar, char text[REHEARSAL_TEXT])
{
    int after;
    const char *letter = movement_letter_at(movement, bar, &after);
    if (after)
        snprintf(text, REHEARSAL_TEXT, "%.40s+%d", letter, after);
    else
        snprintf(text, REHEARSAL_TEXT, "%.40s", letter);
    return text;
}

char *note_pitch_text(const Note *note, char text[PITCH_TEXT])
{
    static const char *const alterations[5] = {"bb", "b", "", "#", "##"};
    if (note->midi < 0 || note->alter < -2 || note->alter > 2 || note->step < 0 || note->step > 6)
        snprintf(text, PITCH_TEXT, "unpitched");
    else
        snprintf(text, PITCH_TEXT, "%c%s%d", "CDEFGAB"[note->step], alterations[note->alter + 2], note->octave);
    return text;
}

spz_pitch pitch_of(const Note *note)
{
    return (spz_pitch){.step = note->step, .alter = note->alter, .octave = note->octave, .midi = note->midi};
}

char *spz_pitch_text(spz_pitch pitch, char text[SPZ_PITCH_TEXT])
{
    Note note = {.step = pitch.step, .alter = pitch.alter, .octave = pitch.octave, .midi = pitch.midi};
    return note_pitch_text(&note, text);
}

spz_fraction fraction_of(Ticks over, Ticks under)
{
    Ticks divisor = over ? ticks_common_divisor(over < 0 ? -over : over, under) : under;
    return (spz_fraction){over / divisor, under / divisor};
}

/* The views of score.h. */
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

size_t spz_movement_bars(const spz_movement *movement)
{
    return movement->bar_count;
}

const char *spz_movement_bar_number(const spz_movement *movement, size_t bar)
{
    return bar < movement->bar_count ? movement->bars[bar].number : NULL;
}

size_t spz_movement_parts(const spz_movement *movement)
{
    return movement->part_count;
}

const char *spz_movement_part_name(const spz_movement *movement, size_t part)
{
    return part < movement->part_count ? movement->parts[part].name : NULL;
}

int spz_movement_year(const spz_movement *movement)
{
    return movement->year;
}
