/* reasons.h - why the recommended arrangement stands before the best of the other violin placing, and what a reader must know. */
#ifndef SEATING_REASONS_H
#define SEATING_REASONS_H
#include "seating/verdict/verdict.h"

/* Adds the reasons, weightiest first, then remarks that carry no points. */
spz_status reasons_give(Verdict *verdict, const Comparison *comparison, const SeatingEvidence *evidence);
#endif
