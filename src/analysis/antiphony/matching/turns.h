/* turns.h - of a run of notes that two groups share at one lag, the stretches in which the word really passes.
 *
 * Each shared note is worth its likeness (moved in the same direction, at a new pitch) times how far the other group stays out of
 * the way, less a threshold; the stretches of the largest sum are the matches (the maximum-sum segments of Ruzzo and Tompa, ISMB
 * 1999). A run without such a stretch in which the second group enters afresh with the same moving line is kept as imitation. */
#ifndef ANALYSIS_ANTIPHONY_TURNS_H
#define ANALYSIS_ANTIPHONY_TURNS_H
#include "analysis/antiphony/matching/match.h"

/* A note that both have. */
typedef struct TurnPair {
    uint32_t call, answer;
    float yield, free, value; /* known once turns are cut */
    bool begins; /* a statement begins here, in call and answer */
    bool rested; /* ... after a rest or a long note */
    int8_t alike; /* 1 same direction, -1 opposite, 0 neither */
    bool exact, moving; /* by the same interval; to a new pitch in the call */
} TurnPair;
typedef ARRAY(TurnPair) TurnPairs;

/* What is kept between calls: the pairs of the run in hand, and how far each melody stays out of the way of each note of the others,
 * worked out once. */
typedef struct TurnCutter {
    const Melody *melodies;
    size_t melody_count, event_count;
    size_t *first_event; /* of each melody, in a row of `quiet` */
    float *quiet;       /* [melody * event_count + note]; 0: not worked out yet */
    TurnPairs pairs;
} TurnCutter;

spz_status turn_cutter_make(const Melody *melodies, size_t melody_count, TurnCutter *out); /* release it in any case */
void turn_cutter_release(TurnCutter *cutter);

/* Adds the next note of the run that both have to `pairs` (which whoever begins a run empties); NULL when out of memory. */
const TurnPair *turn_cutter_add(TurnCutter *cutter, const Match *run, uint32_t call, uint32_t answer);

/* Appends the matches that `run`, whose notes are in `pairs`, holds to `out`. SPZ_OK or SPZ_NO_MEMORY. */
spz_status turns_cut(TurnCutter *cutter, const Match *run, MatchList *out);
#endif
