/* told_opening.h - the call and the answer by which a chain is told, and what is measured of them. */
#ifndef ANALYSIS_ANTIPHONY_TELLING_TOLD_OPENING_H
#define ANALYSIS_ANTIPHONY_TELLING_TOLD_OPENING_H
#include "analysis/antiphony/telling/chain_facts.h"

/* Whose first call and answer are told of the passage: of its clear matches the one that is answered first, or the violins' after which it is named. */
const Candidate *chain_opening(const CandidateList *candidates, const Chain *chain);
/* The same, but where its call and answer are not both among the entries: then the first match whose are. */
const Candidate *listed_opening(const SectionMap *map, const Texture *texture, const CandidateList *candidates, const Chain *chain, const ChainFacts *facts);
/* Its first call and answer: how many notes, how far apart, what was done to the call; all but the sides. */
spz_gesture candidate_gesture(const Texture *texture, const Candidate *candidate);
/* How many calls it is told as, and the notes of the longest. */
typedef struct CallsTold {
    int count, longest;
} CallsTold;
CallsTold candidate_calls(const Texture *texture, const Candidate *candidate);
/* From a call to its answer, counted in bars, beats or crotchets. */
spz_length candidate_lag(const Texture *texture, const Candidate *candidate);
/* Shortest note that is answered, in seconds at the tempo in force; 0 when the score gives no tempo. */
double chain_shortest_seconds(const Texture *texture, const CandidateList *candidates, const Chain *chain);
#endif
