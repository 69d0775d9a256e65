/* turns.h - of a run of tones that two groups share at one lag, the stretches in which the word really passes.
 *
 * Each shared tone is worth its likeness (moved in the same direction, at a new pitch) times how far the other group stays out of
 * the way, less a threshold; the stretches of the largest sum are the matches (the maximum-sum segments of Ruzzo and Tompa, ISMB
 * 1999). A run without such a stretch in which the second group enters afresh with the same moving line is kept as imitation. */
#ifndef ANALYSIS_TURNS_H
#define ANALYSIS_TURNS_H
#include "analysis/matches.h"

typedef struct TurnPair {
    uint32_t call, answer;
    float yield, free, value;
    bool begins; /* a statement begins here, in call and answer */
    bool rested; /* ... after a rest or a long note */
    int8_t alike; /* 1 same direction, -1 opposite, 0 neither */
    bool exact, moving;
} TurnPair;
typedef ARRAY(TurnPair) TurnPairs;

/* Appends the matches that `run` holds to `out`; `pairs` is scratch, kept between calls. SPZ_OK or SPZ_NO_MEMORY. */
spz_status turns_cut(const Tune *tunes, const Match *run, TurnPairs *pairs, MatchList *out);
#endif
