/* parts_advice.h - what a player should find written in the part, as facts: told once for the sheets and for the marks in the score.
 * src/wording/papers/advice_words.h says it. */
#ifndef ADVICE_PARTS_ADVICE_H
#define ADVICE_PARTS_ADVICE_H
#include "sections/section_map.h"
#include "spezzato/sheets.h"
#include "support/array.h"

typedef enum AdviceKind { /* in the order in which they stand where several fall on one moment */
    ADVICE_UNISON,
    ADVICE_DIVIDE,
    ADVICE_LEAD,   /* it has the gesture first */
    ADVICE_ANSWER, /* it has it after others */
    ADVICE_SHARE,  /* hocket, split line: both at once */
    ADVICE_WITH    /* coupling: it moves with another */
} AdviceKind;

/* Whose pages the file tells. */
typedef enum PagesOf { PAGES_UNTOLD, PAGES_OF_SCORE, PAGES_OF_PART } PagesOf;

/* Where a page of the part ends while the division goes on. */
typedef struct PageTurn {
    size_t bar; /* index: the next page begins with it */
    bool sure;  /* the file numbers its pages, and this one lies on the right; false: it may */
} PageTurn;

typedef struct Advice {
    AdviceKind kind;
    size_t group;          /* of players: index into the section map's groups */
    const spz_passage *passage;
    Ticks from, to;        /* what it is about, for these players */
    size_t bar, last_bar;  /* indices */
    spz_players before, after; /* who has the gesture before and after these players; none: 0 */
    spz_players with;      /* who always enters together with them */
    bool across;           /* the others sit at the other edge of the stage, all of them */
    bool joined;           /* unison after a division of all violins, in which the section played one line */
    bool said;             /* a division: the score says so itself, only the sharing is left to say */
    const spz_allotment *allotment; /* a division: who reads which line; NULL where there are fewer players than lines */
    spz_shortage shortage;  /* a division that takes more players than there are; else needs 0 */
    uint32_t lines_at_risk; /* a division: bit n: only inside players read line n, so that it is missing while they turn */
    size_t first_turn, turn_count; /* of the list's turns: where that happens */
} Advice;

typedef struct AdviceList {
    ARRAY(Advice) items;
    ARRAY(spz_allotment *) allotments; /* owned */
    ARRAY(PageTurn) turns;
} AdviceList;

/* All advice for one movement by group, then moment, then kind. To release: advice_free, always. SPZ_BAD_ARGUMENT where the arrangement
 * that the options name isn't among those ranked. */
spz_status advice_find(const spz_movement_reading *reading, const spz_settings *settings, const spz_sheet_options *options,
                       AdviceList *list);
void advice_free(AdviceList *list);

/* Which times through the music a bar's advice is for: bits of its endings, else how often it is played; 0 and 0 where it is played once. */
typedef struct AdvicePass {
    uint32_t endings; /* bit n-1: the n-th time */
    size_t times;
} AdvicePass;
AdvicePass advice_pass(const Movement *movement, size_t bar);

/* Name of the seating that the advice counts with; "" where none was judged. */
const char *advice_arrangement(const spz_movement_reading *reading, const spz_sheet_options *options);
#endif
