/* score.h - a score file as the reader understood it: movements, bars, parts, notes, directions, and the order in which the bars sound. Views
 * only; times are exact.
 *
 * Time is counted in ticks; a movement says how many of them make a crotchet (quarter note), so that every written duration of that movement is a
 * whole number of ticks. All times are from the start of the movement as written (repeats not unfolded) but for SPZ_NOTES_PLAYED;
 * spz_movement_played gives the order in which the bars sound. Bars and parts are counted from 0; a function that is asked for one that isn't
 * there gives NULL, 0, or a record of nothing. */
#ifndef SPEZZATO_SCORE_H
#define SPEZZATO_SCORE_H

#include "spezzato/status.h"
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

SPZ_C_BEGIN

typedef struct spz_score spz_score;       /* one file */
typedef struct spz_movement spz_movement; /* one movement of it */
typedef int64_t spz_ticks;

/* A fraction in lowest terms; `under` is above 0. */
typedef struct spz_fraction {
    int64_t over, under;
} spz_fraction;

/* A pitch and its name; a sounding one unless it says otherwise. */
typedef struct spz_pitch {
    signed char step;   /* 0 C .. 6 B */
    signed char alter;  /* semitones: 1 sharp, -1 flat; -2..2 where it sounds, -4..4 where it is written */
    signed char octave; /* 4 begins with middle C */
    short midi;         /* 60 middle C; -1 where it has no pitch: step and octave then say where it stands on the staff */
} spz_pitch;
enum { SPZ_PITCH_TEXT = 16 };
SPZ_API char *spz_pitch_text(spz_pitch pitch, char text[SPZ_PITCH_TEXT]); /* as in data: "Eb4", "F#5", "unpitched" */

/* Reads a MusicXML score, plain or compressed (told apart by content, not by name); "-" is standard input, pipes will do. On failure `*out` is NULL and one
 * SPZ_ERROR message has gone to the sink. No network, no external entity. Codes: all input codes of status.h. */
SPZ_API spz_status spz_score_read(const char *path, const spz_sink *sink, spz_score **out);

/* The same from memory; `name` is used in messages and as the file name of reports. */
SPZ_API spz_status spz_score_read_memory(const void *data, size_t size, const char *name, const spz_sink *sink,
                                         spz_score **out);
SPZ_API void spz_score_free(spz_score *score); /* takes NULL; movements and everything asked of them go with it */

SPZ_API const char *spz_score_file(const spz_score *score); /* as messages name it */
SPZ_API size_t spz_score_movement_count(const spz_score *score); /* at least 1 */
SPZ_API const spz_movement *spz_score_movement(const spz_score *score, size_t index); /* NULL past the end */

SPZ_API const char *spz_movement_title(const spz_movement *movement); /* 'Work: movement'; never NULL, may be "" */
SPZ_API const char *spz_movement_composer(const spz_movement *movement); /* likewise */
SPZ_API const char *spz_movement_file(const spz_movement *movement); /* of its score, likewise */
SPZ_API int spz_movement_year(const spz_movement *movement); /* of composition, when the file states one; 0 if not */
SPZ_API spz_ticks spz_movement_per_crotchet(const spz_movement *movement); /* ticks: what all times of the movement are counted in */
SPZ_API spz_ticks spz_movement_length(const spz_movement *movement); /* ticks, each bar once */
/* Crotchets a minute at `when`: the last tempo mark at or before it in any part; 0 before the first. */
SPZ_API double spz_movement_tempo(const spz_movement *movement, spz_ticks when);

/* Bars: shared by all parts, lying end to end. */
typedef struct spz_bar {
    const char *number;     /* as printed: "12", "12a", "X1", "" */
    const char *letter;     /* rehearsal letter or number that stands in it, NULL where there is none */
    spz_ticks onset, length; /* what the notes fill */
    spz_ticks nominal;      /* what the time signature asks for; 0 where there is none */
    spz_ticks beat;         /* one beat as a conductor counts: a dotted crotchet in 6/8 */
    int fifths;             /* key signature of the first part: sharps, below 0 flats */
    bool counted;           /* false: an upbeat, the second half of a split bar */
} spz_bar;
SPZ_API size_t spz_movement_bars(const spz_movement *movement); /* as they stand on paper, each once */
SPZ_API const char *spz_movement_bar_number(const spz_movement *movement, size_t bar); /* as printed */
SPZ_API spz_bar spz_movement_bar(const spz_movement *movement, size_t bar); /* all 0 past the end */
SPZ_API size_t spz_movement_bar_at(const spz_movement *movement, spz_ticks when); /* the last that begins at or before it */

/* The bars in the order in which they sound: repeats, endings, da capo, dal segno, coda, fine; docs/formats.md holds the rule. */
typedef struct spz_played_bar {
    size_t bar;
    int pass; /* the how manieth time through its repeat, from 1; 0 where that isn't known */
} spz_played_bar;
SPZ_API size_t spz_movement_played(const spz_movement *movement); /* how many bars sound, each as often as it does */
SPZ_API spz_played_bar spz_movement_played_bar(const spz_movement *movement, size_t index); /* in order of sounding; all 0 past the end */

/* Parts, as the file names them; what they are is a matter of sections.h. Strings are never NULL, may be "". */
typedef struct spz_part {
    const char *id, *name, *abbreviation;
    const char *groups;     /* names of the brackets it stands in, outermost first, '|' between */
    const char *instrument; /* name of its first instrument */
    const char *sound;      /* MusicXML sound id of that: "strings.violin" */
    int midi_program;       /* General MIDI, 1..128; 0 not known */
    int staves;             /* 1 or more */
    size_t directions;
} spz_part;
SPZ_API size_t spz_movement_parts(const spz_movement *movement); /* in the order of the file */
SPZ_API const char *spz_movement_part_name(const spz_movement *movement, size_t part); /* as printed, may be ""; NULL past the end */
SPZ_API spz_part spz_movement_part(const spz_movement *movement, size_t part); /* all 0 past the end */

/* The ladder of loudness. */
typedef enum spz_dynamic {
    SPZ_DYNAMIC_NONE, /* nothing is said yet */
    SPZ_DYNAMIC_PPPP, SPZ_DYNAMIC_PPP, SPZ_DYNAMIC_PP, SPZ_DYNAMIC_P, SPZ_DYNAMIC_MP, SPZ_DYNAMIC_MF, SPZ_DYNAMIC_F, SPZ_DYNAMIC_FF, SPZ_DYNAMIC_FFF,
    SPZ_DYNAMIC_FFFF, SPZ_DYNAMIC_COUNT
} spz_dynamic;
SPZ_API const char *spz_dynamic_name(spz_dynamic dynamic); /* "pppp" .. "ffff"; "" for none */

/* Signs between the notes. */
typedef enum spz_direction_kind {
    SPZ_DIRECTION_WORDS,     /* text: any words: "div.", "pizz.", "a tempo" */
    SPZ_DIRECTION_DYNAMIC,   /* dynamic: the nearest of the ladder; text: as written, "sfz" */
    SPZ_DIRECTION_WEDGE,     /* value: 1 louder from here, -1 softer, 0 the end of either */
    SPZ_DIRECTION_TEMPO,     /* tempo; value: 1 for a mark that the players see, 0 for a number for playing back alone; text: words with it */
    SPZ_DIRECTION_REHEARSAL, /* text: the letter or number */
    SPZ_DIRECTION_SIGN,      /* text: "segno", "coda", "tocoda", "fine", "dacapo", "dalsegno" */
    SPZ_DIRECTION_PLAYING    /* value: 1 pizzicato, 0 with the bow, where the file says it apart from words */
} spz_direction_kind;
typedef struct spz_direction {
    spz_direction_kind kind;
    spz_ticks onset;
    size_t bar;
    spz_fraction beat; /* as in spz_note */
    int staff;         /* from 1; 0: the whole part */
    const char *text;  /* "" where the kind has none */
    spz_dynamic dynamic;
    int value;
    double tempo;      /* crotchets a minute */
    long line;         /* in the file */
} spz_direction;
SPZ_API spz_direction spz_movement_direction(const spz_movement *movement, size_t part, size_t index); /* by onset, then as in the file */

/* What a note carries. */
typedef enum spz_note_mark {
    SPZ_NOTE_CHORD = 1 << 0,         /* sounds with the note before it */
    SPZ_NOTE_GRACE = 1 << 1,         /* duration 0; before its main note */
    SPZ_NOTE_GRACE_AFTER = 1 << 2,   /* with SPZ_NOTE_GRACE: behind the note before it, at the end of its bar */
    SPZ_NOTE_CUE = 1 << 3,           /* printed only, not heard */
    SPZ_NOTE_TIE_START = 1 << 4,     /* tied to a later note */
    SPZ_NOTE_TIE_STOP = 1 << 5,      /* tied to an earlier one */
    SPZ_NOTE_UNPITCHED = 1 << 6,
    SPZ_NOTE_TREMOLO = 1 << 7,       /* repeated: strokes through its stem */
    SPZ_NOTE_TREMOLO_PAIR = 1 << 8,  /* alternates with its partner */
    SPZ_NOTE_SLUR_START = 1 << 9,
    SPZ_NOTE_SLUR_STOP = 1 << 10,
    SPZ_NOTE_STACCATO = 1 << 11,     /* dot or wedge */
    SPZ_NOTE_ACCENT = 1 << 12,
    SPZ_NOTE_HARMONIC = 1 << 13,
    SPZ_NOTE_ARPEGGIO = 1 << 14,     /* of a chord to be broken */
    SPZ_NOTE_TRILL = 1 << 15,
    SPZ_NOTE_FERMATA = 1 << 16,
    SPZ_NOTE_SLASH = 1 << 17,        /* stands for repeated material that the file doesn't write out */
    SPZ_NOTE_COPIED = 1 << 18,       /* supplied for a sign that repeats bars */
    SPZ_NOTE_PIZZICATO = 1 << 19,    /* under a pizz. mark */
    SPZ_NOTE_MUTED = 1 << 20,        /* under con sord. */
    SPZ_NOTE_UP_BOW = 1 << 21,
    SPZ_NOTE_DOWN_BOW = 1 << 22,
    SPZ_NOTE_TENUTO = 1 << 23,       /* a line */
    SPZ_NOTE_IN_QUAVERS = 1 << 24,   /* with one of the two above: so many lines, beams or flags and strokes together, that they are counted, */
    SPZ_NOTE_IN_SEMIQUAVERS = 1 << 25 /* as if written out: one line makes quavers, two make semiquavers; neither mark: a tremolo proper */
} spz_note_mark;

typedef struct spz_note {
    size_t part, bar;          /* on paper, also where repeats are unfolded */
    spz_fraction beat;         /* in that bar, from 1, in beats as a conductor counts; an upbeat counts from the bar's end */
    spz_ticks onset, duration; /* duration 0 for grace notes only */
    int staff;                 /* from 1 */
    const char *voice;         /* as the file names it: "1" */
    spz_pitch sounding, written; /* apart for transposing instruments; both are `midi` -1 where it has no pitch */
    int cents;                 /* -50..50: what sounds above `sounding.midi` */
    unsigned marks;            /* sum of spz_note_mark; of joined notes those of the first */
    spz_dynamic dynamic;       /* in force there */
    unsigned passes;           /* bit n-1: sounds the nth time through its repeat, bit 15 for all later times; 0: every time */
    long line;                 /* in the file */
} spz_note;

typedef enum spz_notes_as {
    SPZ_NOTES_WRITTEN, /* every note of the part as it stands on paper, cue notes and slashes too */
    SPZ_NOTES_HEARD,   /* tied notes joined, cue notes and slashes left out */
    SPZ_NOTES_PLAYED   /* likewise in the order in which the bars sound; onsets are from the start of the performance */
} spz_notes_as;
typedef struct spz_notes spz_notes; /* the notes of a part, by onset, then staff, voice, order in the file. The movement must outlive them */
SPZ_API spz_status spz_notes_make(const spz_movement *movement, size_t part, spz_notes_as as, spz_notes **out); /* SPZ_BAD_ARGUMENT: no such part */
SPZ_API void spz_notes_free(spz_notes *notes); /* takes NULL */
SPZ_API size_t spz_notes_count(const spz_notes *notes); /* chord notes each by itself */
SPZ_API const spz_note *spz_notes_at(const spz_notes *notes, size_t index); /* NULL past the end */

SPZ_C_END
#endif
