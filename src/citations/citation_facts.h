/* citation_facts.h - what is known about the passages worth citing, in no language yet. */
#ifndef CITATIONS_CITATION_FACTS_H
#define CITATIONS_CITATION_FACTS_H
#include "sections/section_map.h"
#include "spezzato/sheets.h"
#include "support/array.h"

typedef struct Body { /* a body of players; SPZ_NO_SECTION for none */
    spz_section section;
    int number, orchestra;
    bool solo;
} Body;

enum { BODIES_MOST = 12, BODIES_NAMED = 4, TIMES_MOST = 4, INTERVAL_MIXED = 1000 };

typedef struct Citation {
    const spz_passage *passage;
    Body bodies[BODIES_MOST];  /* in order of their entries */
    size_t body_count;
    int interval;              /* semitones from call to answer; INTERVAL_MIXED where answers differ or there is none */
    bool quick;                /* the shortest notes go by too fast to be counted */
    size_t variant;            /* how many like it (kind; two bodies of players, or more) were cited before it in this movement */
    double times[TIMES_MOST];  /* seconds at which it begins; the first `time_count` times that it sounds */
    size_t time_count;
    const char *bar_from, *bar_to; /* as printed; the same for one bar */
    const char *letter;        /* 'B', "" */
    int after;                     /* bars after the letter */
} Citation;

typedef enum SeatingWord { SEATING_NONE, SEATING_OPEN, SEATING_OPPOSED, SEATING_TOGETHER } SeatingWord;

/* A movement as a whole. */
typedef struct Overview {
    size_t dialogues, striking;  /* passages of antiphony that are at least clear; striking ones among them */
    Body pair[2];                /* the two that have most of them; pair_count of them */
    size_t pair_count;
    size_t divided, threefold;   /* passages of divided sections; those in three or more lines */
    size_t coupled;              /* passages in which two sections move as one */
    SeatingWord seating;
    const Citation *strongest;   /* of the dialogues cited; NULL when there are none */
    double duration;             /* seconds; 0 not known */
    bool stretched;              /* the duration is the user's, not the score's */
    bool repeats;                /* some bars are played again */
    bool strings;
} Overview;

typedef struct MovementNotes {
    const Movement *movement;
    const char *file, *title;
    ARRAY(Citation) citations; /* in order of bars */
    Overview overview;
} MovementNotes;

/* `lasts` 0: by the tempo marks. Always to be followed by notes_free. */
spz_status notes_of(const spz_movement_reading *reading, const spz_note_options *options, double lasts, MovementNotes *notes);
void notes_free(MovementNotes *notes);

/* citation_pick.c: places in the findings of the passages worth citing, in order of bars; at most `most` (0: all that are strong enough). */
typedef ARRAY(size_t) PlaceInFindings;
spz_status notes_pick(const spz_findings *findings, double strength, size_t most, PlaceInFindings *picked);
#endif
