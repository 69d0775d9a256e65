/* What a client of the library sees of a score, through score.h alone. */
#include "spezzato/score.h"
#include "support/notation/notation.h"
#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static spz_score *score;

/* The first movement of the music; lives until the next call. */
static const spz_movement *music(const char *notation)
{
    char error[300] = "";
    size_t length = 0;
    char *xml = notation_to_musicxml(notation, &length, error, sizeof error);
    if (!xml)
        printf("\n    %s", error);
    CU_ASSERT_PTR_NOT_NULL_FATAL(xml);
    spz_score_free(score);
    CU_ASSERT_EQUAL_FATAL(spz_score_read_memory(xml, length, "music", NULL, &score), SPZ_OK);
    free(xml);
    return spz_score_movement(score, 0);
}

static void add_length(char *line, size_t size, const spz_movement *movement, char sign, spz_ticks ticks)
{
    double crotchets = (double)ticks / (double)spz_movement_per_crotchet(movement);
    snprintf(line + strlen(line), size - strlen(line), "%c%g", sign, crotchets);
}

/* 'C5@0+1.5': pitch, onset and duration in crotchets, of each note of the part. */
static const char *notes(const spz_movement *movement, size_t part, spz_notes_as as)
{
    static char line[2000];
    char pitch[SPZ_PITCH_TEXT];
    spz_notes *list;
    line[0] = '\0';
    CU_ASSERT_EQUAL_FATAL(spz_notes_make(movement, part, as, &list), SPZ_OK);
    for (size_t i = 0; i < spz_notes_count(list); i++) {
        const spz_note *note = spz_notes_at(list, i);
        snprintf(line + strlen(line), sizeof line - strlen(line), "%s%s", i ? " " : "", spz_pitch_text(note->sounding, pitch));
        add_length(line, sizeof line, movement, '@', note->onset);
        add_length(line, sizeof line, movement, '+', note->duration);
    }
    spz_notes_free(list);
    return line;
}

static spz_note note_of(const spz_movement *movement, size_t part, size_t index)
{
    spz_note note = {0};
    spz_notes *list;
    CU_ASSERT_EQUAL_FATAL(spz_notes_make(movement, part, SPZ_NOTES_WRITTEN, &list), SPZ_OK);
    if (spz_notes_at(list, index))
        note = *spz_notes_at(list, index);
    spz_notes_free(list);
    return note;
}

static const char *written(const spz_movement *movement, size_t part, size_t index)
{
    static char text[SPZ_PITCH_TEXT];
    return spz_pitch_text(note_of(movement, part, index).written, text);
}

static const char *sounding(const spz_movement *movement, size_t part, size_t index)
{
    static char text[SPZ_PITCH_TEXT];
    return spz_pitch_text(note_of(movement, part, index).sounding, text);
}

/* 'bar 2 beat 5/2' */
static const char *place(const spz_movement *movement, size_t bar, spz_fraction beat)
{
    static char text[80];
    snprintf(text, sizeof text, beat.under == 1 ? "bar %s beat %lld" : "bar %s beat %lld/%lld", spz_movement_bar_number(movement, bar), (long long)beat.over,
             (long long)beat.under);
    return text;
}

static void tied_notes_are_apart_on_paper_and_one_to_the_ear(void)
{
    const spz_movement *m = music("time: 2/4\nViola: c4:h~ | c4:q d4\n");
    CU_ASSERT_STRING_EQUAL(notes(m, 0, SPZ_NOTES_WRITTEN), "C4@0+2 C4@2+1 D4@3+1");
    CU_ASSERT_STRING_EQUAL(notes(m, 0, SPZ_NOTES_HEARD), "C4@0+3 D4@3+1");
    CU_ASSERT_TRUE(note_of(m, 0, 0).marks & SPZ_NOTE_TIE_START);
    CU_ASSERT_TRUE(note_of(m, 0, 1).marks & SPZ_NOTE_TIE_STOP);
}

static void a_repeated_bar_is_played_twice_and_written_once(void)
{
    const spz_movement *m = music("time: 2/4\nViola: |: c4 d4 :| e4:h\n");
    CU_ASSERT_STRING_EQUAL(notes(m, 0, SPZ_NOTES_HEARD), "C4@0+1 D4@1+1 E4@2+2");
    CU_ASSERT_STRING_EQUAL(notes(m, 0, SPZ_NOTES_PLAYED), "C4@0+1 D4@1+1 C4@2+1 D4@3+1 E4@4+2");
    CU_ASSERT_EQUAL(spz_movement_bars(m), 2);
    CU_ASSERT_EQUAL_FATAL(spz_movement_played(m), 3);
    const size_t bars[] = {0, 0, 1};
    for (size_t i = 0; i < 3; i++)
        CU_ASSERT_EQUAL(spz_movement_played_bar(m, i).bar, bars[i]);
    CU_ASSERT_EQUAL(spz_movement_played_bar(m, 0).pass, 1);
    CU_ASSERT_EQUAL(spz_movement_played_bar(m, 1).pass, 2);
}

static void a_horn_in_f_sounds_a_fifth_below_what_it_reads(void)
{
    const spz_movement *m = music("part: Horn in F; transpose -7\nHorn in F: c5 f#4 bb3 e5\n");
    const char *const pairs[][2] = {{"C5", "F4"}, {"F#4", "B3"}, {"Bb3", "Eb3"}, {"E5", "A4"}};
    for (size_t i = 0; i < COUNT(pairs); i++) {
        CU_ASSERT_STRING_EQUAL(written(m, 0, i), pairs[i][0]);
        CU_ASSERT_STRING_EQUAL(sounding(m, 0, i), pairs[i][1]);
    }
    CU_ASSERT_EQUAL(note_of(m, 0, 0).written.midi, 72);
    CU_ASSERT_EQUAL(note_of(m, 0, 0).sounding.midi, 65);
}

static void a_double_bass_sounds_an_octave_below_what_it_reads(void)
{
    const spz_movement *m = music("part: Double bass; transpose -12\nDouble bass: c3 g2 e2 r\n");
    CU_ASSERT_STRING_EQUAL(written(m, 0, 2), "E2");
    CU_ASSERT_STRING_EQUAL(sounding(m, 0, 2), "E1");
}

/* E## for a clarinet in A sounds a minor third lower: C### by the rule, which is told as D#. */
static void what_is_on_paper_stays_as_it_is_where_the_sound_takes_another_name(void)
{
    const spz_movement *m = music("part: Clarinet; transpose -3\nClarinet: e##5 bb4 r r\n");
    CU_ASSERT_STRING_EQUAL(written(m, 0, 0), "E##5");
    CU_ASSERT_STRING_EQUAL(sounding(m, 0, 0), "D#5");
    CU_ASSERT_EQUAL(note_of(m, 0, 0).written.midi, 78);
    CU_ASSERT_STRING_EQUAL(written(m, 0, 1), "Bb4");
    CU_ASSERT_STRING_EQUAL(sounding(m, 0, 1), "G4");
}

static void an_instrument_that_does_not_transpose_sounds_what_it_reads(void)
{
    const spz_movement *m = music("Violin I: b##3 cb6 f#5 ebb4\n");
    for (size_t i = 0; i < 4; i++)
        CU_ASSERT_STRING_EQUAL(written(m, 0, i), sounding(m, 0, i));
    CU_ASSERT_STRING_EQUAL(written(m, 0, 0), "B##3");
}

static void grace_notes_last_nothing_and_are_named(void)
{
    const spz_movement *m = music("time: 2/4\nViola: `d5 c5 b4\n");
    CU_ASSERT_STRING_EQUAL(notes(m, 0, SPZ_NOTES_HEARD), "D5@0+0 C5@0+1 B4@1+1");
    CU_ASSERT_TRUE(note_of(m, 0, 0).marks & SPZ_NOTE_GRACE);
    CU_ASSERT_FALSE(note_of(m, 0, 1).marks & SPZ_NOTE_GRACE);
}

static void the_later_notes_of_a_chord_say_so(void)
{
    const spz_movement *m = music("time: 2/4\nViola: c4+e4+g4:h\n");
    CU_ASSERT_STRING_EQUAL(notes(m, 0, SPZ_NOTES_WRITTEN), "C4@0+2 E4@0+2 G4@0+2");
    CU_ASSERT_FALSE(note_of(m, 0, 0).marks & SPZ_NOTE_CHORD);
    CU_ASSERT_TRUE(note_of(m, 0, 1).marks & SPZ_NOTE_CHORD);
    CU_ASSERT_TRUE(note_of(m, 0, 2).marks & SPZ_NOTE_CHORD);
}

static void a_note_says_its_bar_beat_staff_and_voice(void)
{
    const spz_movement *m = music("time: 3/4  pickup: 1/4\nHarp: c5 | d5:q. e5:e f5:q // g4:h.\nHarp/2: r | c3:h.\n");
    spz_note upbeat = note_of(m, 0, 0);
    CU_ASSERT_STRING_EQUAL(place(m, upbeat.bar, upbeat.beat), "bar 0 beat 3");
    spz_note first = note_of(m, 0, 1), other_voice = note_of(m, 0, 2), lower = note_of(m, 0, 3), quaver = note_of(m, 0, 4);
    CU_ASSERT_STRING_EQUAL(place(m, first.bar, first.beat), "bar 1 beat 1");
    CU_ASSERT_STRING_EQUAL(place(m, quaver.bar, quaver.beat), "bar 1 beat 5/2");
    CU_ASSERT_STRING_NOT_EQUAL(first.voice, other_voice.voice);
    CU_ASSERT_EQUAL(other_voice.staff, 1);
    CU_ASSERT_EQUAL(lower.staff, 2);
    CU_ASSERT_STRING_EQUAL(sounding(m, 0, 3), "C3");
}

static void six_quavers_in_six_eight_are_two_beats(void)
{
    const spz_movement *m = music("time: 6/8\nViola: c4:e d4 e4 f4 g4 a4\n");
    spz_note fourth = note_of(m, 0, 3);
    CU_ASSERT_STRING_EQUAL(place(m, fourth.bar, fourth.beat), "bar 1 beat 2");
    CU_ASSERT_EQUAL(spz_movement_bar(m, 0).beat * 2, spz_movement_per_crotchet(m) * 3);
}

static void bars_tell_their_number_letter_length_and_key(void)
{
    const spz_movement *m = music("time: 3/4  key: -3  pickup: 1/4\nViola: c4 | R | [B] R\n");
    CU_ASSERT_EQUAL(spz_movement_bar(m, 0).length, spz_movement_per_crotchet(m));
    CU_ASSERT_FALSE(spz_movement_bar(m, 0).counted);
    CU_ASSERT_TRUE(spz_movement_bar(m, 1).counted);
    CU_ASSERT_EQUAL(spz_movement_bar(m, 1).fifths, -3);
    CU_ASSERT_EQUAL(spz_movement_bar(m, 1).nominal, 3 * spz_movement_per_crotchet(m));
    CU_ASSERT_PTR_NULL(spz_movement_bar(m, 1).letter);
    CU_ASSERT_STRING_EQUAL(spz_movement_bar(m, 2).letter, "B");
    CU_ASSERT_STRING_EQUAL(spz_movement_bar(m, 2).number, "2");
    CU_ASSERT_EQUAL(spz_movement_length(m), spz_movement_bar(m, 2).onset + spz_movement_bar(m, 2).length);
    CU_ASSERT_EQUAL(spz_movement_bar_at(m, spz_movement_bar(m, 2).onset), 2);
    CU_ASSERT_EQUAL(spz_movement_bar_at(m, spz_movement_bar(m, 2).onset - 1), 1);
    CU_ASSERT_PTR_NULL(spz_movement_bar(m, 3).number);
}

static const spz_direction *direction(const spz_movement *movement, spz_direction_kind kind, const char *text)
{
    static spz_direction found;
    for (size_t i = 0; i < spz_movement_part(movement, 0).directions; i++) {
        found = spz_movement_direction(movement, 0, i);
        if (found.kind == kind && (!text || strcmp(found.text, text) == 0))
            return &found;
    }
    return NULL;
}

static void words_dynamics_and_tempo_stand_at_their_beats(void)
{
    const spz_movement *m = music("time: 2/4  tempo: q=96 Allegro\nViola: <p> c4 \"div.\" d4 | < e4 <ff> f4\n");
    CU_ASSERT_EQUAL(spz_movement_tempo(m, 0), 96.0);
    const spz_direction *found = direction(m, SPZ_DIRECTION_WORDS, "div.");
    CU_ASSERT_PTR_NOT_NULL_FATAL(found);
    CU_ASSERT_STRING_EQUAL(place(m, found->bar, found->beat), "bar 1 beat 2");
    found = direction(m, SPZ_DIRECTION_DYNAMIC, "ff");
    CU_ASSERT_PTR_NOT_NULL_FATAL(found);
    CU_ASSERT_EQUAL(found->dynamic, SPZ_DYNAMIC_FF);
    CU_ASSERT_STRING_EQUAL(place(m, found->bar, found->beat), "bar 2 beat 2");
    found = direction(m, SPZ_DIRECTION_WEDGE, NULL);
    CU_ASSERT_PTR_NOT_NULL_FATAL(found);
    CU_ASSERT_EQUAL(found->value, 1);
    found = direction(m, SPZ_DIRECTION_TEMPO, NULL);
    CU_ASSERT_PTR_NOT_NULL_FATAL(found);
    CU_ASSERT_EQUAL(found->tempo, 96.0);
    CU_ASSERT_EQUAL(note_of(m, 0, 1).dynamic, SPZ_DYNAMIC_P);
    CU_ASSERT_EQUAL(note_of(m, 0, 3).dynamic, SPZ_DYNAMIC_FF);
    CU_ASSERT_STRING_EQUAL(spz_dynamic_name(SPZ_DYNAMIC_FF), "ff");
}

static void marks_on_a_note_are_told(void)
{
    const spz_movement *m = music("Viola: \"pizz.\" c4' d4> e4=3 \"arco\" f4$@\n");
    CU_ASSERT_TRUE(note_of(m, 0, 0).marks & SPZ_NOTE_STACCATO);
    CU_ASSERT_TRUE(note_of(m, 0, 0).marks & SPZ_NOTE_PIZZICATO);
    CU_ASSERT_TRUE(note_of(m, 0, 1).marks & SPZ_NOTE_ACCENT);
    CU_ASSERT_TRUE(note_of(m, 0, 2).marks & SPZ_NOTE_TREMOLO);
    CU_ASSERT_EQUAL(note_of(m, 0, 3).marks, (unsigned)(SPZ_NOTE_TRILL | SPZ_NOTE_FERMATA));
}

static void parts_tell_what_the_file_says_of_them(void)
{
    const spz_movement *m = music("group: Strings\npart: Violin I; short Vn. I; sound strings.violin\nViolin I: R\nHarp: R\nHarp/2: R\n");
    spz_part violins = spz_movement_part(m, 0);
    CU_ASSERT_STRING_EQUAL(violins.name, "Violin I");
    CU_ASSERT_STRING_EQUAL(violins.abbreviation, "Vn. I");
    CU_ASSERT_STRING_EQUAL(violins.sound, "strings.violin");
    CU_ASSERT_STRING_EQUAL(violins.groups, "Strings");
    CU_ASSERT_EQUAL(violins.staves, 1);
    CU_ASSERT_EQUAL(spz_movement_part(m, 1).staves, 2);
}

static void what_is_not_there_is_nothing(void)
{
    const spz_movement *m = music("Viola: c4 r r r\n");
    spz_notes *list;
    CU_ASSERT_EQUAL(spz_notes_make(m, 1, SPZ_NOTES_WRITTEN, &list), SPZ_BAD_ARGUMENT);
    CU_ASSERT_PTR_NULL(list);
    CU_ASSERT_EQUAL(spz_notes_make(m, 0, (spz_notes_as)3, &list), SPZ_BAD_ARGUMENT);
    CU_ASSERT_PTR_NULL(spz_movement_part(m, 1).name);
    CU_ASSERT_EQUAL(spz_movement_played_bar(m, 1).pass, 0);
    CU_ASSERT_PTR_NULL(spz_movement_direction(m, 0, 99).text);
    CU_ASSERT_EQUAL_FATAL(spz_notes_make(m, 0, SPZ_NOTES_HEARD, &list), SPZ_OK);
    CU_ASSERT_EQUAL(spz_notes_count(list), 1);
    CU_ASSERT_PTR_NULL(spz_notes_at(list, 1));
    spz_notes_free(list);
    spz_notes_free(NULL);
    spz_score_free(score);
    score = NULL;
}

static const struct Statement statements[] = {
    STATEMENT(tied_notes_are_apart_on_paper_and_one_to_the_ear),
    STATEMENT(a_repeated_bar_is_played_twice_and_written_once),
    STATEMENT(a_horn_in_f_sounds_a_fifth_below_what_it_reads),
    STATEMENT(a_double_bass_sounds_an_octave_below_what_it_reads),
    STATEMENT(what_is_on_paper_stays_as_it_is_where_the_sound_takes_another_name),
    STATEMENT(an_instrument_that_does_not_transpose_sounds_what_it_reads),
    STATEMENT(grace_notes_last_nothing_and_are_named),
    STATEMENT(the_later_notes_of_a_chord_say_so),
    STATEMENT(a_note_says_its_bar_beat_staff_and_voice),
    STATEMENT(six_quavers_in_six_eight_are_two_beats),
    STATEMENT(bars_tell_their_number_letter_length_and_key),
    STATEMENT(words_dynamics_and_tempo_stand_at_their_beats),
    STATEMENT(marks_on_a_note_are_told),
    STATEMENT(parts_tell_what_the_file_says_of_them),
    STATEMENT(what_is_not_there_is_nothing),
};

void suite_score_views(void)
{
    suite_of("a score as a client sees it", statements, COUNT(statements));
}
