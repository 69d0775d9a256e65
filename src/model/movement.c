#include "model/movement.h"
#include <stdio.h>
#include <string.h>

int movement_bar_at(const Movement *movement, Ticks when)
{
    size_t next = FIRST_FROM(movement->bars, movement->bar_count, when + 1);
    return next ? (int)next - 1 : (movement->bar_count ? 0 : -1);
}

bool movement_ending_goes_on(const Movement *movement, size_t bar)
{
    size_t next = bar + 1;
    return next < movement->bar_count && movement->bars[next].ending == movement->bars[bar].ending && !movement->bars[next].ending_start;
}

long movement_part_of(const Movement *movement, const char *id)
{
    for (size_t i = 0; id && i < movement->part_count; i++)
        if (strcmp(movement->parts[i].id, id) == 0)
            return (long)i;
    return -1;
}

/* An upbeat, and the second half of a split bar, are counted from the end: the last beat of 4/4 is the fourth also when it stands alone. */
static Ticks missing_at_start(const Movement *movement, size_t index)
{
    const Bar *bar = &movement->bars[index];
    bool counts_from_end = index == 0 || bar->implicit;
    return counts_from_end && bar->length < bar->nominal ? bar->nominal - bar->length : 0;
}

Ticks movement_beat_in(const Movement *movement, int bar, Ticks when, Ticks *beat)
{
    *beat = bar >= 0 && movement->bars[bar].beat > 0 ? movement->bars[bar].beat : movement->per_crotchet;
    return bar < 0 ? *beat : when - movement->bars[bar].onset + missing_at_start(movement, (size_t)bar) + *beat;
}

Ticks movement_beat_at(const Movement *movement, Ticks when, Ticks *beat)
{
    return movement_beat_in(movement, movement_bar_at(movement, when), when, beat);
}

char *movement_beat_text(const Movement *movement, Ticks when, char text[TICKS_TEXT])
{
    Ticks beat, at = movement_beat_at(movement, when, &beat);
    return ticks_text(at, beat, text);
}

double movement_tempo_at(const Movement *movement, Ticks when)
{
    size_t next = FIRST_FROM(movement->tempos, movement->tempo_count, when + 1);
    return next ? movement->tempos[next - 1].rate : 0;
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

static const signed char semitones[7] = {0, 2, 4, 5, 7, 9, 11}; /* C D E F G A B */

/* Another name for a pitch whose transposed spelling needs more than a double sharp or flat: with a sharp or a flat, as it leaned. */
static spz_pitch respelled(const Note *note)
{
    static const signed char sharps[12] = {0, 0, 1, 1, 2, 3, 3, 4, 4, 5, 5, 6}, flats[12] = {0, 1, 1, 2, 2, 3, 4, 4, 5, 5, 6, 6};
    int in_octave = note->midi % 12, step = note->alter > 0 ? sharps[in_octave] : flats[in_octave];
    return (spz_pitch){.step = (signed char)step, .alter = (signed char)(in_octave - semitones[step]), .octave = (signed char)(note->midi / 12 - 1), .midi = note->midi};
}

spz_pitch pitch_of(const Note *note)
{
    if (note->midi >= 0 && (note->alter < -2 || note->alter > 2))
        return respelled(note);
    return (spz_pitch){.step = note->step, .alter = note->alter, .octave = note->octave, .midi = note->midi};
}

spz_pitch pitch_written_of(const Note *note)
{
    int step = note->written_place % 7, octave = note->written_place / 7, alter = note->written_alter - 4;
    int midi = note->midi < 0 ? -1 : (octave + 1) * 12 + semitones[step] + alter;
    return (spz_pitch){.step = (signed char)step, .alter = (signed char)alter, .octave = (signed char)octave, .midi = (short)midi};
}

char *note_pitch_text(const Note *note, char text[PITCH_TEXT])
{
    return spz_pitch_text(pitch_of(note), text);
}

char *spz_pitch_text(spz_pitch pitch, char text[SPZ_PITCH_TEXT])
{
    enum { ALTER_MOST = 4 };
    static const char *const alterations[2 * ALTER_MOST + 1] = {"bbbb", "bbb", "bb", "b", "", "#", "##", "###", "####"};
    if (pitch.midi < 0 || pitch.alter < -ALTER_MOST || pitch.alter > ALTER_MOST || pitch.step < 0 || pitch.step > 6)
        snprintf(text, SPZ_PITCH_TEXT, "unpitched");
    else
        snprintf(text, SPZ_PITCH_TEXT, "%c%s%d", "CDEFGAB"[pitch.step], alterations[pitch.alter + ALTER_MOST], pitch.octave);
    return text;
}

spz_fraction fraction_of(Ticks over, Ticks under)
{
    Ticks divisor = over ? ticks_common_divisor(over < 0 ? -over : over, under) : under;
    return (spz_fraction){over / divisor, under / divisor};
}
