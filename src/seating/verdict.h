/* verdict.h - a finished judgement: the ranking of the arrangements with all its words. */
#ifndef SEATING_VERDICT_H
#define SEATING_VERDICT_H
#include "seating/ranking.h"
#include "support/arena.h"
#include "support/buffer.h"

enum { PAIRS_KEPT = 4 };

typedef ARRAY(spz_reason) ReasonList;

struct spz_verdict {
    Arena arena; /* all words */
    const char *title, *statement, *turning;
    spz_outcome outcome;
    Ranking ranking;                                /* count 0: nothing could be judged */
    spz_ranked by_arrangement[SPZ_ARRANGEMENT_LIMIT]; /* in the order of the settings; words filled before the ranking is read */
    ReasonList reasons;
    spz_section pairs[PAIRS_KEPT][2];
    double pair_weights[PAIRS_KEPT];
    size_t pair_count;
    bool thirds;
    int orchestras;
};
typedef spz_verdict Verdict;

Verdict *verdict_new(void); /* NULL: no memory */

/* Adds a reason whose words are in the buffers, which are emptied. */
spz_status verdict_add_reason(Verdict *verdict, Buffer *text, Buffer *bars, double points);
void verdict_sort_reasons(Verdict *verdict);
/* Notes that the verdict hangs by `weight` on the pair; the weightiest are kept. */
void verdict_note_pair(Verdict *verdict, spz_section a, spz_section b, double weight);
/* Statement and turning from the ranking. */
spz_status verdict_state(Verdict *verdict);
/* Points, scores and losses of the ranked arrangements from the ranking. */
void verdict_fill_numbers(Verdict *verdict);
#endif
