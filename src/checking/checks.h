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
    int part, bar;
    long line;
} DoubtPlace;

void doubts_add(spz_doubts *doubts, spz_doubt_kind kind, spz_severity severity, const Movement *movement, DoubtPlace place,
                const char *format, ...) __attribute__((format(printf, 6, 7)));
/* The same for a row of bars, first to last. */
void doubts_add_row(spz_doubts *doubts, spz_doubt_kind kind, spz_severity severity, const Movement *movement, DoubtPlace place, int last_bar,
                    const char *format, ...) __attribute__((format(printf, 7, 8)));

void check_bars(spz_doubts *doubts, const Movement *movement);
void check_part_lengths(spz_doubts *doubts, const Movement *movement);
void check_ties(spz_doubts *doubts, const Movement *movement);
void check_ranges(spz_doubts *doubts, const SectionMap *map);
void check_tempo(spz_doubts *doubts, const Movement *movement);
void check_names(spz_doubts *doubts, const SectionMap *map);
void check_divisions(spz_doubts *doubts, const SectionMap *map);
void check_order(spz_doubts *doubts, const Movement *movement);
#endif
