/* What one player can stop, checked against what the orchestration books print. Sources: Forsyth, Orchestration (1914), pp. 316-317 (kinds of
 * double stops on the violin, from two stopped strings: sixths and thirds 'quite easy', fourths 'still quite playable'; its ranges from
 * memory); Piston, Orchestration (1955), and Adler, The Study of Orchestration: lists of double, triple and quadruple stops, from memory. */
#include "analysis/division/stopping.h"
#include "support/suite.h"
#include <string.h>

/* 'C2' .. 'Bb5' as a MIDI number. */
static int midi_of(const char **at)
{
    static const int steps[] = { 9, 11, 0, 2, 4, 5, 7 };
    int midi = steps[**at - 'A'];
    for (++*at; **at == '#' || **at == 'b'; ++*at)
        midi += **at == '#' ? 1 : -1;
    return midi + 12 * (*(*at)++ - '0' + 1);
}

static int chord_of(const char *text, int midi[CHORD_MOST])
{
    int count = 0;
    while (*text) {
        midi[count++] = midi_of(&text);
        while (*text == ' ')
            text++;
    }
    return count;
}

static Stopping stop(Instrument instrument, const char *chord, Manner manner, Fingering *fingering)
{
    int midi[CHORD_MOST];
    return stopping_find(instrument, midi, NULL, chord_of(chord, midi), manner, fingering);
}

struct Chord { Instrument instrument; const char *notes; Stopping verdict; };

static void check_chords(const struct Chord *chords, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        Stopping found = stop(chords[i].instrument, chords[i].notes, MANNER_STRUCK, NULL);
        CU_ASSERT_EQUAL(found, chords[i].verdict);
        if (found != chords[i].verdict)
            printf("\n    %s, %s: %d, not %d", instrument_name(chords[i].instrument), chords[i].notes, found, chords[i].verdict);
    }
}

/* All double stops of `interval` on two stopped strings, lower note from `low` to `high`. */
static void check_interval(Instrument instrument, int interval, int low, int high, Stopping verdict)
{
    for (int lower = low; lower <= high; lower++) {
        int midi[2] = { lower, lower + interval };
        Stopping found = stopping_find(instrument, midi, NULL, 2, MANNER_HELD, NULL);
        CU_ASSERT_EQUAL(found, verdict);
        if (found != verdict)
            printf("\n    %s, %d semitones over %d: %d", instrument_name(instrument), interval, lower, found);
    }
}

/* Forsyth 1914: sixths, thirds, fourths; Piston and Adler add fifths, sevenths and octaves (from memory). Lower note from the first
 * semitone over the open G (thirds and fourths: from where the upper note can lie on the D string) up to B5, beyond orchestral use. */
static void the_violin_plays_all_intervals_from_thirds_to_octaves(void)
{
    for (int interval = 3; interval <= 12; interval++) {
        int lowest = interval >= 7 ? 56 : 63 - interval;
        check_interval(INSTRUMENT_VIOLIN, interval, lowest, 79, STOPPED_AT_ONCE);
    }
}

static void the_viola_plays_the_same_a_fifth_lower(void)
{
    for (int interval = 3; interval <= 12; interval++) {
        int lowest = interval >= 7 ? 49 : 56 - interval;
        check_interval(INSTRUMENT_VIOLA, interval, lowest, 70, STOPPED_AT_ONCE);
    }
}

/* Adler, from memory: on the cello thirds to sevenths lie well, octaves only with an open string or the thumb. */
static void the_cello_plays_sixths_anywhere_but_octaves_only_with_thumb_or_open_string(void)
{
    check_interval(INSTRUMENT_CELLO, 8, 37, 60, STOPPED_AT_ONCE);
    check_interval(INSTRUMENT_CELLO, 9, 37, 60, STOPPED_AT_ONCE);
    check_interval(INSTRUMENT_CELLO, 10, 37, 60, STOPPED_AT_ONCE);
    static const struct Chord chords[] = {
        { INSTRUMENT_CELLO, "C2 C3", STOPPED_AT_ONCE }, /* open C */
        { INSTRUMENT_CELLO, "G2 G3", STOPPED_AT_ONCE }, /* open G */
        { INSTRUMENT_CELLO, "D2 D3", STOPPED_NEVER },   /* first position, a fourth between the fingers */
        { INSTRUMENT_CELLO, "Eb2 Eb3", STOPPED_NEVER },
        { INSTRUMENT_CELLO, "A3 A4", STOPPED_AT_ONCE }, /* thumb on the D string */
    };
    check_chords(chords, COUNT(chords));
}

/* Adler and Piston, from memory: bass double stops are safe with an open string; stopped fourths and fifths lie in one position. */
static void the_bass_plays_little_more_than_fourths_fifths_and_open_strings(void)
{
    check_interval(INSTRUMENT_BASS_FOUR, 5, 29, 45, STOPPED_AT_ONCE);
    check_interval(INSTRUMENT_BASS_FOUR, 7, 29, 45, STOPPED_AT_ONCE);
    static const struct Chord chords[] = {
        { INSTRUMENT_BASS_FOUR, "E1 E2", STOPPED_AT_ONCE },/* an open string and any stop on its neighbour */
        { INSTRUMENT_BASS_FOUR, "F1 F2", STOPPED_NEVER },
        { INSTRUMENT_BASS_FOUR, "F1 C#2", STOPPED_NEVER }, /* a minor third between the fingers, where a hand spans a whole tone */
        { INSTRUMENT_BASS_FOUR, "E1 G1", STOPPED_NEVER },  /* both on the lowest string */
        { INSTRUMENT_BASS_FOUR, "D2 G2", STOPPED_AT_ONCE },/* open strings */
        { INSTRUMENT_BASS_FOUR, "D1 A1", STOPPED_NEVER },  /* below the four-string bass */
        { INSTRUMENT_BASS_FIVE, "D1 A1", STOPPED_AT_ONCE },
        { INSTRUMENT_BASS_FIVE, "B0 F#1", STOPPED_AT_ONCE },
    };
    check_chords(chords, COUNT(chords));
}

static void two_notes_below_the_second_string_cannot_sound_together(void)
{
    static const struct Chord chords[] = {
        { INSTRUMENT_VIOLIN, "G3 B3", STOPPED_NEVER },  { INSTRUMENT_VIOLIN, "A3 C#4", STOPPED_NEVER },
        { INSTRUMENT_VIOLA, "C3 E3", STOPPED_NEVER },   { INSTRUMENT_CELLO, "C2 E2", STOPPED_NEVER },
        { INSTRUMENT_VIOLIN, "C4 E4 G4", STOPPED_NEVER },/* a close triad: the top note lies below the third string */
        { INSTRUMENT_VIOLIN, "F3 C4", STOPPED_NEVER },  /* below the instrument */
    };
    check_chords(chords, COUNT(chords));
}

/* Lists in Piston and Adler, from memory. */
static void common_triple_stops_are_caught_at_once(void)
{
    static const struct Chord chords[] = {
        { INSTRUMENT_VIOLIN, "G3 D4 B4", STOPPED_AT_ONCE },  { INSTRUMENT_VIOLIN, "G3 E4 C5", STOPPED_AT_ONCE },
        { INSTRUMENT_VIOLIN, "A3 E4 C#5", STOPPED_AT_ONCE }, { INSTRUMENT_VIOLIN, "Bb3 F4 D5", STOPPED_AT_ONCE },
        { INSTRUMENT_VIOLIN, "D4 A4 F5", STOPPED_AT_ONCE },  { INSTRUMENT_VIOLIN, "D4 B4 G5", STOPPED_AT_ONCE },
        { INSTRUMENT_VIOLIN, "E4 B4 G5", STOPPED_AT_ONCE },  { INSTRUMENT_VIOLA, "C3 G3 E4", STOPPED_AT_ONCE },
        { INSTRUMENT_VIOLA, "D3 A3 F#4", STOPPED_AT_ONCE },  { INSTRUMENT_VIOLA, "G3 E4 C5", STOPPED_AT_ONCE },
        { INSTRUMENT_CELLO, "C2 G2 E3", STOPPED_AT_ONCE },   { INSTRUMENT_CELLO, "D2 A2 F#3", STOPPED_AT_ONCE },
        /* music example of the open encyclopedia's article 'Double stop' */
        { INSTRUMENT_CELLO, "G2 E3 C4", STOPPED_AT_ONCE },   { INSTRUMENT_CELLO, "G2 D3 B3", STOPPED_AT_ONCE },
    };
    check_chords(chords, COUNT(chords));
}

static void common_quadruple_stops_are_broken(void)
{
    static const struct Chord chords[] = {
        { INSTRUMENT_VIOLIN, "G3 D4 B4 G5", STOPPED_BROKEN },  { INSTRUMENT_VIOLIN, "A3 E4 C#5 A5", STOPPED_BROKEN },
        { INSTRUMENT_VIOLIN, "Bb3 F4 D5 Bb5", STOPPED_BROKEN },{ INSTRUMENT_VIOLIN, "G3 E4 C5 G5", STOPPED_BROKEN },
        { INSTRUMENT_VIOLA, "C3 G3 E4 C5", STOPPED_BROKEN },   { INSTRUMENT_VIOLA, "D3 A3 F#4 D5", STOPPED_BROKEN },
        { INSTRUMENT_CELLO, "C2 G2 E3 C4", STOPPED_BROKEN }, /* the same article's last chord */
        { INSTRUMENT_VIOLIN, "G3 D4 A4 E5 B5", STOPPED_NEVER }, /* five notes, four strings */
    };
    check_chords(chords, COUNT(chords));
}

static void strings_that_are_not_neighbours_cannot_sound_alone_together(void)
{
    static const struct Chord chords[] = {
        { INSTRUMENT_VIOLIN, "G3 A5", STOPPED_AT_ONCE }, /* high on the D string */
        { INSTRUMENT_VIOLIN, "G3 E7", STOPPED_NEVER },
        { INSTRUMENT_CELLO, "C2 A4", STOPPED_NEVER },
    };
    check_chords(chords, COUNT(chords));
}

static void the_bow_holds_two_strings_and_trembles_on_no_more(void)
{
    CU_ASSERT_EQUAL(stop(INSTRUMENT_VIOLA, "C3 G3 E4", MANNER_STRUCK, NULL), STOPPED_AT_ONCE);
    CU_ASSERT_EQUAL(stop(INSTRUMENT_VIOLA, "C3 G3 E4", MANNER_HELD, NULL), STOPPED_BROKEN);
    CU_ASSERT_EQUAL(stop(INSTRUMENT_VIOLA, "C3 G3 E4", MANNER_TREMOLO, NULL), STOPPED_NEVER);
    CU_ASSERT_EQUAL(stop(INSTRUMENT_VIOLA, "C3 G3 E4", MANNER_PLUCKED, NULL), STOPPED_BROKEN);
    CU_ASSERT_EQUAL(stop(INSTRUMENT_VIOLA, "G3 E4", MANNER_TREMOLO, NULL), STOPPED_AT_ONCE);
}

static void the_fingering_names_strings_stops_and_position(void)
{
    Fingering fingering;
    stop(INSTRUMENT_VIOLIN, "G3 D4 B4 G5", MANNER_STRUCK, &fingering);
    static const int strings[] = { 4, 3, 2, 1 }, stops[] = { 0, 0, 2, 3 };
    CU_ASSERT_EQUAL(fingering.count, 4);
    CU_ASSERT_EQUAL(memcmp(fingering.string, strings, sizeof strings), 0);
    CU_ASSERT_EQUAL(memcmp(fingering.stop, stops, sizeof stops), 0);
    CU_ASSERT_EQUAL(fingering.position, 1);
    stop(INSTRUMENT_VIOLIN, "A5 C6", MANNER_HELD, &fingering); /* a third: upper note on the E string */
    CU_ASSERT_EQUAL(fingering.string[0], 2);
    CU_ASSERT_EQUAL(fingering.stop[0], 12);
    CU_ASSERT_EQUAL(fingering.string[1], 1);
    CU_ASSERT_EQUAL(fingering.stop[1], 8);
    CU_ASSERT_EQUAL(fingering.position, 5);
}

static void one_finger_lies_across_two_strings_for_a_fifth(void)
{
    Fingering fingering;
    CU_ASSERT_EQUAL(stop(INSTRUMENT_VIOLIN, "A3 E4", MANNER_HELD, &fingering), STOPPED_AT_ONCE);
    CU_ASSERT_DOUBLE_EQUAL(fingering.frame, 0, 1e-9);
}

static void octaves_grow_easier_up_the_string_and_tenths_come_within_reach(void)
{
    Fingering low, high;
    stop(INSTRUMENT_VIOLIN, "A3 A4", MANNER_HELD, &low);
    stop(INSTRUMENT_VIOLIN, "A4 A5", MANNER_HELD, &high);
    CU_ASSERT(low.frame > high.frame || high.stop[0] < 12);
    CU_ASSERT_EQUAL(stop(INSTRUMENT_VIOLIN, "A3 C5", MANNER_HELD, NULL), STOPPED_NEVER); /* a tenth in first position */
    CU_ASSERT_EQUAL(stop(INSTRUMENT_VIOLIN, "A5 C7", MANNER_HELD, NULL), STOPPED_AT_ONCE);
}

static void natural_harmonics_are_touched_where_they_sound(void)
{
    Fingering fingering;
    static const int octave_and_open[] = { 62, 81 }; /* open D and the octave harmonic of the A string */
    static const bool marked[] = { false, true };
    CU_ASSERT_EQUAL(stopping_find(INSTRUMENT_VIOLIN, octave_and_open, marked, 2, MANNER_HELD, &fingering), STOPPED_AT_ONCE);
    CU_ASSERT(fingering.stop[1] == 12 || fingering.stop[1] == 7); /* half the A string, or a third of the D string */
    CU_ASSERT(fingering.harmonic[1] && !fingering.harmonic[0]);
    static const int fifth[] = { 81 }; /* the twelfth over D: touched a fifth up */
    static const bool yes[] = { true };
    CU_ASSERT_EQUAL(stopping_find(INSTRUMENT_VIOLIN, fifth, yes, 1, MANNER_HELD, &fingering), STOPPED_AT_ONCE);
    CU_ASSERT(fingering.stop[0] == 12 || fingering.stop[0] == 7);
    static const int none[] = { 63 }; /* E flat is no natural harmonic */
    CU_ASSERT_EQUAL(stopping_find(INSTRUMENT_VIOLIN, none, yes, 1, MANNER_HELD, NULL), STOPPED_NEVER);
}

static const struct Statement statements[] = {
    STATEMENT(the_violin_plays_all_intervals_from_thirds_to_octaves),
    STATEMENT(the_viola_plays_the_same_a_fifth_lower),
    STATEMENT(the_cello_plays_sixths_anywhere_but_octaves_only_with_thumb_or_open_string),
    STATEMENT(the_bass_plays_little_more_than_fourths_fifths_and_open_strings),
    STATEMENT(two_notes_below_the_second_string_cannot_sound_together),
    STATEMENT(common_triple_stops_are_caught_at_once),
    STATEMENT(common_quadruple_stops_are_broken),
    STATEMENT(strings_that_are_not_neighbours_cannot_sound_alone_together),
    STATEMENT(the_bow_holds_two_strings_and_trembles_on_no_more),
    STATEMENT(the_fingering_names_strings_stops_and_position),
    STATEMENT(one_finger_lies_across_two_strings_for_a_fifth),
    STATEMENT(octaves_grow_easier_up_the_string_and_tenths_come_within_reach),
    STATEMENT(natural_harmonics_are_touched_where_they_sound),
};
void suite_stopping(void) { suite_of("stopping", statements, COUNT(statements)); }
