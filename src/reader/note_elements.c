/* note_elements.c - <note>, <backup>, <forward>: where a note stands, how long it lasts, what it sounds.
 *
 * MusicXML moves a cursor through the bar: a note moves it by its duration, a chord note starts where the note before it did, grace notes
 * don't move it, backup and forward move it alone. */
#include "reader/reader.h"
#include <limits.h>
#include <stdlib.h>
#include <string.h>

static const int semitones[7] = {0, 2, 4, 5, 7, 9, 11}; /* C D E F G A B */

enum { ABSENT = INT_MIN, VOICE_ABSENT = UINT16_MAX, HIGHEST_MIDI = 150, UNMEASURED = 9 };

void read_note_start(Reader *reader)
{
    NoteDraft *note = &reader->note;
    memset(note, 0, sizeof *note);
    note->line = reader_line(reader);
    note->step = note->octave = ABSENT;
    note->voice = VOICE_ABSENT;
    reader->duration = (Decimal){0, 1, false, false};
    reader->direction.count = 0;
    if (reader_attribute_is(reader, ATTRIBUTE_PIZZICATO, "yes"))
        note->flags = NOTE_PIZZICATO;
    char passes[64];
    if (reader_attribute(reader, ATTRIBUTE_TIME_ONLY, passes, sizeof passes))
        note->passes = passes_in(passes);
    if (reader->place.bar < 0)
        reader_fail(reader, SPZ_NOT_MUSICXML, "a note stands outside the bars");
}

void read_grace_start(Reader *reader)
{
    reader->note.flags |= NOTE_GRACE;
    char text[16];
    if (reader_attribute(reader, ATTRIBUTE_STEAL_PREVIOUS, text, sizeof text))
        reader->note.steals_before = true;
}

void read_cue_start(Reader *reader)
{
    reader->note.flags |= NOTE_CUE;
}

void read_chord_start(Reader *reader)
{
    reader->note.flags |= NOTE_CHORD;
}

void read_rest_start(Reader *reader)
{
    reader->note.rest = true;
}

void read_unpitched_start(Reader *reader)
{
    reader->note.flags |= NOTE_UNPITCHED;
}

/* A pitch that can't be read leaves its note out; where a rest or a drum is written is of no matter. */
static void doubt_of_pitch(Reader *reader, spz_fault fault, const char *text)
{
    if (reader_parent(reader) != ELEMENT_PITCH)
        return;
    reader->note.unreadable = true;
    reader_doubt(reader, fault, text);
}

void read_step_end(Reader *reader)
{
    static const signed char steps[7] = {5, 6, 0, 1, 2, 3, 4}; /* A B C D E F G */
    const char *text = reader_text(reader);
    if (text[0] >= 'A' && text[0] <= 'G' && text[1] == '\0')
        reader->note.step = steps[text[0] - 'A'];
    else
        doubt_of_pitch(reader, SPZ_FAULT_NOTE_NAME, text);
    if (reader_parent(reader) == ELEMENT_PITCH)
        reader->note.pitched = true;
}

void read_alter_end(Reader *reader)
{
    Decimal alter;
    const char *text = reader_text(reader);
    if (!number_decimal(text, &alter) || llabs(alter.digits) > 4 * alter.scale)
        reader_doubt(reader, SPZ_FAULT_ALTER, text);
    else
        reader->note.alter = (int)(alter.digits * 100 / alter.scale);
}

void read_octave_end(Reader *reader)
{
    int64_t octave = 0;
    const char *text = reader_text(reader);
    if (!number_whole(text, &octave) || octave < 0 || octave > 9)
        doubt_of_pitch(reader, SPZ_FAULT_OCTAVE, text);
    else
        reader->note.octave = (int)octave;
}

void read_duration_end(Reader *reader)
{
    const char *text = reader_text(reader);
    if (number_decimal(text, &reader->duration) && reader->duration.digits >= 0) {
        if (reader->duration.rounded)
            reader_doubt(reader, SPZ_FAULT_DURATION_ROUNDED, text);
        return;
    }
    reader_doubt(reader, SPZ_FAULT_DURATION, text);
    reader->duration = (Decimal){0, 1, false, false};
    reader->note.unreadable = true;
}

static bool find_voice(Reader *reader, const char *name, uint16_t *out)
{
    PartDraft *part = reader_part(reader);
    for (size_t i = 0; i < part->voices.count; i++)
        if (strcmp(part->voices.at[i], name) == 0) {
            *out = (uint16_t)i;
            return true;
        }
    if (part->voices.count >= LIMIT_VOICES) {
        reader_fail(reader, SPZ_OVER_LIMIT, "the part has more than %d voices", LIMIT_VOICES);
        return false;
    }
    const char *kept = reader_keep(reader, name);
    if (kept && !array_push(&part->voices, kept))
        reader_no_memory(reader);
    *out = (uint16_t)(part->voices.count - 1);
    return reader->status == SPZ_OK;
}

void read_voice_end(Reader *reader)
{
    if (reader->place.bar >= 0 && reader_parent(reader) == ELEMENT_NOTE)
        find_voice(reader, reader_text(reader), &reader->note.voice);
}

void read_staff_end(Reader *reader)
{
    int64_t staff = 0;
    const char *text = reader_text(reader);
    if (!number_whole(text, &staff) || staff < 1 || staff > LIMIT_STAVES)
        reader_doubt(reader, SPZ_FAULT_STAFF, text);
    else
        reader->note.staff = (int)staff;
}

void read_notehead_end(Reader *reader)
{
    if (strcmp(reader_text(reader), "slash") == 0)
        reader->note.flags |= NOTE_SLASH;
    else if (strcmp(reader_text(reader), "diamond") == 0) /* touched, not stopped; files seldom add the technical sign */
        reader->note.flags |= NOTE_HARMONIC;
}

/* <tie> is what sounds and <tied> what is drawn; files that give only one mean both. */
void read_tie_start(Reader *reader)
{
    if (reader_attribute_is(reader, ATTRIBUTE_TYPE, "start"))
        reader->note.flags |= NOTE_TIE_START;
    else if (reader_attribute_is(reader, ATTRIBUTE_TYPE, "stop"))
        reader->note.flags |= NOTE_TIE_STOP;
    else if (reader_attribute_is(reader, ATTRIBUTE_TYPE, "continue"))
        reader->note.flags |= NOTE_TIE_START | NOTE_TIE_STOP;
}

void read_slur_start(Reader *reader)
{
    if (reader_attribute_is(reader, ATTRIBUTE_TYPE, "start"))
        reader->note.flags |= NOTE_SLUR_START;
    else if (reader_attribute_is(reader, ATTRIBUTE_TYPE, "stop"))
        reader->note.flags |= NOTE_SLUR_STOP;
}

void read_tremolo_start(Reader *reader)
{
    bool pair = reader_attribute_is(reader, ATTRIBUTE_TYPE, "start") || reader_attribute_is(reader, ATTRIBUTE_TYPE, "stop");
    reader->note.flags |= pair ? NOTE_TREMOLO_PAIR : NOTE_TREMOLO;
    reader->note.strokes = reader_attribute_is(reader, ATTRIBUTE_TYPE, "unmeasured") ? UNMEASURED : 0;
}

/* MusicXML 4.0: 'the number of tremolo marks', in which the beams and flags of the note itself are not included. */
void read_tremolo_end(Reader *reader)
{
    int64_t strokes = 0;
    NoteDraft *note = &reader->note;
    note->strokes = number_whole(reader_text(reader), &strokes) && strokes > 0 && strokes <= 8 && note->strokes != UNMEASURED ? (int)strokes : UNMEASURED;
}

void read_value_end(Reader *reader)
{
    static const char *const with_flags[] = {"eighth", "16th", "32nd", "64th"};
    const char *text = reader_text(reader);
    for (int i = 0; i < 4; i++)
        if (text[0] == with_flags[i][0] && !strcmp(text, with_flags[i]))
            reader->note.lines = i + 1;
}

/* One line and two are an abbreviation of quavers and semiquavers; three and more a tremolo (Gould, Behind Bars, 2011, from memory; common
 * practice. In a slow tempo demisemiquavers are counted too, in a very fast one hardly semiquavers: the sign doesn't tell). */
static uint32_t measure_of_strokes(const NoteDraft *draft)
{
    int lines = draft->strokes == UNMEASURED ? UNMEASURED : draft->strokes + draft->lines;
    return draft->strokes == 0 ? 0 : lines == 1 ? NOTE_IN_QUAVERS : lines == 2 ? NOTE_IN_SEMIQUAVERS : 0;
}

void read_staccato_start(Reader *reader)
{
    reader->note.flags |= NOTE_STACCATO;
}

void read_tenuto_start(Reader *reader)
{
    reader->note.flags |= NOTE_TENUTO;
}

void read_detached_legato_start(Reader *reader) /* a line with a dot */
{
    reader->note.flags |= NOTE_TENUTO | NOTE_STACCATO;
}

void read_up_bow_start(Reader *reader)
{
    reader->note.flags |= NOTE_UP_BOW;
}

void read_down_bow_start(Reader *reader)
{
    reader->note.flags |= NOTE_DOWN_BOW;
}

void read_accent_start(Reader *reader)
{
    reader->note.flags |= NOTE_ACCENT;
}

void read_harmonic_start(Reader *reader)
{
    reader->note.flags |= NOTE_HARMONIC;
}

void read_arpeggiate_start(Reader *reader)
{
    reader->note.flags |= NOTE_ARPEGGIO;
}

void read_trill_start(Reader *reader)
{
    reader->note.flags |= NOTE_TRILL;
}

void read_fermata_start(Reader *reader)
{
    if (reader_inside(reader, ELEMENT_NOTE)) /* over a barline it is a pause, no note */
        reader->note.flags |= NOTE_FERMATA;
}

static bool set_pitch(Reader *reader, const NoteDraft *draft, Transposition by, Note *note)
{
    int natural = (draft->octave + 1) * 12 + semitones[draft->step];
    int hundredths = (natural + by.chromatic) * 100 + draft->alter;
    if (hundredths < 0 || hundredths > HIGHEST_MIDI * 100) {
        reader_doubt(reader, SPZ_FAULT_NOTE_BEYOND, NULL);
        return false;
    }
    note->midi = (int16_t)((hundredths + 50) / 100);
    note->cents = (int8_t)(hundredths - note->midi * 100);
    note->written_alter = (unsigned)(note->midi - natural - by.chromatic + 4) & 15u;
    note->written_place = (uint8_t)(draft->octave * 7 + draft->step);
    int steps = note->written_place + by.diatonic;
    int octave = steps >= 0 ? steps / 7 : -((6 - steps) / 7);
    note->octave = (int8_t)octave;
    note->step = (int8_t)(steps - octave * 7);
    note->alter = (int8_t)(note->midi - (octave + 1) * 12 - semitones[note->step]);
    return true;
}

static bool describe(Reader *reader, PartDraft *part, Note *note)
{
    const NoteDraft *draft = &reader->note;
    bool unpitched = (draft->flags & NOTE_UNPITCHED) != 0;
    if (!unpitched && (!draft->pitched || draft->octave == ABSENT || draft->step == ABSENT)) {
        reader_doubt(reader, SPZ_FAULT_NOTE_INCOMPLETE, NULL);
        return false;
    }
    note->flags = draft->flags | measure_of_strokes(draft);
    if (draft->steals_before)
        note->flags |= NOTE_GRACE_AFTER;
    note->line = draft->line;
    note->bar = reader->place.bar;
    note->voice = (uint8_t)draft->voice;
    note->staff = (uint8_t)(draft->staff ? draft->staff : 1);
    note->passes = (uint16_t)((draft->passes & 0x7fffu) | (draft->passes >> 15 ? 0x8000u : 0u));
    if (!unpitched)
        return set_pitch(reader, draft, transposition_at(reader, part, note->onset, note->staff), note);
    note->midi = -1;
    note->step = (int8_t)(draft->step == ABSENT ? 0 : draft->step);
    note->octave = (int8_t)(draft->octave == ABSENT ? 4 : draft->octave);
    note->written_place = (uint8_t)(note->octave * 7 + note->step);
    note->written_alter = 4;
    return true;
}

static void add_note(Reader *reader, Ticks onset, Ticks duration)
{
    PartDraft *part = reader_part(reader);
    Note note;
    memset(&note, 0, sizeof note);
    note.onset = onset;
    note.duration = duration;
    if (!describe(reader, part, &note))
        return;
    if (note.staff > part->about.staves)
        part->about.staves = note.staff;
    if (++reader->note_count > LIMIT_NOTES)
        reader_fail(reader, SPZ_OVER_LIMIT, "the score has more than %d notes", LIMIT_NOTES);
    else if (!array_push(&part->notes, note))
        reader_no_memory(reader);
}

static bool move_to(Reader *reader, Ticks position)
{
    Place *place = &reader->place;
    if (position > reader->per_crotchet * LIMIT_BAR_CROTCHETS) {
        reader_fail(reader, SPZ_BAD_MUSIC, "the bar is longer than %d crotchets", LIMIT_BAR_CROTCHETS);
        return false;
    }
    place->position = position;
    if (position > place->furthest)
        place->furthest = position;
    return true;
}

/* Where the note begins; moves the cursor on. */
static Ticks take_place(Reader *reader, Ticks duration)
{
    Place *place = &reader->place;
    if ((reader->note.flags & NOTE_CHORD) && place->chord_possible)
        return place->chord_onset;
    Ticks onset = place->position;
    if (reader->note.flags & NOTE_CHORD) {
        reader_doubt(reader, SPZ_FAULT_CHORD_NOTE_ALONE, NULL);
        reader->note.flags &= ~(uint32_t)NOTE_CHORD;
    }
    place->chord_onset = onset;
    place->chord_possible = true;
    move_to(reader, onset + duration);
    return onset;
}

static void complete_voice(Reader *reader)
{
    if (reader->note.voice != VOICE_ABSENT)
        reader->place.voice = reader->note.voice;
    else if ((reader->note.flags & NOTE_CHORD) && reader->place.chord_possible)
        reader->note.voice = reader->place.voice;
    else if (find_voice(reader, "1", &reader->note.voice))
        reader->place.voice = reader->note.voice;
}

void read_note_end(Reader *reader)
{
    NoteDraft *draft = &reader->note;
    bool grace = (draft->flags & NOTE_GRACE) != 0;
    Ticks duration = 0;
    if (reader->place.bar < 0 || (!grace && !time_of(reader, reader->duration, &duration)))
        return;
    complete_voice(reader);
    Ticks onset = take_place(reader, duration);
    bool silent = draft->rest || draft->unreadable || reader->status != SPZ_OK;
    if (!silent && !grace && duration == 0)
        reader_doubt(reader, SPZ_FAULT_NO_DURATION, NULL);
    else if (!silent)
        add_note(reader, onset, duration);
    if (reader->direction.count)
        marks_add(reader, onset, draft->staff);
}

void note_close_graces(Reader *reader)
{
    PartDraft *part = reader_part(reader);
    for (size_t i = part->notes.count; i > reader->place.first_note; i--) {
        Note *note = &part->notes.at[i - 1];
        if (!(note->flags & NOTE_GRACE) || note->onset != reader->place.position)
            return;
        note->flags |= NOTE_GRACE_AFTER;
    }
}

void read_backup_end(Reader *reader)
{
    Ticks duration = 0;
    Place *place = &reader->place;
    if (place->bar < 0 || !time_of(reader, reader->duration, &duration))
        return;
    note_close_graces(reader);
    if (duration > place->position)
        reader_doubt(reader, SPZ_FAULT_STEP_BEHIND_BAR, NULL);
    place->position = duration > place->position ? 0 : place->position - duration;
    place->chord_possible = false;
}

void read_forward_end(Reader *reader)
{
    Ticks duration = 0;
    if (reader->place.bar < 0 || !time_of(reader, reader->duration, &duration))
        return;
    move_to(reader, reader->place.position + duration);
    reader->place.chord_possible = false;
}
