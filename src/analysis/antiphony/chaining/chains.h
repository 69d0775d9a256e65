/* chains.h - matches joined into passages: what one pair of sections does without a bar between, or with one in the same gesture.
 *
 * Each match is given its two sides; for each pair the strongest matches are taken first and weaker ones only where they add
 * time; such neighbours are one passage. Passages of different pairs that tell the same story become one (stories.h). */
#ifndef ANALYSIS_ANTIPHONY_CHAINING_CHAINS_H
#define ANALYSIS_ANTIPHONY_CHAINING_CHAINS_H
#include "analysis/antiphony/chaining/sides.h"
#include "support/array.h"

typedef struct Candidate {
    Match match;
    Evidence evidence;
    Side sides[2];
    int first, last; /* bars */
    double alone;    /* its chance before it was held against others */
    const struct Candidate *nearer; /* the likelier match that has its answer answer a nearer call: see nearer_calls.h; NULL where there is none */
    bool taken;
    bool later_link; /* its call is itself an answer, or was answered sooner by others: see later_links.h */
    bool dropped;    /* its passage lost to another pair's */
} Candidate;
typedef ARRAY(Candidate) CandidateList;

/* Candidates of another pair that tell the same story. */
typedef struct AbsorbedPair {
    const uint32_t *candidates;
    size_t count;
    const struct AbsorbedPair *next;
} AbsorbedPair;

typedef struct Chain {
    Side sides[2];
    Ticks onset, end;
    int first, last;       /* bars, indices */
    double strength;       /* as told to users: strength_told of the chance */
    double claim;          /* how strongly its pair claims a story that others tell too: the chance times a preference */
    uint32_t *candidates;  /* indices, by onset; from the arena */
    size_t candidate_count;
    const AbsorbedPair *absorbed; /* by pairs that lost it to this one: their entries belong to the story too */
    const Candidate *named_by;    /* the violins' match after which a story of others is named; NULL where it bears the name of its own */
    bool accompanies;         /* would be striking, but hardly has the line (telling/beneath_line.h) */
    struct ChainFacts *facts; /* what is told of it, once that was asked for (telling/chain_facts.h); NULL before */
    uint64_t chain_melodies;  /* all melodies that speak in it, other pairs' too */
} Chain;
typedef ARRAY(Chain) ChainList;

extern const int chains_beside;             /* bars between two matches of a pair that still blur each other */
extern const double chains_least_chance;   /* a match below this is nobody's passage */

typedef struct ChainMaker { /* where chains are put together */
    const Texture *texture;
    Candidate *base;
    Arena *arena;
    ChainList *out;
} ChainMaker;

/* Adds the taken matches of one pair as chains, cut where more lies between. Brings them into time order. */
spz_status chains_cut(const ChainMaker *maker, Candidate **taken, size_t count);

/* `candidates` are marked taken or not; those not taken say why in the --explain report. */
spz_status chains_make(const Texture *texture, CandidateList *candidates, Arena *arena, ChainList *out);
#endif
