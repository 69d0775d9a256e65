/* seating_terms.h - the evidence in each arrangement, in points. Every term is measured against what the four standard arrangements give
 * on average, so that no evidence is no points; their sum T becomes a score of 50 + 50 tanh(T / 50). */
#ifndef SEATING_SEATING_TERMS_H
#define SEATING_SEATING_TERMS_H
#include "seating/evidence/seating_evidence.h"
#include "seating/evidence/comparison.h"

typedef struct Points {
    double of[SPZ_TERM_COUNT];
} Points;

/* Points of one pair, which the reasons share out over its passages. */
double terms_antiphony(const Comparison *comparison, const PairEvidence *pair, size_t arrangement);
double terms_ensemble(const Comparison *comparison, const PairEvidence *pair, size_t arrangement);
double terms_violins_share(const SeatingEvidence *evidence); /* what each pair of violin sections counts: less where there are three */
double terms_era(const Comparison *comparison, size_t arrangement, int year); /* points of the year alone; 0 for none */
void terms_weigh(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, Points *out);
double terms_total(const Points *points);
double terms_score(double total); /* 0..100 */
/* The term with its figures, as a verdict keeps it. */
spz_term terms_tell(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, spz_term_kind kind);
/* Delay between the two sections of a coupled passage as a multiple of what its shortest note allows. */
double terms_strain(const Comparison *comparison, double delay, double shortest);
#endif
