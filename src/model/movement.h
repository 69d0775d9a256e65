/* movement.h - the model that the reader fills and everything after it reads: movements, bars, parts, notes, marks.
 *
 * Invariants once the reader is done:
 *   - every time is a whole number of ticks; `per_crotchet` ticks make a crotchet; nothing is rounded
 *   - bars are shared by all parts and lie end to end: bars[i].onset + bars[i].length == bars[i + 1].onset
 *   - a part's notes are sorted by onset, then staff, voice, order in the file; its marks by onset, then order in the file
 *   - a note's pitch is the sounding one (transposition applied; clef octave and ottava change nothing: MusicXML writes
 *     the pitch that sounds but for `transpose`); the written one is packed beside it
 *   - tied notes are still apart here: stream.h joins them
 *   - strings live in the score's arena and are UTF-8
 */
#ifndef MODEL_MOVEMENT_H
#define MODEL_MOVEMENT_H
#include "spezzato/score.h"
#include "support/arena.h"
#include "support/ticks.h"
#include <stdbool.h>
#include <stdint.h>

/* The ladder and the marks of score.h. */
typedef enum Dynamic {
    DYNAMIC_NONE = SPZ_DYNAMIC_NONE, DYNAMIC_PPPP = SPZ_DYNAMIC_PPPP, DYNAMIC_PPP = SPZ_DYNAMIC_PPP, DYNAMIC_PP = SPZ_DYNAMIC_PP,
    DYNAMIC_P = SPZ_DYNAMIC_P, DYNAMIC_MP = SPZ_DYNAMIC_MP, DYNAMIC_MF = SPZ_DYNAMIC_MF, DYNAMIC_F = SPZ_DYNAMIC_F,
    DYNAMIC_FF = SPZ_DYNAMIC_FF, DYNAMIC_FFF = SPZ_DYNAMIC_FFF, DYNAMIC_FFFF = SPZ_DYNAMIC_FFFF
} Dynamic;
enum NoteFlag {
    NOTE_CHORD = SPZ_NOTE_CHORD, NOTE_GRACE = SPZ_NOTE_GRACE, NOTE_GRACE_AFTER = SPZ_NOTE_GRACE_AFTER, NOTE_CUE = SPZ_NOTE_CUE,
    NOTE_TIE_START = SPZ_NOTE_TIE_START, NOTE_TIE_STOP = SPZ_NOTE_TIE_STOP, NOTE_UNPITCHED = SPZ_NOTE_UNPITCHED,
    NOTE_TREMOLO = SPZ_NOTE_TREMOLO, NOTE_TREMOLO_PAIR = SPZ_NOTE_TREMOLO_PAIR, NOTE_SLUR_START = SPZ_NOTE_SLUR_START,
    NOTE_SLUR_STOP = SPZ_NOTE_SLUR_STOP, NOTE_STACCATO = SPZ_NOTE_STACCATO, NOTE_ACCENT = SPZ_NOTE_ACCENT,
    NOTE_HARMONIC = SPZ_NOTE_HARMONIC, NOTE_ARPEGGIO = SPZ_NOTE_ARPEGGIO, NOTE_TRILL = SPZ_NOTE_TRILL, NOTE_FERMATA = SPZ_NOTE_FERMATA,
    NOTE_SLASH = SPZ_NOTE_SLASH, NOTE_COPIED = SPZ_NOTE_COPIED, NOTE_PIZZICATO = SPZ_NOTE_PIZZICATO, NOTE_MUTED = SPZ_NOTE_MUTED,
    NOTE_UP_BOW = SPZ_NOTE_UP_BOW, NOTE_DOWN_BOW = SPZ_NOTE_DOWN_BOW, NOTE_TENUTO = SPZ_NOTE_TENUTO,
    NOTE_IN_QUAVERS = SPZ_NOTE_IN_QUAVERS, NOTE_IN_SEMIQUAVERS = SPZ_NOTE_IN_SEMIQUAVERS
};

/* Flags of a note whose strokes are no abbreviation of counted notes: too many lines to count, or no measure at all. */
static inline bool trembles(uint32_t flags)
{
    return flags & (NOTE_TREMOLO | NOTE_TREMOLO_PAIR) && !(flags & (NOTE_IN_QUAVERS | NOTE_IN_SEMIQUAVERS));
}

typedef struct Note {
    Ticks onset, duration; /* from the start of the movement; duration 0 only for grace notes */
    uint32_t flags;        /* NoteFlag */
    uint32_t line;         /* line in the XML */
    int32_t bar;           /* index into bars */
    uint8_t voice;         /* index into the part's voice names */
    uint8_t staff;         /* from 1 */
    uint8_t dynamic : 4;   /* Dynamic in force for this staff */
    uint8_t written_alter : 4; /* on paper, and four: 0..8 */
    uint8_t written_place; /* on paper: seven times the octave, and the step */
    int16_t midi;          /* sounding, rounded to a semitone; -1 when unpitched */
    int8_t cents;          /* what the rounding dropped, -50..50 (microtones) */
    int8_t step;           /* sounding spelling, as the ear compares steps: 0 = C .. 6 = B */
    int8_t alter;          /* in semitones; beyond -2..2 only what a transposition makes so */
    int8_t octave;         /* 4 holds middle C */
    uint16_t passes;       /* bit n-1: sounds the n-th time through a repeat, the last bit for all beyond; 0: every time */
} Note;

typedef enum DirectionKind {
    DIRECTION_WORDS = SPZ_DIRECTION_WORDS,
    DIRECTION_DYNAMIC = SPZ_DIRECTION_DYNAMIC,     /* value: Dynamic */
    DIRECTION_WEDGE = SPZ_DIRECTION_WEDGE,
    DIRECTION_TEMPO = SPZ_DIRECTION_TEMPO,         /* value: TempoSource */
    DIRECTION_REHEARSAL = SPZ_DIRECTION_REHEARSAL,
    DIRECTION_SIGN = SPZ_DIRECTION_SIGN,
    DIRECTION_PLAYING = SPZ_DIRECTION_PLAYING      /* value: Playing; what <sound> says of it. What words say is read from DIRECTION_WORDS */
} DirectionKind;

/* A number for playing back, or a metronome mark that the players see. */
typedef enum TempoSource { TEMPO_PLAYED, TEMPO_PRINTED } TempoSource;

typedef enum Playing { PLAYING_ARCO, PLAYING_PIZZICATO } Playing;

typedef struct Direction {
    Ticks onset;
    const char *text; /* may be NULL */
    double rate;      /* DIRECTION_TEMPO only */
    uint32_t line;
    int32_t bar;
    int32_t value;
    uint8_t kind;     /* DirectionKind */
    uint8_t staff;    /* 0: the whole part */
} Direction;

/* A page of a part that begins with a bar, because the file says so. */
typedef struct PartPage {
    int32_t bar;      /* index */
    int32_t number;   /* of the page, where the file gives it; else 0 */
} PartPage;

typedef struct Part {
    const char *id, *name, *abbreviation; /* never NULL; may be "" */
    const char *groups;                   /* names of the part groups it stands in, outermost first, '|' between; "" */
    int bracket, inner_bracket;           /* the outermost bracket, brace or square over it in the list of parts, and the innermost: numbered from 1; 0: none */
    const char *instrument;               /* instrument-name of its first instrument, "" */
    const char *sound;                    /* MusicXML sound id of its first instrument ('strings.violin'), "" */
    const char **voices;                  /* voice names by index */
    Note *notes;
    Direction *directions;
    size_t voice_count, note_count, direction_count;
    int midi_program;                     /* General MIDI, 1..128; 0 unknown */
    int staves;                           /* at least 1 */
    int written_bars;                     /* bars that the file gives this part */
    const Ticks *filled, *asked;          /* written_bars of each: what the part's bar holds, and what its time signature asks for (0: nothing) */
    const PartPage *pages;                /* by bars; those of the whole score stand in every part alike, or in the first alone */
    size_t page_count;
    int doubled;                          /* -1 or 1: other players play along an octave below or above; 0 */
    char clef;                            /* the sign of the first clef of its upper staff: 'G', 'C', 'F'; 0 where there is none */
    int clef_line;                        /* the line that it stands on, from the lowest; 0 where the file doesn't say */
    int ensemble;                         /* 'players' of the file (instrument-sound ensemble / solo): 1 solo, 0 unknown, >1 ensemble */
} Part;

typedef struct Bar {
    const char *number;    /* as printed: '12', '12a', 'X1', '' */
    const char *rehearsal; /* letter at or before this bar's end, NULL where none starts in it */
    Ticks onset, length;   /* what the notes fill; nominal from the time signature, 0 when senza misura */
    Ticks nominal;
    Ticks beat;            /* length of one beat as a conductor counts: a dotted crotchet in 6/8 */
    uint32_t line;
    int16_t fifths;        /* key signature of the first part */
    bool implicit;         /* not counted: pickups, second halves of split bars */
    /* repeat structure, read off any part */
    bool repeat_start, repeat_end;
    bool repeat_start_next; /* a forward sign on its right barline; the reader moves it to the next bar */
    uint8_t repeat_times;  /* how often in all; 2 when not said */
    bool repeat_after_jump; /* its backward sign counts after a da capo or dal segno too */
    bool ending_start, ending_stop;
    uint32_t ending;       /* bit n-1: counts for the n-th pass; 0 outside endings */
    bool segno, coda, to_coda, da_capo, dal_segno, fine; /* signs and `sound` attributes */
    const char *segno_name, *dal_segno_name, *coda_name, *to_coda_name; /* labels that <sound> gives them, where there are several; NULL */
    bool da_capo_words, dal_segno_words; /* what words alone ask for: <sound> beats them; the reader settles it */
    bool final;            /* light-heavy barline */
    bool double_bar;       /* two thin lines at its end */
    bool trio;             /* 'Trio' stands over it */
} Bar;

typedef struct Tempo {
    Ticks onset;
    double rate; /* crotchets a minute */
    bool printed; /* players read it; else it is for playing back alone */
} Tempo;

struct spz_movement {
    const char *file, *title, *work, *composer; /* never NULL; of a compressed score `file` is 'archive:member' */
    const char *score;    /* path of the file that the user gave; NULL: `file` is */
    Part *parts;
    Bar *bars;
    size_t part_count, bar_count;
    size_t number;        /* among the movements of its score file, from 1 */
    size_t first_in_file; /* its first bar among the bars of its file, which may hold several movements */
    Ticks per_crotchet, length;
    Tempo *tempos; /* all tempo marks of all parts, by onset, one a moment */
    size_t tempo_count;
    int year;
    /* Playing order: indices of bars, as they sound; filled by playing_order.h. */
    int32_t *played;
    uint8_t *played_pass;  /* the how manieth time through its repeat each of them is, from 1; 0 unknown */
    size_t played_count;
    bool played_broken;    /* the repeat signs contradict each other; bars are then played as written */
};
typedef struct spz_movement Movement;

struct spz_score {
    Arena arena; /* owns everything below */
    const char *file;
    Movement *movements;
    size_t movement_count;
};
typedef struct spz_score Score;

/* Name of the part as printed; where it has none 'part 5', as a correction would call it. Into `text` where it is made. */
enum { PART_PLACE_TEXT = 32 };
const char *movement_part_name(const Movement *movement, size_t part, char text[PART_PLACE_TEXT]);

/* Name of the score file without its folder, as every document has it. */
const char *movement_score_name(const Movement *movement);

/* The bar that holds time `when` (the last one that starts at or before it); -1 for a movement of no bars. */
int movement_bar_at(const Movement *movement, Ticks when);
bool movement_ending_goes_on(const Movement *movement, size_t bar);          /* the next bar stands under the same bracket */
long movement_part_of(const Movement *movement, const char *id);             /* by its id in the file; -1 for none, and for NULL */

/* Beat in the bar, from 1, as ticks of which `*beat` make one; and exactly as '2' or '5/2', in units of the bar's beat. */
Ticks movement_beat_at(const Movement *movement, Ticks when, Ticks *beat);
Ticks movement_beat_in(const Movement *movement, int bar, Ticks when, Ticks *beat); /* counted from that bar, also past its end */
char *movement_beat_text(const Movement *movement, Ticks when, char text[TICKS_TEXT]);

/* Crotchets a minute at `when`: the last tempo mark at or before it in any part; 0 when the score gives none. */
double movement_tempo_at(const Movement *movement, Ticks when);

/* Nearest rehearsal letter and how many counted bars lie behind it; "" and 0 before the first letter. As text: 'B', 'B+3'. */
const char *movement_letter_at(const Movement *movement, int bar, int *after);
enum { REHEARSAL_TEXT = 64 };
char *movement_rehearsal_text(const Movement *movement, int bar, char text[REHEARSAL_TEXT]);

spz_pitch pitch_of(const Note *note);         /* as it sounds, by a name with a double sharp or flat at most */
spz_pitch pitch_written_of(const Note *note); /* as it stands on paper */
spz_fraction fraction_of(Ticks over, Ticks under); /* under > 0; in lowest terms */

/* 'Eb4', 'F#5', 'unpitched'. */
enum { PITCH_TEXT = SPZ_PITCH_TEXT };
char *note_pitch_text(const Note *note, char text[PITCH_TEXT]);
#endif
