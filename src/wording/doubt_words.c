#include "wording/doubt_words.h"
#include "wording/phrase.h"
#include "support/text/ascii.h"
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

_Static_assert(PHRASE_FAULT_HALL_WITHOUT_SETTINGS - PHRASE_FAULT_BRACKET_NOT_OPENED == SPZ_FAULT_HALL_WITHOUT_SETTINGS - SPZ_FAULT_BRACKET_NOT_OPENED,
               "every fault has its phrase, in the order of status.h");
enum { FRACTION_TEXT = 48, ALTERATIONS = 5 /* from two flats to two sharps */, OCTAVES = PHRASE_PITCH_OCTAVE_9 - PHRASE_PITCH_OCTAVE_0 + 1 };

void say_pitch(Buffer *out, spz_language language, spz_pitch pitch)
{
    bool known = pitch.midi >= 0 && pitch.step >= 0 && pitch.step < 7 && pitch.alter >= -2 && pitch.alter <= 2 && pitch.octave >= 0 && pitch.octave < OCTAVES;
    if (!known) {
        buffer_puts(out, phrase_text(language, PHRASE_PITCH_NONE));
        return;
    }
    char name[16];
    const char *names = phrase_text(language, PHRASE_PITCH_NAMES);
    for (int skip = pitch.step * ALTERATIONS + pitch.alter + ALTERATIONS / 2; skip > 0; skip--)
        names += strcspn(names, " ") + 1;
    snprintf(name, sizeof name, "%.*s", (int)strcspn(names, " "), names);
    if (pitch.octave >= atoi(phrase_text(language, PHRASE_PITCH_SMALL_FROM)))
        name[0] = (char)ascii_lower((unsigned char)name[0]);
    SAY(out, language, (Phrase)(PHRASE_PITCH_OCTAVE_0 + pitch.octave), slot_text("name", name));
}

/* '4', '7/2'; counted as a number by the words around it. */
static Slot slot_fraction(const char *name, spz_fraction fraction, char text[FRACTION_TEXT])
{
    snprintf(text, FRACTION_TEXT, fraction.under == 1 ? "%" PRId64 : "%" PRId64 "/%" PRId64, fraction.over, fraction.under);
    Slot slot = slot_text(name, text);
    slot.number = fraction.under ? (double)fraction.over / (double)fraction.under : 0;
    return slot;
}

void say_doubt_bars(Buffer *out, const spz_doubt *doubt)
{
    buffer_puts(out, doubt->bar);
    if (strcmp(doubt->bar, doubt->last_bar) != 0)
        buffer_printf(out, "-%s", doubt->last_bar);
}

void say_doubt(Buffer *out, spz_language language, const spz_doubt *doubt)
{
    char holds[FRACTION_TEXT], asks[FRACTION_TEXT];
    Buffer pitch = {0};
    bool several = doubt->fault == SPZ_FAULT_OUT_OF_RANGE && doubt->count > 1;
    bool lapses = doubt->fault == SPZ_FAULT_DIVISION_OPEN && doubt->other && *doubt->other;
    Phrase phrase = several ? PHRASE_DOUBT_OUT_OF_RANGE_SEVERAL : lapses ? PHRASE_DOUBT_DIVISION_LAPSES : (Phrase)(PHRASE_FAULT_BRACKET_NOT_OPENED + (int)doubt->fault - SPZ_FAULT_BRACKET_NOT_OPENED);
    if (doubt->fault <= SPZ_NO_FAULT || doubt->fault >= SPZ_FAULT_COUNT)
        return;
    say_pitch(&pitch, language, doubt->pitch);
    SAY(out, language, phrase, slot_text("name", doubt->name), slot_text("other", doubt->other), slot_number("count", doubt->count),
        slot_number("of", doubt->of), slot_fraction("holds", doubt->holds, holds), slot_fraction("asks", doubt->asks, asks),
        slot_text("pitch", pitch.text), slot_text("instrument", phrase_text(language, (Phrase)(PHRASE_INSTRUMENT_VIOLIN + (int)doubt->range))));
    buffer_let_go(out, &pitch);
}
