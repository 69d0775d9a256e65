/* stave_bars.h - the notes of a stave bar by bar, as they are written: chords, values, rests, ties over the bar line. */
#ifndef PAGES_DRAWINGS_STAVE_BARS_H
#define PAGES_DRAWINGS_STAVE_BARS_H
#include "pages/drawings/staves/stave.h"
#include "support/array.h"

enum { CHORD_MOST = 6, PLACE_MIDDLE_C = 28 };

/* How a length is written: 0 a semibreve, 1 a minim, 2 a crotchet, 3 a quaver ... */
typedef struct Value {
    int type, dots;
    bool triplet;
} Value;

typedef struct StaveChord { /* or a rest: `count` 0 */
    Ticks onset, duration; /* within its bar */
    size_t bar;
    const Note *notes[CHORD_MOST];
    int places[CHORD_MOST]; /* seven times the octave, and the step, as written; from the top */
    int count;
    bool goes_on, went_on;  /* tied to what follows, to what comes before */
    int entry;              /* of the passage: 0 none, 1 in a call, 2 in an answer */
    Value value;
    size_t beam;            /* same number: one beam; 0 none */
} StaveChord;
typedef ARRAY(StaveChord) ChordList;

typedef struct Stave {
    const Group *group;  /* NULL for winds */
    GroupSound *winds;   /* owned: of one part, where there is no group */
    size_t index;        /* of the group; SIZE_MAX for winds */
    const GroupSound *sounds;
    size_t sound_count;
    int bottom;          /* place of the lowest line */
    int clef;            /* 0 treble, 1 alto, 2 tenor, 3 bass */
    ChordList chords;
} Stave;

/* The staves of the passage in score order, at most `most`; those who call and answer first come before others where there are too many. */
size_t staves_of(const ScoreView *view, const spz_passage *passage, Stave *staves, size_t most);
void staves_free(Stave *staves, size_t count);
/* Fills `chords` with bars first..end-1. False without memory. */
bool stave_fill(const ScoreView *view, const spz_passage *passage, Stave *stave, size_t first, size_t end);
bool stave_has_entry(const Stave *stave, const spz_entry *entry);
#endif
