/* statements.h - the statements that are told of a match or a chain: each a call or an answer, from its first note to its last. */
#ifndef ANALYSIS_ANTIPHONY_TELLING_STATEMENTS_H
#define ANALYSIS_ANTIPHONY_TELLING_STATEMENTS_H
#include "analysis/antiphony/chaining/chains.h"
#include "analysis/passages/passage_facts.h"

/* One statement of one match, before those that begin together are made one. */
typedef struct Statement {
    size_t melody;        /* who leads it */
    spz_players with;     /* bits of melodies: its side */
    const NoteEvent *first, *last;
    bool answer;
    const NoteEvent *second; /* the second note of the gesture, after a first that may be longer or missing; NULL: not known */
    bool found;           /* by the gesture alone, in no match */
    bool own;             /* of the pair that names the chain, not of one that lost it to that */
    bool turned, stretched; /* of a match whose answer is upside down; takes twice or half as long */
    double chance;        /* of that match */
    spz_change change;
    size_t pair;  /* the same for a call and its answer */
    bool goes_on; /* its player begins it in or right behind another, not after a rest or a long note */
    bool middle;  /* its player is in the middle of another ... */
    bool idle;    /* ... and begins nothing with it */
    size_t place; /* among those found, in the order of the matches */
} Statement;
typedef ARRAY(Statement) StatementList;

/* Walks the statements of a match. */
typedef struct StatementWalk {
    const Texture *texture;
    const Match *match;
    uint32_t call, answer;
    const NoteEvent *called, *answered; /* what begins the next statement */
    size_t voice[2];                    /* melodies whose notes are told of call and answer: those that bear the sides' names */
} StatementWalk;

StatementWalk statements_begin(const Texture *texture, const Candidate *candidate);
/* The next call and its answer, from their first to their last notes; false: no more. */
bool statements_next(StatementWalk *walk, Statement *call, Statement *answer);
/* A call (side 0) or an answer (1) as the side's own voice has it. */
Statement statement_told_by(const StatementWalk *walk, int side, Statement found);

/* How many notes an answer has of a call, from the first on, and what was done to them. */
size_t statements_shared(const Texture *texture, const Statement *call, const Statement *answer, spz_change *change);

/* Those of all matches of a chain, in time order, each player's once at a moment, without those that begin in the middle of another. Of the passage's
 * one gesture (gesture.h), or `whatever` they say. False: no memory; the caller frees the list in any case. */
bool statements_of_chain(const Texture *texture, const CandidateList *candidates, const Chain *chain, bool whatever, StatementList *out);
#endif
