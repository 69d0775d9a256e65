/* told_opening.h - the call and the answer by which a chain is told, and what is measured of them. */
#ifndef ANALYSIS_ANTIPHONY_TELLING_TOLD_OPENING_H
#define ANALYSIS_ANTIPHONY_TELLING_TOLD_OPENING_H
#include "analysis/antiphony/telling/statements.h"

/* The first call and answer of the two sides after whom the chain is named; where these have none, the first entry that calls and the first of other
 * players, which answers it. */
typedef struct Opening {
    bool told; /* false: it is among no entries */
    size_t call_entry, answer_entry; /* among the statements, which are the entries */
    size_t notes;                    /* that the answer has of the call */
    Statement call, answer;          /* as those have them after whom the sides are named */
    Side sides[2];                   /* who calls there and who answers */
} Opening;

/* Of a chain's statements, in order of time; the answer is made one. */
Opening opening_of(const Texture *texture, const Chain *chain, StatementList *statements);
/* That of a match alone, which is among no entries. */
Opening opening_of_match(const Texture *texture, const Candidate *candidate);
/* What is told of them: how many notes, how far apart, what was done to the call; all but the sides. */
spz_gesture opening_gesture(const Texture *texture, const Opening *opening);
/* Whether the melody has the line of the statement, in unison or in parallel, and not its rhythm alone. */
bool statement_has_line(const Melody *melody, const Statement *statement);
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
