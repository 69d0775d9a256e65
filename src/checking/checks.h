/* checks.h - one function for each kind of doubt; each looks at one movement and adds what it finds. */
#ifndef CHECKING_CHECKS_H
#define CHECKING_CHECKS_H
#include "sections/section_map.h"
#include "spezzato/check.h"
#include "support/array.h"

struct spz_doubts {
    Arena arena;
    const char *file;
    ARRAY(spz_doubt) list;
    size_t movement;  /* the one that is looked at */
    const char *title;
    bool no_memory;
};

/* Where a doubt belongs; part -1 for all parts, bar -1 for none. */
typedef struct DoubtPlace {
    int part, bar, last_bar; /* last_bar 0: the same as `bar` */
    long line;
} DoubtPlace;

/* `about` holds the fault and its figures; the rest of it is filled in here. Its texts are copied. */
void doubts_add(spz_doubts *doubts, const Movement *movement, DoubtPlace place, spz_doubt about);

void check_bars(spz_doubts *doubts, const Movement *movement);
void check_numbers(spz_doubts *doubts, const Movement *movement); /* number_doubts.c */
void check_part_lengths(spz_doubts *doubts, const Movement *movement);
void check_ties(spz_doubts *doubts, const Movement *movement);
void check_ranges(spz_doubts *doubts, const SectionMap *map);
void check_tempo(spz_doubts *doubts, const Movement *movement);
void check_names(spz_doubts *doubts, const SectionMap *map);
void check_divisions(spz_doubts *doubts, const SectionMap *map);
void check_order(spz_doubts *doubts, const Movement *movement);
#endif
