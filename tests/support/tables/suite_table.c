#include "support/tables/suite_table.h"
#include "model/stream.h"
#include "support/scores/score_lines.h"
#include <stdio.h>
#include <string.h>

static bool plays(const Movement *m, size_t part, const char *expected)
{
    return strcmp(sounds_text(m, part), expected) == 0;
}

static const Note *note(const Movement *m, size_t index)
{
    return &m->parts[0].notes[index];
}

/* Natural, sharp, flat: each row from G2 rises by step, and begins and ends where its accidentals put it. */
static bool pitches_rise(const Movement *m)
{
    for (size_t i = 1; i < 96; i++)
        if (i % 32 != 0 && note(m, i)->octave * 7 + note(m, i)->step != note(m, i - 1)->octave * 7 + note(m, i - 1)->step + 1)
            return false;
    return note(m, 0)->midi == 43 && note(m, 31)->midi == 96 && note(m, 32)->midi == 44 && note(m, 63)->midi == 97 && note(m, 64)->midi == 42 &&
           note(m, 95)->midi == 95;
}

/* Alterations of the file are -0.5, 1, -1.5 and 1.5 semitones, four notes each: three lie half a semitone from their rounded pitch. */
static bool microtones(const Movement *m)
{
    for (size_t i = 0; i < m->parts[0].note_count; i++)
        if (note(m, i)->cents != (i / 4 == 1 ? 0 : -50))
            return false;
    return true;
}

static bool finest_values(const Movement *m)
{
    Ticks shortest = m->length;
    for (size_t i = 0; i < m->parts[0].note_count; i++)
        if (note(m, i)->duration < shortest)
            shortest = note(m, i)->duration;
    return shortest * 16 == m->per_crotchet;
}

static bool compound(const Movement *m)
{
    return m->bars[0].nominal * 2 == 11 * m->per_crotchet && m->bars[1].nominal * 2 == 21 * m->per_crotchet;
}

static bool no_measure(const Movement *m)
{
    return m->bars[0].nominal == 0 && m->bars[0].length * 2 == 3 * m->per_crotchet;
}

static bool all_c4(const Movement *m)
{
    for (size_t i = 0; i < m->parts[0].note_count; i++)
        if (note(m, i)->midi != 60)
            return false;
    return true;
}

static bool keys(const Movement *m)
{
    for (size_t i = 0; i < m->bar_count; i++)
        if (m->bars[i].fifths != (int)i / 2 - 7)
            return false;
    return true;
}

static bool two_sharps(const Movement *m)
{
    for (size_t i = 0; i < m->bar_count; i++)
        if (m->bars[i].fifths != 2)
            return false;
    return true;
}

static bool chord_of_two(const Movement *m)
{
    for (size_t i = 0; i + 1 < m->parts[0].note_count; i += 2)
        if (note(m, i)->onset != note(m, i + 1)->onset)
            return false;
    return true;
}

static bool piano_in_second_bar(const Movement *m)
{
    const Note *first = note(m, 1);
    return first->bar == 1 && first->onset == note(m, 2)->onset && first->dynamic == DYNAMIC_P;
}

static bool seventeen(const Movement *m)
{
    const Note *last = note(m, m->parts[0].note_count - 1);
    return m->per_crotchet % 17 == 0 && last->onset + last->duration == m->length;
}

static bool after_graces(const Movement *m)
{
    static const bool after[7] = {false, true, false, false, false, true, true};
    for (size_t i = 0; i < 7; i++)
        if (after[i] != ((note(m, i)->flags & NOTE_GRACE_AFTER) != 0))
            return false;
    return true;
}

/* Dotted crotchet = 100, long = 100, then equations: each keeps the old value's pulse for the new value. */
static bool metronomes(const Movement *m)
{
    static const double rates[6] = {150, 1600, 3200, 0, 0, 115.5};
    for (size_t i = 0; i < 6; i++)
        if (i < m->tempo_count && rates[i] > 0 && (m->tempos[i].rate < rates[i] - 0.001 || m->tempos[i].rate > rates[i] + 0.001))
            return false;
    return m->tempo_count == 6;
}

static bool dynamics_in_notations(const Movement *m)
{
    for (size_t i = 0; i < m->parts[0].direction_count; i++)
        if (m->parts[0].directions[i].kind == DIRECTION_DYNAMIC)
            return true;
    return false;
}

static bool staccato_and_accent(const Movement *m)
{
    for (size_t i = 0; i < 3; i++)
        if ((note(m, i)->flags & (NOTE_STACCATO | NOTE_ACCENT)) != (NOTE_STACCATO | NOTE_ACCENT))
            return false;
    return true;
}

static bool tremolo_between_two(const Movement *m)
{
    int halves = 0;
    for (size_t i = 0; i < m->parts[0].note_count; i++)
        halves += (note(m, i)->flags & NOTE_TREMOLO_PAIR) != 0;
    return halves == 2;
}

static bool twenty_parts(const Movement *m)
{
    for (size_t i = 0; i < m->part_count; i++) {
        char name[8];
        snprintf(name, sizeof name, "P%d", (int)i);
        if (strcmp(m->parts[i].name, name) != 0)
            return false;
    }
    return true;
}

static bool overlapping(const Movement *m)
{
    return strcmp(m->parts[1].groups, "Group 1") == 0 && strcmp(m->parts[2].groups, "Group 1|Group 2") == 0 && strcmp(m->parts[4].groups, "Group 2") == 0;
}

static bool unlisted(const Movement *m)
{
    return m->parts[0].written_bars == 1 && m->parts[1].written_bars == 1 && m->parts[2].written_bars == 1;
}

static bool two_voices(const Movement *m)
{
    return m->parts[0].voice_count == 2 && m->parts[0].staves == 1;
}

static bool two_staves(const Movement *m)
{
    return m->parts[0].staves == 2 && note(m, 0)->staff == 1 && note(m, 1)->staff == 2 && note(m, 1)->onset == 0;
}

static bool dynamics_by_staff(const Movement *m)
{
    return note(m, 0)->dynamic == DYNAMIC_FFFF && note(m, 1)->staff == 2 && note(m, 1)->dynamic == DYNAMIC_NONE;
}

static bool split_bar(const Movement *m)
{
    char beat[TICKS_TEXT];
    return strcmp(lengths_text(m), "4 2 2 4") == 0 && m->bars[2].implicit && strcmp(movement_beat_text(m, m->bars[2].onset, beat), "3") == 0;
}

static bool transposed_alike(const Movement *m)
{
    char first[1024];
    snprintf(first, sizeof first, "%s", sounds_text(m, 2));
    return plays(m, 0, first) && plays(m, 1, first) && strncmp(first, "C4@0+1 D4@1+1 E4@2+1 F4@3+1", 27) == 0;
}

static const SuiteCase cases[] = {
    {"01a-Pitches-Pitches.xml", 1, 28, 110, "110", 0,
     "all pitches from G2 to C7, natural, sharp and flat, then double alterations",
     NULL, NULL, pitches_rise},
    {"01c-Pitches-NoVoiceElement.xml", 1, 1, 1, "4", 0,
     "a note without a voice is read",
     "G4@0+4", NULL, NULL},
    {"01e-Pitches-EditorialCautionaryAccidentals.xml", 1, 4, 16, "16", 0,
     "editorial and cautionary accidentals change no pitch",
     NULL, NULL, NULL},
    {"01f-Pitches-EditorialMicrotoneAccidentals.xml", 1, 4, 16, "16", 0,
     "quarter tones: rounded to a semitone, with the rest kept",
     NULL, NULL, microtones},
    {"02b-Rests-PitchedRests.xml", 1, 1, 0, "5", 0,
     "rests placed on a pitch stay rests",
     NULL, NULL, NULL},
    {"02d-Rests-Multimeasure-TimeSignatures.xml", 1, 10, 1, "33", 0,
     "long rests are whole numbers of bars",
     NULL, NULL, NULL},
    {"03aa-Rhythm-Durations.xml", 1, 3, 26, "68", 0,
     "note values from the long to the 128th with up to two dots, exactly",
     NULL, NULL, finest_values},
    {"03b-Rhythm-Backup.xml", 1, 1, 4, "3", 0,
     "a second voice that begins on the second beat",
     "C4@0+1 C4@1+1 A3@1+1 A3@2+1", NULL, NULL},
    {"03d-Rhythm-DottedDurations-Factors.xml", 1, 17, 11, "141/2", 0,
     "dotted values and bar rests such as 5/16 and 9/8",
     NULL, NULL, NULL},
    {"11b-TimeSignatures-NoTime.xml", 1, 1, 2, "4", 1,
     "no time signature: the bar is as long as its notes; the step back of 384 divisions is reported",
     "F4@0+4 B2@0+4", NULL, NULL},
    {"11d-TimeSignatures-CompoundMultiple.xml", 1, 2, 11, "16", 0,
     "3/8+2/8+3/4 and 5/2+1/8",
     NULL, NULL, compound},
    {"11f-TimeSignatures-SymbolMeaning.xml", 1, 3, 5, "13/2", 0,
     "the sign drawn for a time signature changes nothing",
     NULL, NULL, NULL},
    {"11h-TimeSignatures-SenzaMisura.xml", 1, 1, 3, "3/2", 0,
     "music without time signature is as long as it is",
     NULL, NULL, no_measure},
    {"12ab-Clefs-Percussion-NonTrad.xml", 1, 10, 10, "40", 0,
     "octave clefs move no pitch: all sound C4",
     NULL, NULL, all_c4},
    {"12ad-Clefs-Extreme-Octave.xml", 1, 6, 6, "24", 0,
     "clefs of two and three octaves move no pitch: the octaves are those written",
     "C2@0+4 C2@4+4 C6@8+4 C6@12+4 C7@16+4 C1@20+4", NULL, NULL},
    {"13a-KeySignatures.xml", 1, 30, 30, "60", 0,
     "key signatures from seven flats to seven sharps",
     NULL, NULL, keys},
    {"13ab-KeySignatures-Cancel.xml", 1, 5, 5, "10", 0,
     "naturals that cancel a key",
     NULL, NULL, NULL},
    {"13b-KeySignatures-ChurchModes.xml", 1, 9, 9, "9", 0,
     "church modes on two sharps",
     NULL, NULL, two_sharps},
    {"13d-KeySignatures-Microtones.xml", 1, 1, 1, "2", 0,
     "a key of quarter tones is passed over",
     NULL, NULL, NULL},
    {"14a-StaffDetails-LineChanges.xml", 2, 3, 8, "12", 0,
     "changes of staff lines, also inside a bar",
     NULL, NULL, NULL},
    {"21b-Chords-TwoNotes.xml", 1, 2, 16, "8", 0,
     "chords of two notes",
     NULL, NULL, chord_of_two},
    {"21d-Chords-SchubertStabatMater.xml", 1, 2, 9, "8", 0,
     "a chord and dynamics at the start of the second bar",
     NULL, NULL, piano_in_second_bar},
    {"21f-Chord-ElementInBetween.xml", 1, 1, 3, "4", 0,
     "signs between the notes of a chord do not part it",
     "A4@0+1 F#4@0+1 D4@0+1", NULL, NULL},
    {"22b-Staff-Notestyles.xml", 1, 3, 10, "12", 0,
     "slash notation and hidden notes sound as written",
     NULL, NULL, NULL},
    {"22d-Parenthesized-Noteheads.xml", 1, 1, 8, "6", 0,
     "note heads in brackets",
     NULL, NULL, NULL},
    {"23b-Tuplets-Styles.xml", 1, 4, 68, "19", 0,
     "tuplets 3:2, 4:3 and 17:2 in exact time",
     NULL, NULL, seventeen},
    {"23d-Tuplets-Nested.xml", 1, 1, 9, "2", 0,
     "five in the time of two inside a triplet",
     "B4@0+1/3 B4@1/3+1/3 B4@2/3+2/15 B4@4/5+2/15 B4@14/15+2/15 B4@16/15+2/15 B4@6/5+2/15 B4@4/3+1/3 B4@5/3+1/3", NULL, NULL},
    {"23f-Tuplets-DurationButNoBracket.xml", 1, 1, 20, "4", 0,
     "triplets without a bracket",
     NULL, NULL, NULL},
    {"24b-ChordAsGraceNote.xml", 1, 1, 8, "3", 0,
     "chords as grace notes",
     "C5@0+1 D5@1+0 F5@1+0 C5@1+1 B4@2+0 D5@2+0 A4@2+1 C5@2+1", NULL, NULL},
    {"24d-AfterGrace.xml", 1, 1, 7, "4", 0,
     "grace notes and after-graces",
     NULL, NULL, after_graces},
    {"24f-GraceNote-Slur.xml", 1, 1, 3, "4", 0,
     "a grace note with a slur",
     "E5@0+2 G5@2+0 E5@2+2", NULL, NULL},
    {"31c-MetronomeMarks.xml", 1, 3, 12, "12", 0,
     "metronome marks, also as an equation of two values",
     NULL, NULL, metronomes},
    {"32aa-Notations2_Ornaments.xml", 1, 4, 14, "16", 0,
     "ornaments change no written note",
     NULL, NULL, NULL},
    {"32ac-Notations4.xml", 1, 2, 6, "8", 0,
     "dynamics among the notations count",
     NULL, NULL, dynamics_in_notations},
    {"32c-MultipleNotationChildren.xml", 1, 1, 3, "3", 0,
     "a staccato and an accent on each note, however grouped",
     NULL, NULL, staccato_and_accent},
    {"33a-Spanners.xml", 1, 23, 61, "69", 0,
     "spanners; a tremolo between two notes",
     NULL, NULL, tremolo_between_two},
    {"33c-Spanners-Slurs.xml", 1, 2, 8, "8", 0,
     "slurs inside slurs",
     NULL, NULL, NULL},
    {"33e-Spanners-OctaveShifts-InvalidSize.xml", 1, 1, 3, "6", 0,
     "octave lines of impossible size move no pitch",
     "A4@0+4 A7@4+1 C3@5+1", NULL, NULL},
    {"33g-Slur-ChordedNotes.xml", 1, 1, 8, "4", 0,
     "slurs on chords",
     NULL, NULL, NULL},
    {"33i-Ties-NotEnded.xml", 1, 5, 4, "20", 0,
     "ties without an end end with their note; a tie that is both ends joins",
     "C5@0+4 C5@4+4 C5@8+4 C5@12+8", NULL, NULL},
    {"41b-MultiParts-MoreThan10.xml", 20, 1, 0, "4", 0,
     "twenty parts in the order of the list",
     NULL, NULL, twenty_parts},
    {"41d-StaffGroups-Nested.xml", 5, 3, 10, "12", 0,
     "brackets inside brackets",
     NULL, NULL, NULL},
    {"41f-StaffGroups-Overlapping.xml", 5, 1, 0, "4", 0,
     "brackets that overlap",
     NULL, NULL, overlapping},
    {"41h-TooManyParts.xml", 3, 1, 0, "4", 5,
     "parts that the list lacks are read and reported",
     NULL, NULL, unlisted},
    {"42a-MultiVoice-TwoVoicesOnStaff-Lyrics.xml", 1, 3, 12, "12", 0,
     "two voices on one staff",
     NULL, NULL, two_voices},
    {"43a-PianoStaff.xml", 1, 1, 2, "4", 0,
     "two staves",
     NULL, NULL, two_staves},
    {"43c-MultiStaff-DifferentKeysAfterBackup.xml", 1, 1, 2, "4", 0,
     "keys by staff after a step back",
     NULL, NULL, two_staves},
    {"43e-Multistaff-ClefDynamics.xml", 1, 4, 24, "16", 0,
     "dynamics that count for one staff",
     NULL, NULL, dynamics_by_staff},
    {"45b-RepeatWithAlternatives.xml", 1, 4, 4, "16", 0,
     "a repeat with two endings",
     NULL, "1 2 1 3 4", NULL},
    {"45d-Repeats-Nested-Alternatives.xml", 1, 12, 0, "48", 0,
     "endings of three passes where two are played; the third is never reached",
     NULL, "1 2 1 3 4 5 7 8 9 10 12", NULL},
    {"45f-Repeats-InvalidEndings.xml", 1, 5, 0, "20", 0,
     "endings that contradict each other: played without running in circles",
     NULL, "1 2 4 1 2 3 4 4 5", NULL},
    {"46a-Barlines.xml", 1, 13, 0, "52", 0,
     "barlines of all kinds: one movement",
     NULL, NULL, NULL},
    {"46c-Midmeasure-Clef.xml", 1, 4, 8, "12", 0,
     "a bar split for a change of clef: halves of two beats",
     NULL, NULL, split_bar},
    {"46e-PickupMeasure-SecondVoiceStartsLater.xml", 1, 2, 6, "5", 0,
     "an upbeat, then a second voice from the second beat",
     "C5@0+1 C5@1+1 A4@2+1 C4@2+1 F4@3+1 C5@4+1", NULL, NULL},
    {"46g-PickupMeasure-Chordnames-FiguredBass.xml", 1, 2, 6, "5", 0,
     "an upbeat with chord names and figures",
     "C5@0+1/2 C5@1/2+1/2 C4@1+1 C4@2+1 C4@3+1 C4@4+1", NULL, NULL},
    {"51c-MultipleRights.xml", 1, 1, 0, "4", 1,
     "two lines of rights",
     NULL, NULL, NULL},
    {"52a-PageLayout.xml", 1, 3, 0, "12", 0,
     "page layout",
     NULL, NULL, NULL},
    {"61a-Lyrics.xml", 1, 3, 11, "12", 0,
     "lyrics",
     NULL, NULL, NULL},
    {"61c-Lyrics-Pianostaff.xml", 1, 1, 8, "4", 0,
     "lyrics on two staves",
     NULL, NULL, NULL},
    {"61e-Lyrics-Chords.xml", 1, 1, 8, "4", 0,
     "lyrics on chords",
     NULL, NULL, NULL},
    {"61g-Lyrics-NameNumber.xml", 1, 1, 6, "6", 0,
     "verses by name and number",
     NULL, NULL, NULL},
    {"61i-Lyrics-Chords.xml", 1, 1, 3, "1", 0,
     "a chord with a verse on each note",
     "E5@0+1 C5@0+1 A4@0+1", NULL, NULL},
    {"61k-Lyrics-SpannersExtenders.xml", 1, 3, 11, "12", 0,
     "lyrics with extenders",
     NULL, NULL, NULL},
    {"71a-Chordnames.xml", 1, 2, 8, "8", 0,
     "chord names are no notes",
     NULL, NULL, NULL},
    {"71d-ChordsFrets-Multistaff.xml", 1, 1, 16, "4", 0,
     "fret diagrams are no notes",
     NULL, NULL, NULL},
    {"71f-AllChordTypes.xml", 1, 10, 37, "38", 0,
     "all kinds of chord names; their notes are only those on the staff",
     NULL, NULL, NULL},
    {"72a-TransposingInstruments.xml", 3, 2, 24, "8", 0,
     "trumpet in B flat and horn in E flat sound C major with the piano",
     NULL, NULL, transposed_alike},
    {"72c-TransposingInstruments-Change.xml", 1, 3, 3, "12", 0,
     "a clarinet in E flat changes to one in B flat",
     "Eb4@0+4 Bb3@4+4 Bb3@8+4", NULL, NULL},
    {"74a-FiguredBass.xml", 1, 1, 6, "4", 0,
     "figured bass is no music; an empty figure is passed over",
     NULL, NULL, NULL},
    {"90a-Compressed-MusicXML.mxl", 1, 1, 4, "4", 0,
     "a compressed score among other files",
     "C#4@0+1 C#4@1+1 C#4@2+1 C#4@3+1", NULL, NULL},
    {"99b-Lyrics-BeamsMelismata-IgnoreBeams.xml", 1, 4, 28, "16", 0,
     "beams change no note",
     NULL, NULL, NULL},
    {"99d-AccordionInvalid.xml", 1, 1, 4, "4", 0,
     "impossible accordion registrations are passed over",
     NULL, NULL, NULL},
};

size_t suite_case_count(void)
{
    return sizeof cases / sizeof *cases;
}

const SuiteCase *suite_case_at(size_t index)
{
    return &cases[index];
}

static void hear(void *context, const spz_message *message)
{
    SuiteOutcome *outcome = context;
    outcome->doubts++;
    snprintf(outcome->said, sizeof outcome->said, "%s", message->text);
}

static size_t count_sounds(const Movement *m)
{
    size_t count = 0;
    for (size_t p = 0; p < m->part_count; p++) {
        SoundList sounds = {NULL, 0, 0};
        if (stream_of_part(m, p, &sounds) == SPZ_OK)
            count += sounds.count;
        array_free(&sounds);
    }
    return count;
}

void suite_case_try(const SuiteCase *c, const char *path, SuiteOutcome *outcome)
{
    spz_sink sink = {hear, outcome};
    spz_score *score = NULL;
    memset(outcome, 0, sizeof *outcome);
    outcome->status = spz_score_read(path, &sink, &score);
    const Movement *m = score ? spz_score_movement(score, 0) : NULL;
    if (!m)
        return;
    outcome->parts = m->part_count;
    outcome->bars = m->bar_count;
    outcome->sounds = count_sounds(m);
    ticks_text(m->length, m->per_crotchet, outcome->length);
    outcome->as_asked = spz_score_movement_count(score) == 1 && outcome->parts == c->parts && outcome->bars == c->bars &&
                        outcome->sounds == c->sounds && strcmp(outcome->length, c->length) == 0 && outcome->doubts == c->doubts &&
                        (!c->plays || plays(m, 0, c->plays)) && (!c->order || strcmp(order_text(m), c->order) == 0) && (!c->meets || c->meets(m));
    spz_score_free(score);
}
