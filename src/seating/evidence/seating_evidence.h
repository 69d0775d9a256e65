/* seating_evidence.h - what the passages of a movement say about seating, before any arrangement is looked at: weighed passages by pair
 * of sections, melody in the seconds, the bass line, the year. */
#ifndef SEATING_TESTIMONY_H
#define SEATING_TESTIMONY_H
#include "analysis/passages/findings.h"
#include "seating/stage/house_rules.h"

/* How passages are weighed. */
typedef struct EvidenceFigures {
    double strength_power;   /* weight of a passage grows with this power of its strength: 0.6 counts a third of 1, 0.4 a tenth */
    double foreground_floor; /* share that a passage keeps when nothing of it is in the foreground */
    double turn_gain;        /* each entry after the second adds this share ... */
    int turn_limit;          /* ... up to this many entries */
    double antiphony_full;   /* this much weight brings 63 of 100 of the points: three striking foreground exchanges */
    double coupling_full;    /* likewise, as the share of the movement's bars in tight coupling */
    double three_full;       /* likewise: one striking, fully voiced passage of violins in three */
    double three_long;       /* crotchets from which violins in three count fully: eight bars of four, common practice, no source */
    double melody_full;      /* likewise, as the share of the movement's bars with the melody in the seconds */
    double chord_share;      /* violins in three in chords that fill count this share of three full lines */
    double usual_bars;       /* in movements longer than this, chance finds more: weight is divided by sqrt(bars / usual_bars) */
    double era_middle, era_slope; /* year at which facing violins went out of use, and the years over which they did */
    double bass_free;             /* share of bars with cellos and basses in one line below which no bass line is heard */
    double bass_shared;      /* evidence of a bass line where cellos and basses read one written line */
    double bass_heirs;            /* evidence of a bass line without a continuo, cellos and basses always in one line */
} EvidenceFigures;
extern const EvidenceFigures evidence_figures;

typedef enum PairKind { PAIR_VIOLINS, PAIR_VIOLAS_CELLOS, PAIR_VIOLINS_LOWER, PAIR_OTHERS } PairKind;

/* A passage that bears on the seating. */
typedef struct Item {
    const spz_passage *passage;
    double weight; /* in the evidence of its pair */
} Item;
typedef ARRAY(Item) ItemList;

typedef struct PairEvidence {
    spz_section a, b; /* in score order */
    PairKind kind;
    ItemList antiphony, coupling;
    double antiphony_sum, coupling_sum; /* of the weights */
} PairEvidence;
typedef ARRAY(PairEvidence) PairList;

typedef struct BarSpan {
    size_t first, last;
} BarSpan;
typedef ARRAY(BarSpan) SpanList;

typedef struct SeatingEvidence {
    const Movement *movement;
    const Findings *findings;
    PairList pairs;
    ItemList thirds; /* violins in three */
    ItemList fours;  /* violins in four, each section in two: told, not weighed */
    double three_sum;
    ItemList orchestras; /* between two orchestras: they face each other whatever the arrangement within each */
    ItemList winds;      /* strings against winds: told, not weighed */
    ItemList solos;      /* with a soloist, who stands before the section: told, not weighed */
    ItemList vetoed, weighted; /* by the conductor; the weighted ones are in their own lists too */
    SpanList melody;     /* bars in which the seconds have the melody */
    double melody_share;
    double bass; /* 0..1: how much the music is built over a bass line */
    bool continuo, bass_shared;
    bool has_thirds, two_orchestras;
    int year;
} SeatingEvidence;

/* SPZ_NO_MEMORY leaves what can be released. */
spz_status evidence_gather(const Findings *findings, const Rules *rules, int year, SeatingEvidence *out);
void evidence_release(SeatingEvidence *evidence);

/* 0..1: grows with `sum`, ever more slowly; 0.63 at `full`. */
double evidence_saturation(double sum, double full);
/* Share of the violins' weight that counts for the pair. */
double evidence_pair_share(PairKind kind, const Rules *rules);
/* -1 (sides together) .. 1 (opposed): what the year alone suggests; 0 when it is not known. */
double evidence_era(int year);
#endif
