/* seating.h - from the passages to a recommendation that can be followed and attacked.
 *
 * A verdict is facts: figures, sections, bars, passages by their place in the findings. The documents put it into words, in the
 * reader's language. What its records point to lives as long as the verdict. */
#ifndef SPEZZATO_SEATING_H
#define SPEZZATO_SEATING_H

#include "spezzato/passages.h"

SPZ_C_BEGIN

enum { SPZ_ARRANGEMENT_LIMIT = 16, SPZ_ORDER_LIMIT = 6 };

/* The sections from house left to house right; of two orchestras each from its edge of the stage inward. Basses that stand behind the
 * others are not in it. */
typedef struct spz_order {
    spz_section sections[SPZ_ORDER_LIMIT];
    int count;
} spz_order;

/* An arrangement is known by its name: in settings, tables and data 'violins opposed, cellos inside left' and so on for the four standard
 * ones, the user's own as he named them. */
typedef enum spz_standard {
    SPZ_OPPOSED_CELLOS_LEFT,     /* "violins opposed, cellos inside left" */
    SPZ_OPPOSED_VIOLAS_LEFT,     /* "violins opposed, violas inside left" */
    SPZ_TOGETHER_CELLOS_OUTSIDE, /* "violins together, cellos outside" */
    SPZ_TOGETHER_VIOLAS_OUTSIDE, /* "violins together, violas outside" */
    SPZ_OWN_ARRANGEMENT          /* any other name */
} spz_standard;
SPZ_API spz_standard spz_arrangement_standard(const char *name);

/* Bars, indices, and their numbers as printed. */
typedef struct spz_bars {
    size_t first, last;
    const char *first_bar, *last_bar;
} spz_bars;

/* A passage that bears on the seating: what a verdict keeps of it, as it keeps no view of the findings. */
typedef struct spz_cited {
    size_t passage; /* its place in the findings of its movement */
    spz_kind kind;
    spz_section sides[2];
    double strength;
    spz_bars bars;
} spz_cited;

/* What a reason or a loss rests on. */
typedef struct spz_basis {
    const spz_bars *bars;      /* in order, those that touch drawn together */
    size_t bar_count;
    const spz_cited *passages; /* weightiest first; 0 where bars alone are meant */
    size_t passage_count;
} spz_basis;

/* Clear passages of one kind between two sections that an arrangement weakens: antiphony that is heard much narrower than elsewhere,
 * coupling whose delay is over what its notes allow, violins in three (SPZ_DIV3) where the violins sit apart. */
typedef struct spz_loss {
    size_t movement;      /* of a work: its place among those judged; else 0 */
    spz_kind kind;
    spz_section sides[2]; /* SPZ_DIV3: SPZ_VIOLINS and SPZ_NO_SECTION */
    bool throughout;      /* three violin parts from first bar to last: it rests on no bars */
    spz_basis basis;
} spz_loss;

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
    spz_order order;
    const char *order_text; /* 'Vn I, Vc, Va, Vn II' */
    double score;        /* 0..100, 50 when nothing speaks either way: 50 + 50 tanh(points / 50) */
    double points;       /* sum of the terms */
    double lost;         /* points less than the best arrangement that the house allows; 0 for that one */
    const spz_term *terms;
    size_t term_count;
    const spz_loss *losses; /* what this arrangement weakens */
    size_t loss_count;
    const char *losses_text; /* the same in English; "" for none */
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

/* What came of judging. */
typedef enum spz_outcome {
    SPZ_JUDGED,
    SPZ_WITHOUT_STRINGS,  /* no string sections were found in the score */
    SPZ_WITHOUT_VIOLINS,  /* two violin sections were not found */
    SPZ_WITHOUT_MOVEMENT, /* a work of no movements */
    SPZ_OUTCOME_COUNT
} spz_outcome;

/* A verdict in short. */
typedef struct spz_statement {
    spz_outcome outcome;
    spz_confidence confidence; /* SPZ_JUDGED; else SPZ_OPEN */
    double margin;             /* spz_verdict_margin */
    const char *arrangement;   /* the recommended one; NULL where nothing was judged */
} spz_statement;
SPZ_API spz_statement spz_verdict_statement(const spz_verdict *verdict);
SPZ_API const char *spz_verdict_statement_text(const spz_verdict *verdict); /* the same as an English sentence */
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

SPZ_C_END
#endif
