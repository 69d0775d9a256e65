/* bowings.h - how sections that share a gesture bow it: slurs, signs of articulation and bow marks beside each other, as facts for a bowing committee.
 *
 * A meeting is one gesture in two or more groups: at the same time (coupling; those who enter together) or one after the other (a call and its answers, moved
 * onto it). Notes are compared where both begin one at the same distance from the gesture's beginning; a group that shares fewer than three such moments is
 * left out, and so is one that shares fewer than half, or of a gesture in turn fewer than three quarters of either's. Grace notes are not compared; of notes that begin together all signs count. */
#ifndef ADVICE_BOWINGS_H
#define ADVICE_BOWINGS_H
#include "sections/section_map.h"
#include "spezzato/sheets.h"
#include "support/array.h"

typedef enum BowingSign {
    BOWING_SLUR, BOWING_STACCATO, BOWING_TENUTO, BOWING_ACCENT, BOWING_UP_BOW, BOWING_DOWN_BOW, BOWING_PIZZICATO, BOWING_TREMOLO, BOWING_SIGN_COUNT
} BowingSign;
const char *bowing_sign_name(BowingSign sign); /* as in data: "slur", "staccato", ... */

enum { STRANDS_MOST = 5 };

typedef struct BowingStrand { /* the gesture in one group */
    size_t group;
    Ticks from, to;
    size_t compared; /* moments shared with the first strand; of the first: its own */
} BowingStrand;

/* Where a group has the sign: a slur from one note to another, else the note (`to` the same). */
typedef struct BowingMark {
    bool other;      /* it is the second group's */
    Ticks from, to;
} BowingMark;

typedef struct BowingDifference {
    BowingSign sign;
    size_t strand;       /* of the meeting, beside its first */
    size_t bars[2];      /* of the first strand, of the other: indices; the same where they play at the same time */
    size_t first, count; /* among the list's marks, by side and time; of a slur all of that bar, else those that the other lacks */
} BowingDifference;

typedef struct BowingMeeting {
    const spz_passage *passage;
    size_t place;        /* in the findings */
    BowingStrand strands[STRANDS_MOST]; /* the first is the one that the others are held against */
    size_t strand_count;
    bool in_turn;        /* one after the other */
    size_t first, count; /* differences, by bar, strand and sign */
} BowingMeeting;

typedef struct BowingList {
    ARRAY(BowingMeeting) meetings; /* by their first bar */
    ARRAY(BowingDifference) differences;
    ARRAY(BowingMark) marks;
} BowingList;

/* All meetings of the movement in passages of the options' strength and kinds: exchanges, imitations, coupling. To release: bowings_free, always. */
spz_status bowings_find(const spz_movement_reading *reading, const spz_sheet_options *options, BowingList *list);
void bowings_free(BowingList *list);
#endif
