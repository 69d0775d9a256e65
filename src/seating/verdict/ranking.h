/* ranking.h - the arrangements in order, how far the first is ahead, and what would turn it. Knows points only. */
#ifndef SEATING_RANKING_H
#define SEATING_RANKING_H
#include "seating/evidence/seating_terms.h"

typedef struct RankingFigures {
    double firm_margin, leaning_margin; /* 0..1, as spz_verdict_margin */
    double firm_factor;                 /* a weight must move by more than this factor before a firm verdict turns */
    double firm_direct;                 /* margin that must be left when era and house are silent */
    double factor_most; /* a weight moved by more than this factor is another judgement, not the same one turned */
} RankingFigures;
extern const RankingFigures ranking_figures;

/* The same arrangements under another year of composition, or under none. */
typedef enum Calendar { YEAR_SILENT, YEAR_EARLIER, YEAR_LATER, CALENDAR_COUNT } Calendar;
typedef struct YearView {
    size_t best;
    double margin;
    spz_confidence confidence;
} YearView;

typedef struct Ranking {
    size_t count;
    Points points[SPZ_ARRANGEMENT_LIMIT];
    double under[CALENDAR_COUNT][SPZ_ARRANGEMENT_LIMIT]; /* points of the era in these years */
    YearView views[CALENDAR_COUNT];
    double totals[SPZ_ARRANGEMENT_LIMIT], scores[SPZ_ARRANGEMENT_LIMIT];
    bool opposed[SPZ_ARRANGEMENT_LIMIT], allowed[SPZ_ARRANGEMENT_LIMIT];
    size_t order[SPZ_ARRANGEMENT_LIMIT]; /* the allowed ones, best first */
    size_t ranked;
    size_t rival; /* the best of the other violin placing; where there is none, the next best; else the best itself */
    double margin;
    spz_confidence confidence;
    spz_turning turning; /* the term whose weight has to move least, and by which factor */
} Ranking;

/* Fills all but points, under, opposed, allowed and count, which the caller has set. `usual`: index that wins ties; SIZE_MAX: none. */
void ranking_settle(Ranking *ranking, size_t usual);
/* Whether it is the year that makes of this what it is: without it the score leaves it open, or says the contrary. */
bool ranking_hangs_on_year(const Ranking *ranking, size_t best, spz_confidence confidence);
#endif
