/* novelty.h - whether a call and its answer are news: who has the rhythm of the gesture already, when it is called, when it is answered, and
 * around them. A gesture that its answerer has had all along, or that its caller only goes on with, passes from nobody to nobody. */
#ifndef ANALYSIS_ANTIPHONY_NOVELTY_H
#define ANALYSIS_ANTIPHONY_NOVELTY_H
#include "analysis/antiphony/matching/match.h"

/* Where each rhythm of three notes begins, over all melodies and in each; made once a movement. */
typedef struct RhythmIndex RhythmIndex;
spz_status rhythm_index_make(const Melody *melodies, size_t melody_count, RhythmIndex **out);
void rhythm_index_free(RhythmIndex *index);

typedef struct Novelty {
    double ahead;     /* share of the calls in which the responder has the rhythm of their beginning at the same time */
    double again;     /* share of the answers under which the caller has it again */
    double before[2]; /* 1 where the caller, the responder had it one lag before the first call, else 0 */
    double around[2]; /* how often they have it in `window` before and after the match: 0 never, 0.5 eight times */
    double rare;      /* 1: nobody has it there; 0.5: sixteen times over all melodies */
    double counter;   /* share of the responder's notes under the call that the caller has one lag later: voices exchanged */
} Novelty;

void novelty_of(const Melody *melodies, const RhythmIndex *rhythms, const Match *match, Ticks window, Novelty *out);
#endif
