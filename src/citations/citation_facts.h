/* citation_facts.h - what is known about the passages worth citing, in no language: the passages' own facts, the times at which they sound,
 * and how the movement looks as a whole. */
#ifndef CITATIONS_CITATION_FACTS_H
#define CITATIONS_CITATION_FACTS_H
#include "citations/contrast.h"
#include "citations/time_line.h"
#include "spezzato/sheets.h"
#include "support/arena.h"
#include "support/array.h"
#include <stdint.h>

enum { TIMES_MOST = 4, RETURNS_MOST = 4, TOLD_MOST = 16, HEARD_MOST = 64, WINDS_MOST = 2, JOINED_MOST = 8, CONTEXT_TEXT = 64, HEADING_TEXT = 256 };

/* What kind of sentence a citation asks for; sentences of one shape take turns. */
typedef enum Shape {
    SHAPE_EXCHANGE, SHAPE_IMITATION, SHAPE_HOCKET, SHAPE_SPLIT_LINE, SHAPE_CHAIN, SHAPE_STRETTO, SHAPE_DIVIDED, SHAPE_VIOLINS, SHAPE_SOLOISTS,
    SHAPE_COUPLING, SHAPE_TO_AND_FRO, SHAPE_ONCE, SHAPE_SWAP, SHAPE_COUNT
} Shape;

/* A moment of the movement as it sounds. */
typedef struct Sounding {
    double seconds; /* from the first note */
    double share;   /* 0..1 of the whole length */
} Sounding;

/* An entry of what is told. */
typedef struct Heard {
    size_t entry;      /* the passage's */
    spz_players players; /* who begins it, those of other entries that begin with it too */
    bool at_interval;  /* `change` is the interval of most of its notes from those of the first entry; never of the first itself */
    spz_change change;
} Heard;

/* Passages that tell one story in pieces. */
typedef struct Joined {
    const spz_passage *passage;  /* what is cited: the one passage, or all of them put together */
    size_t places[JOINED_MOST];  /* in the findings, the one that was picked first */
    size_t count;
    bool rest;                   /* what of it begins anew behind a long break */
} Joined;

typedef struct Citation {
    const spz_passage *passage;
    Joined joined;
    Shape shape;
    size_t variant;               /* how many of its shape were cited before it, through the whole document */
    bool alike;                   /* every answer has the same interval from its call, at its first note and at its last */
    spz_change change;            /* that */
    spz_link told[TOLD_MOST];     /* a dialogue's players as they are told: the first, then all who answer, in order of their first answer */
    size_t told_entry[TOLD_MOST]; /* the passage's entry that stands for each; SIZE_MAX for none */
    size_t told_count;
    size_t entries;               /* of the passage's entries so many are of one story: behind them it begins anew after a long break */
    Heard heard[HEARD_MOST];      /* every entry of that, in order of time; heard_all of them, of which heard_count stand here */
    size_t heard_count, heard_all;
    bool counted;                 /* whoever of those told enters in the passage enters with it: their entries can be numbered */
    bool led;                     /* the first of them leads; false where two go to and fro and either might */
    bool borne_out;               /* false: the notes don't show that anybody answers, the passage alone says so */
    bool heard_before;            /* others have had the first call already, shortly before */
    bool swapped;                 /* two who change places: each takes up what the other has just played */
    size_t last;                  /* bar in which what is told ends: the passage's last, or before it */
    size_t upbeat_to;             /* the bar whose upbeat it begins on; its own first bar where it begins on no upbeat */
    Sounding times[TIMES_MOST];   /* when it begins; the first `time_count` times that it sounds */
    size_t time_count;
    char tempo[CONTEXT_TEXT];     /* the words for the tempo that holds there, "" for none */
    bool trio;                    /* it stands in a trio */
    bool has_key, minor;          /* the key, where another signature holds than at the beginning and the bass agrees on one */
    int fifths;
    spz_dynamic loudness, answer_loudness; /* of the first call and the first answer, where a sign of loudness holds there */
    char winds[WINDS_MOST][CONTEXT_TEXT]; /* who of the winds begins, as the file names them; wind_count is 0 where it is many */
    size_t wind_count;
    bool shared_out;              /* one group of players has the line by itself elsewhere: there */
    Contrast whole;
    const spz_passage *returns[RETURNS_MOST]; /* the same again later, in order of bars */
    size_t return_count;
} Citation;

typedef enum SeatingWord { SEATING_NONE, SEATING_OPEN, SEATING_OPPOSED, SEATING_TOGETHER } SeatingWord;

/* A movement as a whole. */
typedef struct Overview {
    size_t dialogues, striking;  /* passages of antiphony that are at least clear; striking ones among them */
    spz_group pair[2];           /* the two bodies of players that have most of them between them; pair_count of them */
    size_t pair_count;
    size_t divided, threefold;   /* passages of divided sections; those in three or more lines */
    size_t coupled;              /* passages in which two sections move as one */
    SeatingWord seating;         /* SEATING_NONE too where the movement before it in the same work has the same */
    const Citation *strongest;   /* of the dialogues cited; NULL when there are none */
    double duration;             /* seconds; 0 not known */
    bool marked;                 /* the file has tempos, printed or for playing back alone */
    bool printed;                /* some of them are printed */
    bool given;                  /* the user said how long it lasts */
    bool tapped;                 /* the user said when some bars sound */
    bool timed_alike;            /* how its length is come by was told of the movement before, and is the same */
    bool repeats;                /* some bars are played again */
    bool strings;
    bool upbeat_counted;         /* numbers as the file has them: its upbeat is bar 1 */
    size_t halves;               /* the first of its bars whose two halves are both counted; the bar count where there is none */
} Overview;

typedef struct MovementNotes {
    const spz_movement *movement;
    const spz_sections *sections;
    const char *file;
    char title[HEADING_TEXT];
    bool has_key, minor;         /* the key, where the signature and the last bass note agree on one */
    int fifths;
    int year;                    /* of composition that counts: the score's, or the one given; 0 */
    size_t number;               /* of the movement in the document, from 0 */
    ARRAY(Citation) citations;   /* in order of bars */
    Overview overview;
    TimeLine line;
    Arena arena;                 /* of passages that were put together */
} MovementNotes;

/* What one document remembers from movement to movement; all 0 at first. */
typedef struct NotesRun {
    size_t movements, told[SHAPE_COUNT];
    const char *work;            /* of the movement before */
    bool marked, printed, reckoned; /* its tempos; whether its length was reckoned from them */
    SeatingWord seating;         /* and its seating */
} NotesRun;

/* Always to be followed by notes_free. SPZ_BAD_ARGUMENT for anchors that are out of order. */
spz_status notes_of(const spz_movement_reading *reading, const spz_note_options *options, NotesRun *run, MovementNotes *notes);
void notes_free(MovementNotes *notes);

/* citation_told.c: fills in what is told of a dialogue's players. A body of players that is heard beside an answer, and answers nobody, is not
 * told, nor is one that answers in passing, or plays what is unlike the call. */
void citation_tell(const spz_sections *sections, Citation *citation);
/* Which of two is named first: who leads, or is heard first where each has it once; else who stands higher in the score. 0 or 1. */
size_t citation_named_first(const Citation *citation);

/* citation_context.c: fills in what the file says around it. */
void citation_surround(const spz_movement *movement, const spz_sections *sections, Citation *citation);
/* Wind parts that begin an entry of the winds, in score order; returns how many, of which at most `most` are written. */
size_t citation_wind_parts(const spz_movement *movement, const spz_sections *sections, const spz_entry *entry, size_t *parts, size_t most);
/* As the file names it, without what an editor adds in brackets. */
void citation_part_name(const spz_movement *movement, size_t part, char out[CONTEXT_TEXT]);
/* The bar to which the entry is an upbeat; the bar in which it begins where it is none. */
size_t citation_upbeat_to(const spz_movement *movement, const spz_entry *entry);
/* A heading for the movement: its title, or what says more than a title that only counts or is a code. */
void movement_heading(const spz_movement *movement, char out[HEADING_TEXT]);
/* False where it is not plain. `fifths` as in bars: sharps, below 0 flats. */
bool movement_key(const spz_movement *movement, int *fifths, bool *minor);

/* citation_pick.c: places in the findings of the passages worth citing, in order of bars; at most `most` (0: all that are strong enough). A
 * passage that returns is picked where it is first heard. */
typedef ARRAY(size_t) PlaceInFindings;
spz_status notes_pick(const spz_movement_reading *reading, double strength, size_t most, PlaceInFindings *picked);

/* joined.c: what the passage at `place` tells together with those that overlap it and go on with it, where that is of more bodies of players than any of them
 * tells by itself; from the arena. */
spz_status citation_join(const spz_movement_reading *reading, size_t place, double strength, Arena *arena, Joined *joined);

/* citation_twins.c: is `later` the same again, at whatever pitch (themes return in other keys)? The same two groups have the same notes in call and first
 * answer, as far apart; where no stave tells, the same players in the same order have the same gesture, answered in the same way. */
bool passages_twins(const spz_sections *sections, const spz_passage *first, const spz_passage *later);
/* Coupling of two sections that read one and the same line all along, such as a part 'Violins': no two sections to listen for. */
bool passage_is_of_one_stave(const spz_sections *sections, const spz_passage *passage);
#endif
