/* seating_words.h - what a judgement says: statement, turning, clauses of the terms, losses. Reasons have a file of their own. */
#ifndef SEATING_SEATING_WORDS_H
#define SEATING_SEATING_WORDS_H
#include "seating/verdict.h"

const char *words_outcome(spz_outcome outcome); /* why nothing was judged */
void words_statement(const Verdict *verdict, Buffer *text);
/* 'turns if ensemble weighs 1.8 times as much'; nothing when no weight turns it. */
void words_turning(const Ranking *ranking, Buffer *text);
/* One clause with figures for a term in an arrangement. */
void words_because(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, Term term, Buffer *text);
/* 'exchange Vn I/Vn II 66-71, 102; div3 20-24': clear passages that the arrangement weakens. False: no memory. */
bool words_losses(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, Buffer *text);
#endif
