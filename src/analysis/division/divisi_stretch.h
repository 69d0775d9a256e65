/* divisi_stretch.h - from the writing bar by bar to stretches of divided playing, and how much a listener makes of each. */
#ifndef ANALYSIS_DIVISION_DIVISI_STRETCH_H
#define ANALYSIS_DIVISION_DIVISI_STRETCH_H
#include "analysis/melody/playing_parts.h"
#include "analysis/division/divisi_writing.h"

typedef struct Stretch {
    size_t first, last;    /* bars */
    size_t divided, firm;  /* bars that are divided; of these, by mark, parts or hand, not by voices alone */
    size_t turns;          /* bars in which the lines take turns rather than sound together */
    int lines;             /* 2, 3, 4.. for most of it */
    double crotchets;      /* its length */
    bool in_company;       /* another section is divided for most of it too */
    BarWriting sum;        /* of its bars */
    double independence;   /* 0..1: how far the lines go their own ways */
    double foreground;     /* 0..1: share of the parts that play */
    double strength;       /* 0..1 */
} Stretch;
typedef ARRAY(Stretch) StretchList;

/* Appends the stretches of a group, in order. */
spz_status divisi_stretches_find(const BarWriting *bars, size_t bar_count, const PlayingParts *company, StretchList *out);

/* Works out lines, independence, foreground and strength of the bars first..last. */
Stretch divisi_stretch_of(const BarWriting *bars, size_t first, size_t last, const PlayingParts *company);

/* The same for what lies inside first..last: from its first divided bar to its last. */
Stretch divisi_stretch_within(const BarWriting *bars, size_t first, size_t last, const PlayingParts *company);

/* The strength that its figures give it; to be called again where lines or foreground are changed. */
double divisi_strength(const Stretch *stretch);

/* How many lines a bar is written in: 0 silent, 1, 2, 3, 4. */
int divisi_lines_in_bar(const BarWriting *bar);
#endif
