/* evidence.h - how much a match is an exchange to a listener: features, each 0..1 or a plain count, and the chance that follows. */
#ifndef ANALYSIS_ANTIPHONY_CHAINING_EVIDENCE_H
#define ANALYSIS_ANTIPHONY_CHAINING_EVIDENCE_H
#include "analysis/antiphony/matching/matches.h"
#include "analysis/antiphony/matching/novelty.h"
#include "analysis/melody/texture.h"
#include "spezzato/explain.h"

enum Feature {
    F_SAME,        /* share of notes that both have and that move alike */
    F_EXACT,       /* share moved by the same interval */
    F_MOTION,      /* share of notes at a new pitch: a repeated note is no gesture */
    F_RHYTHM,      /* rhythmic profile: how far from a row of equal notes */
    F_YIELD,       /* the caller stays out of the way of the answer */
    F_FREE,        /* the answering group stays out of the way of the call */
    F_SWAP,        /* lesser of the two: roles really change */
    F_TURNS,       /* log2 of turns - 1 */
    F_NOTES,       /* log2 of notes a statement */
    F_TOTAL,       /* log2 of all matched notes */
    F_LAG_BEATS,   /* log2 of the lag in beats */
    F_LAG_BARS,    /* log2 of the lag in bars, at least -2 */
    F_RARE,        /* 1: the rhythm is heard here only; 0: it accompanies all around */
    F_FRONT,       /* prominence among the strings */
    F_DOUBLED,     /* share of notes doubled by winds at the pitch or octave */
    F_WINDS,       /* fullness of the winds */
    F_ALONGSIDE,     /* share of the other string groups that play along with caller or answer */
    F_SOFT,        /* 1 pppp .. 0 ffff; 0.5 unknown */
    F_SPEED,       /* log2 of notes a beat */
    F_OVERLAP,     /* share of the answer's time in which the call goes on */
    F_REGULAR,     /* share of statements that follow at twice the lag: regular alternation */
    F_CLEAN,       /* share of the answer's notes during which the caller rests or only holds */
    F_SAME_PITCH,  /* echo: same pitch class at the start */
    F_GAP,         /* log2 of the lag over the length of a statement: 0 when the answer follows at once */
    F_SINGLE,      /* 1 when statements are single notes: the ear hears chords taken apart, not a gesture */
    F_PIZZ,        /* share of notes played pizzicato */
    F_EARLY,       /* the lesser of caller's and responder's quietness where each statement begins */
    F_RESTED,      /* share of statements that begin after a rest or a long note in both groups */
    F_CANON,       /* 1 when cut as imitation */
    F_MIRROR,      /* 1 when the answer is upside down */
    F_QUICK,       /* octaves of log2 by which the lag is under two beats */
    F_LATE,        /* octaves by which F_GAP passes 1.5: the call is forgotten when the answer comes */
    F_SHORT,       /* octaves by which all matched notes are under four */
    F_BEGINS,      /* the call and the answer begin after a rest or a long note, 0, 0.5, 1 */
    F_PLACE,       /* the answer falls where the call fell: 1 in the bar, 0.7 in the half bar, 0.5 in the beat, else 0 */
    F_BESIDE,      /* how much the strings on neither side begin, 1 from eight notes a beat on */
    F_STILL,       /* share of the call's notes that repeat the pitch before or are tremolos */
    F_CONTRAST,    /* 1 when call and answer begin in different dynamics: an echo, or an outburst */
    F_AHEAD,       /* share of the calls in which the answering group has the rhythm of its beginning at the same time */
    F_AGAIN,       /* share of the answers under which the caller has that rhythm again */
    F_CALLER_BEFORE, F_RESPONDER_BEFORE, /* the caller, the responder had it one lag before the first call */
    F_CALLER_AROUND, F_RESPONDER_AROUND, /* how often they have it in the eight bars before and after: 0 never, 0.5 eight times */
    F_COUNTER,     /* share of what the responder plays under the call that the caller plays under the answer: voices exchanged */
    F_CALL_TOP, F_ANSWER_TOP,   /* share of the call, of the answer over which nothing that moves lies above it, winds too */
    F_CALL_WINDS, F_ANSWER_WINDS, /* share of the call, of the answer under a moving wind */
    F_AWAITED,     /* log2 of 1 + the beats for which the answering group has been silent before its answer, at most 4 */
    F_VALUES,      /* log2 of the different note values of the call */
    F_MARKED,      /* a dynamic or words single out the beginning of the call, of the answer: mean of both */
    FEATURE_COUNT
};

/* Who plays along with one side of a match through most of its notes; bit i: melody i. */
typedef struct PlayingAlong {
    uint64_t rhythm;   /* in the same rhythm */
    uint64_t parallel; /* in the same rhythm and direction */
    uint64_t unison;   /* in unison or octaves, in whatever rhythm the pitches are struck */
} PlayingAlong;

typedef struct Evidence {
    double at[FEATURE_COUNT];
    PlayingAlong with[2];                 /* the caller, the responder */
    double called_by_both, answered_by_both; /* shares of the call, of the answer that the two strike together, in unison or octaves */
    unsigned thoughts;                    /* bit t: spz_thought t holds */
    double chance;                        /* 0..1 of being marked by a reader, as far as the fit knows it */
} Evidence;

/* The logistic scale on which evidence adds up. Log odds of what is as good as sure are not taken further than a millionth. */
double chance_log_odds(double chance);
double chance_at_log_odds(double log_odds);

const char *feature_name(enum Feature feature);
double feature_weight(enum Feature feature); /* in log odds of being marked by a reader */

/* The strength told to users for a chance: 0.5 where a passage is clear. See docs/method.md, section 5. */
double strength_told(double chance);

/* False when its chance is less than `least`; then nothing more is measured of it than it took to know that. */
bool evidence_weigh(const Texture *texture, const RhythmIndex *rhythms, const Match *match, double least, Evidence *out);
#endif
