/* chain_facts.h - what is told of a chain: its entries and links with their players. */
#ifndef ANALYSIS_ANTIPHONY_TELLING_CHAIN_FACTS_H
#define ANALYSIS_ANTIPHONY_TELLING_CHAIN_FACTS_H
#include "analysis/antiphony/telling/told_opening.h"

typedef struct ChainFacts {
    ARRAY(spz_entry) entries; /* in order of time */
    ARRAY(spz_link) links;    /* in order of entry */
    int turns;                /* how often the word passes */
    Opening opening;          /* the first call and its answer */
} ChainFacts;

/* `map`: whose groups the facts name; the texture may be of strings and winds as two voices (strings_and_winds.c): then it is told which
 * groups really play. Always to be followed by chain_facts_release. SPZ_NO_MEMORY. */
spz_status chain_facts_make(const SectionMap *map, const Texture *texture, const CandidateList *candidates, const Chain *chain,
                            ChainFacts *facts);
void chain_facts_release(ChainFacts *facts);
/* Where it is told to begin: with its first match; with its first entry, if that lies before or more than three bars behind. */
Ticks chain_begins_at(const Chain *chain, const ChainFacts *facts);
/* Those in the texture's own groups are kept with the chain (chain->facts), once they are asked for, until it changes. SPZ_NO_MEMORY. */
spz_status chain_facts_keep(const Texture *texture, const CandidateList *candidates, Chain *chain);
void chain_facts_forget(Chain *chain);
/* Frees the chains with what is kept of their facts. */
void chains_release(ChainList *chains);

/* Names a side of violas after the violins or cellos that stand in its link (side_join_company). SPZ_NO_MEMORY. */
spz_status chain_name_violas(const Texture *texture, const CandidateList *candidates, Chain *chain);
#endif
