/* match.h - one stretch in which a group says what another said a while before: the notes that both have, and what was counted. */
#ifndef ANALYSIS_ANTIPHONY_MATCH_H
#define ANALYSIS_ANTIPHONY_MATCH_H
#include "analysis/melody/melody.h"
#include "support/array.h"

typedef struct Match {
    uint16_t caller, responder;  /* indices of melodies */
    Ticks lag;                   /* from the first call note to its answer, > 0 */
    uint32_t call_first, call_last, answer_first, answer_last; /* notes, inclusive */
    uint32_t matched;            /* notes that both have */
    uint32_t alike;              /* of these, moved in the same direction */
    uint32_t exact;              /* of these, by the same interval */
    int8_t mirror;               /* -1 where the answer turns the call upside down, else 1: 'alike' is counted so */
    int8_t stretch;              /* 1 where the answer takes twice as long over everything, -1 half as long, else 0 */
    uint32_t moving;             /* of the matched, those whose pitch moved in the call */
    uint32_t unmatched;          /* notes of either inside the run that the other has not */
    uint32_t statements;         /* separate calls in the run, each answered */
    uint32_t rested;             /* of these, begun after a rest or a long note in call and answer */
    bool overlapping;            /* cut as imitation: the caller goes on under the answer */
    float yield, free;           /* means of melody_quietness: of the caller under the answer, of the responder under the call */
    uint32_t clean, active;      /* answer notes during which the caller rests or only holds; is as busy as they */
    float early_yield, early_free; /* the same over the first two notes of each statement: where the word passes */
    Ticks spoken;                /* time from the first to the last note of the calls, summed over the statements */
    int16_t transposition;       /* semitones from the first call note to the first answer note */
    Ticks onset, call_end, end;  /* first call note, end of the last call note, end of the last answer note */
} Match;
typedef ARRAY(Match) MatchList;

/* How long after the note at `answer` the answer to the call's note at `call` is due; in halves of a tick, so that nothing is
 * rounded where the answer takes half the time. 0: that note is the answer; negative: it was due before. */
static inline Ticks match_due_after(const Match *match, Ticks call, Ticks answer)
{
    Ticks since = call - match->onset, stretched = match->stretch > 0 ? 4 * since : match->stretch < 0 ? since : 2 * since;
    return 2 * (match->onset + match->lag - answer) + stretched;
}

/* Walks the notes that both groups have, in time order. Start with *call = call_first, *answer = answer_first of the match; each
 * call gives the next pair and moves on; false at the end. */
bool match_next_pair(const Melody *melodies, const Match *match, uint32_t *call, uint32_t *answer, const NoteEvent **called,
                     const NoteEvent **answered);
#endif
