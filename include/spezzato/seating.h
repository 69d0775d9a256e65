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
SPZ_API spz_standard spz_arrangement_standard(const char *name); /* SPZ_OWN_ARRANGEMENT for NULL too */

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

/* The terms of the evidence. */
typedef enum spz_term_kind {
    SPZ_TERM_VIOLINS,  /* first and second (and third) violins answer each other */
    SPZ_TERM_OTHERS,   /* so do other sections */
    SPZ_TERM_ENSEMBLE, /* sections move together */
    SPZ_TERM_THREE,    /* violins in three */
    SPZ_TERM_BASS,     /* music over a bass line */
    SPZ_TERM_MELODY,   /* melody in the seconds, heard apart from the firsts */
    SPZ_TERM_TURNED,   /* the same, with instruments turned away */
    SPZ_TERM_ERA,
    SPZ_TERM_HOUSE,
    SPZ_TERM_COUNT
} spz_term_kind;
/* As in data: "antiphony of the violins", "antiphony of other sections", "ensemble", "violins in three", "bass line",
 * "melody in the seconds", "seconds turned away", "era", "house"; "" outside the list. */
SPZ_API const char *spz_term_name(spz_term_kind kind);

/* One term in one arrangement. Figures are 0 where the kind has none. */
typedef struct spz_term {
    spz_term_kind kind;
    double points;           /* already weighted; positive speaks for the arrangement */
    bool of_movements;       /* in a work: the mean of its movements, without figures of its own */
    spz_section sections[2]; /* OTHERS, ENSEMBLE: the pair that counts most; SPZ_NO_SECTION: none does */
    double evidence;         /* 0..1. VIOLINS, THREE: how much of its points the passages bring; BASS: how far the music is built over a
                                bass line; MELODY, TURNED: share of the bars with the melody in the seconds */
    double degrees;          /* VIOLINS, OTHERS, MELODY: between the two, as heard from the middle seats */
    double widths;           /* VIOLINS: that as a multiple of what can be told apart, over all places of the audience */
    double delay;            /* ENSEMBLE: seconds that sound takes between the two */
    double strain;           /* ENSEMBLE: that as a multiple of what their shortest notes allow */
    double centrality;       /* BASS: cellos and basses on the middle line 1, at the edge of the stage 0 */
    double openness;         /* TURNED: instruments toward the audience 1, across the stage 0, away from it -1 */
    int year;                /* ERA */
    bool preferred;          /* HOUSE: by its rules */
} spz_term;

typedef struct spz_ranked {
    const char *name;    /* 'violins opposed, cellos inside left' */
    bool opposed;        /* violins opposed, or together */
    spz_order order;
    double score;        /* 0..100, 50 when nothing speaks either way: 50 + 50 tanh(points / 50) */
    double points;       /* sum of the terms */
    double lost;         /* points less than the best arrangement that the house allows; 0 for that one */
    const spz_term *terms; /* the same kinds in the same order for every arrangement of the verdict */
    size_t term_count;
    const spz_loss *losses; /* what this arrangement weakens */
    size_t loss_count;
    size_t lost_bars;    /* bars in which it weakens what the best one doesn't; of a work: of all its movements, each against its own best */
    double lost_seconds; /* how long these sound by the tempo marks, repeats counted */
} spz_ranked;

typedef enum spz_confidence { SPZ_OPEN, SPZ_LEANING, SPZ_FIRM } spz_confidence;
SPZ_API const char *spz_confidence_name(spz_confidence confidence); /* "open", "leaning", "firm" */

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
    bool by_year;              /* the year of composition makes it so: without it the score leaves it open, or says the contrary */
} spz_statement;

/* What the year of composition does to a verdict. Before about 1930 facing violins were the rule (common practice, no source). */
enum { SPZ_EARLIER_YEAR = 1800, SPZ_LATER_YEAR = 1980 };
typedef struct spz_by_year {
    int year;              /* as judged; 0: not known */
    spz_statement silent;  /* by the score (and the house) alone */
    spz_statement earlier; /* as if it were of SPZ_EARLIER_YEAR */
    spz_statement later;   /* of SPZ_LATER_YEAR */
} spz_by_year;

/* What kind of reason: grounds for the recommended arrangement against another, remarks without points, what a movement of a work says. */
typedef enum spz_reason_kind {
    SPZ_REASON_ANTIPHONY, /* two sections answer each other */
    SPZ_REASON_ENSEMBLE,  /* two sections move together */
    SPZ_REASON_THREE,     /* violins in three */
    SPZ_REASON_BASS,      /* the bass belongs in the middle */
    SPZ_REASON_ERA,
    SPZ_REASON_HOUSE,
    SPZ_REASON_MELODY,    /* the seconds have the melody: heard apart from the firsts, or less */
    SPZ_REASON_TURNED,    /* the same: their instruments face the audience more, or less */
    SPZ_REMARK_CHAMBER_MUSIC,      /* one player a part: the orders of a quartet, and with what reserve they are judged */
    SPZ_REMARK_TWO_ORCHESTRAS,     /* they face each other whatever the seating within each */
    SPZ_REMARK_BETWEEN_ORCHESTRAS, /* their passages */
    SPZ_REMARK_THIRD_VIOLINS,      /* where they sit: on the seconds' inner side, or after them where the violins sit together */
    SPZ_REMARK_IN_FOUR,            /* violins in four, two lines in each section */
    SPZ_REMARK_WINDS,              /* strings and winds answer each other */
    SPZ_REMARK_SOLOISTS,           /* passages with soloists */
    SPZ_REMARK_VETOED,             /* passages that the conductor has taken out */
    SPZ_REMARK_WEIGHTED,           /* passages that she holds to be more, or less, than was found */
    SPZ_REMARK_FORBIDDEN,          /* the house forbids arrangements */
    SPZ_REMARK_NEIGHBOUR,          /* the same placing of the violins with the lower strings otherwise is as good */
    SPZ_REMARK_SMALL_STAGE,        /* judged as if it fitted */
    SPZ_REASON_MOVEMENT,  /* of a work: what the movement says by itself, and what it gives up */
    SPZ_REASON_KIND_COUNT
} spz_reason_kind;
/* As in data: "antiphony", "ensemble", "three", "bass", "era", "house", "melody", "turned", "chamber music", "two orchestras", "between orchestras",
 * "third violins", "in four", "winds", "soloists", "vetoed", "weighted", "forbidden", "neighbour", "small stage", "movement"; "" outside the list. */
SPZ_API const char *spz_reason_name(spz_reason_kind kind);

/* What shows that the music is built over a bass line. */
typedef enum spz_bass_line {
    SPZ_BASS_CONTINUO,     /* there is a continuo */
    SPZ_BASS_ONE_PART,     /* cellos and basses read one written part */
    SPZ_BASS_HARDLY_PARTED /* cellos and basses hardly ever part */
} spz_bass_line;

/* One reason. Figures are 0 or NULL where the kind has none. */
typedef struct spz_reason {
    spz_reason_kind kind;
    double points;           /* for the recommended arrangement against `other`; 0 for remarks */
    spz_basis basis;
    spz_basis weightiest;    /* ANTIPHONY, ENSEMBLE: the three weightiest, where there are more */
    spz_section sections[2]; /* ANTIPHONY, ENSEMBLE */
    const char *other;       /* the best arrangement of the other violin placing; NEIGHBOUR: the one as good; MOVEMENT: its own best */
    double here, there;      /* in the recommended arrangement and in `other`: degrees between the two from the middle seats (ANTIPHONY),
                                seconds that sound takes between them (ENSEMBLE), how far the bass is in the middle, 0..1 (BASS) */
    double shortest, allows; /* ENSEMBLE: seconds of their shortest shared note (0: not known), and the delay that it allows */
    bool tempo_guessed;      /* ENSEMBLE: as the score gives none */
    bool third_part;         /* THREE: a part of its own, not a division of the others */
    bool opposed;            /* THIRD_VIOLINS: the violins sit opposed; ERA: they did as a rule in that year */
    spz_bass_line bass;      /* BASS */
    int year;                /* ERA */
    double lost;             /* points. NEIGHBOUR: that it is behind; MOVEMENT: given up by it */
    size_t lost_bars;        /* MOVEMENT: in which something is weakened that its own best doesn't weaken */
    double lost_seconds;     /* MOVEMENT: how long these sound */
    double needs[2], has[2]; /* SMALL_STAGE: metres. Needed: the least width at this depth, the least depth at this width (0: none up to 60 m
                                is enough); there are: width and depth */
    size_t movement;         /* MOVEMENT: its place among those judged */
    spz_statement alone;     /* MOVEMENT: its own verdict */
    const spz_loss *losses;  /* MOVEMENT: what it loses in the work's arrangement */
    size_t loss_count;
} spz_reason;

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
SPZ_API void spz_verdict_free(spz_verdict *verdict); /* takes NULL */

SPZ_API spz_statement spz_verdict_statement(const spz_verdict *verdict); /* what the verdict comes to, as it stands on top of every page */
SPZ_API spz_by_year spz_verdict_by_year(const spz_verdict *verdict); /* where nothing was judged all three are the statement */
SPZ_API size_t spz_verdict_count(const spz_verdict *verdict);          /* ranked arrangements; 0 when nothing could be judged */
SPZ_API const spz_ranked *spz_verdict_ranked(const spz_verdict *verdict, size_t place); /* best first */
/* 0..1: hundredths of the score between the best and the best of the other violin placing; where the house allows one placing only,
 * to the next best. */
SPZ_API double spz_verdict_margin(const spz_verdict *verdict);
SPZ_API spz_confidence spz_verdict_confidence(const spz_verdict *verdict); /* how sure it is */
SPZ_API size_t spz_verdict_reasons(const spz_verdict *verdict); /* how many; 0 where nothing was judged */
SPZ_API const spz_reason *spz_verdict_reason(const spz_verdict *verdict, size_t index); /* weightiest first */
/* What would turn the verdict: the term whose weight has to move least, and by which factor. Factor 0: no weight turns it. */
typedef struct spz_turning {
    spz_term_kind term;
    double factor;
} spz_turning;
SPZ_API spz_turning spz_verdict_turning(const spz_verdict *verdict); /* factor 0 where nothing was judged */
/* Title of the movement judged; "" for a work. */
SPZ_API const char *spz_verdict_title(const spz_verdict *verdict);
/* The movements of a work as they were given: how many, and their titles ("" for none). 0 where one movement was judged. */
SPZ_API size_t spz_verdict_movements(const spz_verdict *verdict);
SPZ_API const char *spz_verdict_movement_title(const spz_verdict *verdict, size_t movement); /* "" past the end */
/* Whether the violins were seated in three sections. */
SPZ_API bool spz_verdict_thirds(const spz_verdict *verdict);
/* How many orchestras the score has: 1, or 2 that face each other, each judged by itself. 0 where nothing was judged. */
SPZ_API int spz_verdict_orchestras(const spz_verdict *verdict);
/* Whether every part was seated as one player: chamber music. */
SPZ_API bool spz_verdict_singles(const spz_verdict *verdict);
/* The pairs of sections on which the verdict hangs most, weightiest first; false past the last. With two orchestras the first
 * violins of the one and of the other come first, as the same section twice. */
SPZ_API bool spz_verdict_pair(const spz_verdict *verdict, size_t index, spz_section out[2]);

SPZ_C_END
#endif
