/* explain.h - what was considered at a bar: which section has the line in it and what the others are to it; every pair of calls and answers that was compared there, and why it is a passage or is
 * none. For whoever doubts a finding, or misses one. */
#ifndef SPEZZATO_EXPLAIN_H
#define SPEZZATO_EXPLAIN_H

#include "spezzato/passages.h"

SPZ_C_BEGIN

typedef enum spz_fate {
    SPZ_REPORTED,     /* it is a passage, or part of one */
    SPZ_TOLD,         /* a stronger match of the same two says the same in most of its time */
    SPZ_OVERSHADOWED, /* the same two have a much stronger one beside it */
    SPZ_RETOLD,       /* a stronger passage of another pair tells the same story */
    SPZ_TOO_WEAK,     /* below what is reported even as marginal */
    SPZ_FATE_COUNT
} spz_fate;

/* What a listener takes for one matter when he compares a call and its answer with the clear passages of the movement. */
typedef enum spz_matter {
    SPZ_ALIKE,       /* how like the call the answer is */
    SPZ_FIGURE,      /* how much of a figure it is */
    SPZ_MAKING_WAY,  /* how far each stays out of the other's way */
    SPZ_EXTENT,      /* how long, and how often */
    SPZ_DISTANCE,    /* how telling the distance is at which the answer comes */
    SPZ_IN_FRONT,    /* how far in the foreground */
    SPZ_BEGINNINGS,  /* how far the beginnings stand out */
    SPZ_SOUNDING,    /* how it sounds: softness, plucking, speed */
    SPZ_NEWS,        /* how far the gesture is news: who has it already, at the call, at the answer, around them */
    SPZ_MATTER_COUNT
} spz_matter;

/* What a musician holds against a call and its answer however alike they are; the last one speaks for them. */
typedef enum spz_thought {
    SPZ_THOUGHT_JOINED,      /* the two strike most of the call, or of the answer, together in unison or octaves */
    SPZ_THOUGHT_AFTERBEATS,  /* beat and afterbeat beneath moving winds */
    SPZ_THOUGHT_MURMUR,      /* both rock to and fro on a few notes, out of other notes, once */
    SPZ_THOUGHT_INTERRUPTED, /* said once or twice, and the strings leave a whole bar to the winds before the answer */
    SPZ_THOUGHT_WINDS_LEAD,  /* a wind above has the call's line with it, and not the answer's */
    SPZ_THOUGHT_BARE_RHYTHM, /* a marked rhythm that stands free: it is known again though its notes move otherwise */
    SPZ_THOUGHT_COUNT
} spz_thought;

/* The passage, or the match, that stands for one that was compared. */
typedef struct spz_stands_for {
    spz_side sides[2];
    size_t first, last;  /* bars, indices */
    double strength;
    spz_kind kind;       /* of a passage */
    spz_length lag;      /* of a match */
    bool with_others;    /* a passage of several matches */
    bool accompanies;    /* a passage that would be striking, but hardly has the line: it is told as clear */
} spz_stands_for;

/* A call and its answers that were compared. */
typedef struct spz_considered {
    spz_side sides[2];           /* caller, responder */
    spz_length lag;              /* from a call to its answer */
    spz_change change;           /* what is done to the call */
    size_t first, last;          /* bars, indices */
    int tones, statements;       /* notes that call and answer share, and in how many calls */
    double alike;                /* 0..1: share of the notes of either that both have and that move the same way */
    double exact;                /* 0..1: share of their steps that are by the same interval */
    double caller_aside;         /* 0..1: how far the caller steps back under the answer: rests 1, goes on as busily 0 */
    double responder_aside;      /* 0..1: the same of the answering section under the call */
    double foreground;           /* 0..1: how much of what moves in the strings then is theirs */
    double strength;             /* 0..1, of this match alone; a passage of several matches is a little stronger */
    bool later_link;             /* its call is itself an answer, or was answered sooner by others: it counts for less */
    bool answers_nearer;         /* its answer is rather one to a nearer call, which is plainer: it counts for less (told where it would have come to something) */
    spz_side nearer_caller;      /* whose call that is, */
    spz_length nearer_lag;       /* from there to the answer, */
    double alone;                /* and the strength that this one would have without it */
    unsigned thoughts;           /* bit t: spz_thought t holds of it */
    spz_matter more[SPZ_MATTER_COUNT], less[SPZ_MATTER_COUNT]; /* in which it differs from the clear passages, most telling first */
    size_t more_count, less_count; /* 0 where there are no clear passages */
    spz_fate fate;
    spz_stands_for instead;      /* SPZ_REPORTED, SPZ_RETOLD: the passage; SPZ_TOLD, SPZ_OVERSHADOWED: the match */
} spz_considered;

/* What a section, or a wind part, is to the whole: figure or ground. */
typedef enum spz_voice_role {
    SPZ_VOICE_RESTS,
    SPZ_VOICE_PAD,     /* held notes, or notes struck again on their pitch */
    SPZ_VOICE_FIGURE,  /* moves, and soon does the same again, or breaks chords */
    SPZ_VOICE_COUNTER, /* moves in a way of its own under or over the line */
    SPZ_VOICE_ALONG,   /* moves with the line in its rhythm and direction: thirds, sixths */
    SPZ_VOICE_LINE,    /* the line that the ear follows, or the same notes or their octaves */
    SPZ_VOICE_ROLE_COUNT
} spz_voice_role;

typedef struct spz_voice_in_bar {
    size_t group;            /* string group; SIZE_MAX for a wind */
    size_t part;             /* of a wind: its part in the score; else SIZE_MAX */
    spz_voice_role roles[2]; /* in order of time; where it has more than two in the bar, the commonest */
    size_t role_count;       /* 1 or 2 */
    spz_fraction value;      /* in crotchets, the note value of more than half of its notes; 0 where there is none */
    bool strikes_again;      /* most of its notes repeat the pitch before, or tremble; not those of a minim or more */
} spz_voice_in_bar;

typedef struct spz_explanation spz_explanation;

/* All that was compared in bar `bar` (as printed; where several bars carry the number, in each of them), the strongest first: at
 * most `most`, and beyond that everything that is reported. Hears the movement anew: the time of spz_passages_find. `sections` must outlive the
 * result. SPZ_BAD_ARGUMENT where no bar has that number; SPZ_NO_MEMORY. */
SPZ_API spz_status spz_explanation_make(const spz_sections *sections, const char *bar, size_t most, spz_explanation **out);
SPZ_API void spz_explanation_free(spz_explanation *explanation); /* takes NULL */
SPZ_API size_t spz_explanation_count(const spz_explanation *explanation); /* how many are listed */
SPZ_API const spz_considered *spz_explanation_at(const spz_explanation *explanation, size_t index); /* NULL past the end */
/* How [passages] of a settings file names it, to hold it to be something though it isn't reported: '46-48 Vn I Vn II'. Returns `out`. */
SPZ_API char *spz_considered_line(const spz_sections *sections, const spz_considered *considered, char *out, size_t size);
/* What each string section is in that bar, in score order, then the winds that have the line in it; where several bars carry the number, in the first. */
SPZ_API size_t spz_explanation_voices(const spz_explanation *explanation);
SPZ_API const spz_voice_in_bar *spz_explanation_voice(const spz_explanation *explanation, size_t index); /* NULL past the end */
/* How many more were compared there and are weaker than those listed. */
SPZ_API size_t spz_explanation_more(const spz_explanation *explanation);

SPZ_C_END
#endif
