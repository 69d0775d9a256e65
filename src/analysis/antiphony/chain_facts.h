/* chain_facts.h - what is told of a chain: its entries and links with their players, and the call and answer that open it. */
#ifndef ANALYSIS_ANTIPHONY_CHAIN_FACTS_H
#define ANALYSIS_ANTIPHONY_CHAIN_FACTS_H
#include "analysis/antiphony/chains.h"
#include "analysis/passages/passage_facts.h"

typedef struct ChainFacts {
    ARRAY(spz_entry) entries; /* in order of time */
    ARRAY(spz_link) links;    /* in order of entry */
    int turns;                /* how often the word passes */
} ChainFacts;

/* `map`: whose groups the facts name; the texture may be of strings and winds as two voices (strings_and_winds.c): then it is told which
 * groups really play. Always to be followed by chain_facts_release. SPZ_NO_MEMORY. */
spz_status chain_facts_make(const SectionMap *map, const Texture *texture, const CandidateList *candidates, const Chain *chain,
                            ChainFacts *facts);
void chain_facts_release(ChainFacts *facts);

/* Names a side of violas after the cellos that stand in its link (side_join_cellos). SPZ_NO_MEMORY. */
spz_status chain_name_violas(const Texture *texture, const CandidateList *candidates, Chain *chain);

/* A side of one of its matches: violas bear the cellos' name where the chain's do. */
const Side *chain_side_of(const Chain *chain, const Candidate *candidate, int side);

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
