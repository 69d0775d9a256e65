/* losses.h - what an arrangement weakens: clear passages that are heard much narrower, or kept together over a longer way, than in
 * another one that the house allows. */
#ifndef SEATING_LOSSES_H
#define SEATING_LOSSES_H
#include "seating/evidence/comparison.h"
#include "seating/evidence/seating_evidence.h"

/* Into the arena. SPZ_NO_MEMORY. */
spz_status losses_find(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, Arena *arena,
                       const spz_loss **out, size_t *count);
/* Copies of another verdict's, as losses of that movement, into `out`, which has room for them. False: no memory. */
bool losses_copy(Arena *arena, const spz_loss *from, size_t count, size_t movement, spz_loss *out);
#endif
