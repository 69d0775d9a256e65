/* basis.h - the passages and bars that a reason or a loss rests on, as a verdict keeps them. */
#ifndef SEATING_BASIS_H
#define SEATING_BASIS_H
#include "seating/evidence/seating_evidence.h"
#include "spezzato/seating.h"
#include "support/arena.h"

/* All is copied into the arena. False: no memory. The spans are put in order. */
bool basis_of_spans(Arena *arena, const Movement *movement, SpanList *spans, spz_basis *out);
bool basis_of_items(Arena *arena, const SeatingEvidence *evidence, const ItemList *items, spz_basis *out);
/* The bars of the weightiest passages, at most `most` of them. */
bool basis_weightiest(Arena *arena, const SeatingEvidence *evidence, const ItemList *items, size_t most, spz_basis *out);
/* A copy of what belongs to another verdict. */
bool basis_copy(Arena *arena, const spz_basis *from, spz_basis *out);
#endif
