/* seating_terms.h - the evidence in each arrangement, in points. Every term is measured against what the four standard arrangements give
 * on average, so that no evidence is no points; their sum T becomes a score of 50 + 50 tanh(T / 50). */
#ifndef SEATING_SEATING_TERMS_H
#define SEATING_SEATING_TERMS_H
#include "seating/seating_evidence.h"
#include "seating/comparison.h"

typedef enum Term {
    TERM_VIOLINS,  /* first and second (and third) violins answer each other */
    TERM_OTHERS,   /* so do other sections */
    TERM_ENSEMBLE, /* sections move together */
    TERM_THREE,    /* violins in three */
    TERM_BASS,     /* music over a bass line */
    TERM_MELODY,   /* melody in the seconds, heard apart from the firsts */
    TERM_TURNED,   /* the same, with instruments turned away */
    TERM_ERA,
    TERM_HOUSE,
    TERM_COUNT
} Term;
const char *term_name(Term term);

typedef struct Points {
    double of[TERM_COUNT];
} Points;

/* Points of one pair, which the reasons share out over its passages. */
double terms_antiphony(const Comparison *comparison, const PairEvidence *pair, size_t arrangement);
double terms_ensemble(const Comparison *comparison, const PairEvidence *pair, size_t arrangement);
double terms_violins_share(const SeatingEvidence *evidence); /* what each pair of violin sections counts: less where there are three */
void terms_weigh(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, Points *out);
double terms_total(const Points *points);
double terms_score(double total); /* 0..100 */
/* Delay between the two sections of a coupled passage as a multiple of what its shortest note allows. */
double terms_strain(const Comparison *comparison, double delay, double shortest);
#endif
