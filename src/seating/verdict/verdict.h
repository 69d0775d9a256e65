/* verdict.h - a finished judgement: the ranking of the arrangements with all that speaks for and against them. */
#ifndef SEATING_VERDICT_H
#define SEATING_VERDICT_H
#include "seating/verdict/ranking.h"
#include "support/arena.h"

enum { PAIRS_KEPT = 4 };

typedef ARRAY(spz_reason) ReasonList;

struct spz_verdict {
    Arena arena; /* all that the records point to */
    const char *title;
    const char *const *movements; /* of a work: titles */
    size_t movement_count;
    spz_outcome outcome;
    int year; /* of composition; 0 not known */
    Ranking ranking;                                /* count 0: nothing could be judged */
    spz_ranked by_arrangement[SPZ_ARRANGEMENT_LIMIT]; /* in the order of the settings */
    ReasonList reasons;
    spz_section pairs[PAIRS_KEPT][2];
    double pair_weights[PAIRS_KEPT];
    size_t pair_count;
    bool thirds;
    int orchestras;
    bool singles; /* chamber music: one player a part */
};
typedef spz_verdict Verdict;

Verdict *verdict_new(void); /* NULL: no memory */

spz_status verdict_add_reason(Verdict *verdict, spz_reason reason);
void verdict_sort_reasons(Verdict *verdict);
/* Notes that the verdict hangs by `weight` on the pair; the weightiest are kept. */
void verdict_note_pair(Verdict *verdict, spz_section a, spz_section b, double weight);
/* Points and scores of the ranked arrangements from the ranking. */
void verdict_fill_numbers(Verdict *verdict);
#endif
