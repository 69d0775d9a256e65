/* stopping.h - what one player's left hand and bow can do with several notes at once.
 *
 * Each note needs a string of its own at or below its pitch; the strings must lie side by side, or the bow would touch the one
 * between. Stopped notes must fall into the hand frame: the distance on the string between the lowest and the highest stop, in
 * millimetres, so that the same hand spans more semitones the higher it plays. One finger may lie across two neighbouring
 * strings (a fifth; a fourth on the bass). Up to two strings sound together for as long as one likes, three only when struck at
 * once, four only broken. Frame limits and their reasons stand in stopping.c. */
#ifndef ANALYSIS_DIVISION_STOPPING_H
#define ANALYSIS_DIVISION_STOPPING_H
#include <stdbool.h>
#include <stddef.h>

typedef enum Instrument {
    INSTRUMENT_VIOLIN, INSTRUMENT_VIOLA, INSTRUMENT_CELLO,
    INSTRUMENT_BASS_FOUR, /* E A D G */
    INSTRUMENT_BASS_FIVE, /* B E A D G */
    INSTRUMENT_COUNT
} Instrument;

/* How the notes are meant to sound. */
typedef enum Manner {
    MANNER_STRUCK,  /* a short or accented chord */
    MANNER_HELD,    /* all notes go on sounding */
    MANNER_TREMOLO, /* quickly repeated: there is no time to break it */
    MANNER_PLUCKED
} Manner;

typedef enum Stopping { STOPPED_AT_ONCE, STOPPED_BROKEN, STOPPED_NEVER } Stopping;

enum { STRINGS_MOST = 5, CHORD_MOST = 8 };

typedef struct Fingering {
    Stopping verdict;
    int count;
    int string[CHORD_MOST]; /* of each note, 1 is the highest string, as players count */
    int stop[CHORD_MOST];   /* semitones above the open string; 0 is open */
    bool harmonic[CHORD_MOST]; /* touched, not stopped */
    int position;           /* of the hand: 0 nothing stopped, 1 first position (half position too), 2.. */
    double frame;           /* millimetres between the outer stops */
} Fingering;

/* Finds the most comfortable fingering: a small frame in a low position. `midi` are sounding pitches in any order;
 * `harmonics` (may be NULL) tells which are marked as natural harmonics. `out` may be NULL. A single note is playable when it
 * lies on the instrument at all; so more than CHORD_MOST notes are never playable. */
Stopping stopping_find(Instrument instrument, const int *midi, const bool *harmonics, int count, Manner manner, Fingering *out);

const char *instrument_name(Instrument instrument);
#endif
