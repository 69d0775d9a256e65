/* divisi_violins.h - all violins together in three or more lines: a matter of its own, because two groups that face each other
 * cannot be shared out in equal thirds.
 *
 * Three cases: both sections divided at the same time; one divided and the other an equal third line (one rhythm, no doubling),
 * not a melody with an inner voice in two below it; a third violin part. */
#ifndef ANALYSIS_DIVISION_DIVISI_VIOLINS_H
#define ANALYSIS_DIVISION_DIVISI_VIOLINS_H
#include "analysis/division/divisi_stretch.h"

/* A group with what its sweep found. */
typedef struct Divided {
    const Group *group;
    size_t index;
    BarWriting *bars;
    StretchList stretches;
} Divided;

/* Adds the passages of `first` and `second`, and cuts the bars that they take out of the two lists. */
spz_status divisi_of_both_violins(Findings *findings, const PlayingParts *company, Divided *first, Divided *second);

/* Adds the passages in which `third` has notes of its own. Where the lower strings too are written in three parts of equal
 * standing, that is how the piece is laid out, and nothing is added. */
spz_status divisi_of_third_violins(Findings *findings, const PlayingParts *company, const Divided *first, const Divided *second,
                                   const Divided *third);

/* Adds, as marginal, the passages in which a player who steps out of the violins has a line of their own beside firsts and seconds. Fills
 * the bars of `solo`. */
spz_status divisi_of_solo_violin(Findings *findings, const PlayingParts *company, const Divided *first, const Divided *second, Divided *solo);
#endif
