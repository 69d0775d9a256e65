/* seating.h - from the passages to a recommendation that can be followed and attacked. */
#ifndef SPEZZATO_SEATING_H
#define SPEZZATO_SEATING_H

#include "spezzato/passages.h"

enum { SPZ_ARRANGEMENT_LIMIT = 16 };

/* One term of the evidence in one arrangement: positive speaks for it. */
typedef struct spz_term {
    const char *name;    /* 'antiphony of the violins', 'violins in three', 'ensemble', 'bass line', 'era', 'house' */
    double points;       /* already weighted */
    const char *because; /* one clause with figures */
} spz_term;

/* A reason in words with the bars it rests on. */
typedef struct spz_reason {
    const char *text;
    const char *bars;    /* '66-71, 102'; "" where no bars are meant */
    double points;       /* for the recommended arrangement against the best of the other violin placing */
} spz_reason;

typedef struct spz_ranked {
    const char *name;    /* 'violins opposed, cellos inside left' */
    bool opposed;        /* violins opposed, or together */
    const char *outside; /* section at the outer right: 'Vn II', 'Va', 'Vc', or the user's own */
    const char *order;   /* house left to house right: 'Vn I, Vc, Va, Vn II' */
    double score;        /* 0..100, 50 when nothing speaks either way: 50 + 50 tanh(points / 50) */
    double points;       /* sum of the terms */
    double lost;         /* points less than the best arrangement that the house allows; 0 for that one */
    const spz_term *terms;
    size_t term_count;
    const char *losses;  /* bars of the passages that this arrangement weakens, with kinds; "" for none */
} spz_ranked;

typedef enum spz_confidence { SPZ_OPEN, SPZ_LEANING, SPZ_FIRM } spz_confidence;
SPZ_API const char *spz_confidence_name(spz_confidence confidence); /* "open", "leaning", "firm" */

typedef struct spz_verdict spz_verdict;

/* Judges one movement. Arrangements that the house forbids are not ranked. Each term is measured against what the four standard
 * arrangements give on average on this stage; docs/method-seating.md holds the model. `settings` NULL: all defaults. `year` 0: not
 * known. Where the score has no strings, or fewer than two violin sections, the verdict says so in spz_verdict_statement and ranks
 * nothing. SPZ_BAD_SETTINGS, told to the sink, for house rules that can't be followed; SPZ_NO_MEMORY. The verdict keeps no view of
 * `findings` or `settings`. */
SPZ_API spz_status spz_seating_judge(const spz_findings *findings, const spz_settings *settings, int year,
                                     const spz_sink *sink, spz_verdict **out);
/* One seating for several movements of a work: its points are the means of the movements' points, each weighed by how much
 * evidence the movement holds. Movements that could not be judged are left out. Reasons say what each movement loses. SPZ_BAD_ARGUMENT when
 * the movements were judged under different arrangements. */
SPZ_API spz_status spz_seating_judge_work(const spz_verdict *const *movements, size_t count, const spz_settings *settings,
                                          const spz_sink *sink, spz_verdict **out);
SPZ_API void spz_verdict_free(spz_verdict *verdict);

SPZ_API const char *spz_verdict_statement(const spz_verdict *verdict); /* one sentence; the recommendation or why there is none */
SPZ_API size_t spz_verdict_count(const spz_verdict *verdict);          /* ranked arrangements; 0 when nothing could be judged */
SPZ_API const spz_ranked *spz_verdict_ranked(const spz_verdict *verdict, size_t place); /* best first */
/* 0..1: hundredths of the score between the best and the best of the other violin placing; where the house allows one placing only,
 * to the next best. */
SPZ_API double spz_verdict_margin(const spz_verdict *verdict);
SPZ_API spz_confidence spz_verdict_confidence(const spz_verdict *verdict);
SPZ_API size_t spz_verdict_reasons(const spz_verdict *verdict);
SPZ_API const spz_reason *spz_verdict_reason(const spz_verdict *verdict, size_t index); /* weightiest first */
SPZ_API const char *spz_verdict_turning(const spz_verdict *verdict); /* 'turns if ensemble weighs 1.8 times as much'; "" */
/* Title of the movement judged; "" for a work. */
SPZ_API const char *spz_verdict_title(const spz_verdict *verdict);
/* Whether the violins were seated in three sections. */
SPZ_API bool spz_verdict_thirds(const spz_verdict *verdict);
/* How many orchestras the score has: 1, or 2 that face each other, each judged by itself. 0 where nothing was judged. */
SPZ_API int spz_verdict_orchestras(const spz_verdict *verdict);
/* The pairs of sections on which the verdict hangs most, weightiest first; false past the last. With two orchestras the first
 * violins of the one and of the other come first, as the same section twice. */
SPZ_API bool spz_verdict_pair(const spz_verdict *verdict, size_t index, spz_section out[2]);

#endif
