/* comparison.h - everything that one judgement compares: the rules of the house and every arrangement laid out on its stage. */
#ifndef SEATING_COMPARISON_H
#define SEATING_COMPARISON_H
#include "seating/stage/geometry.h"

typedef struct SeenPair {
    bool known;
    PairView view;
} SeenPair;

typedef struct Comparison {
    Rules rules;
    ArrangementList list;                /* third violins put in where the score has them */
    Layout *layouts;                     /* by arrangement; in the arena */
    SeenPair (*seen)[SPZ_SECTION_COUNT][SPZ_SECTION_COUNT]; /* likewise, by the two sections: each pair is measured once, when first asked for */
    bool allowed[SPZ_ARRANGEMENT_LIMIT]; /* not forbidden by the house */
    uint32_t preferred;                  /* bits of those that it prefers */
    size_t usual;                        /* the one that it seats as a rule */
} Comparison;

/* `settings` must outlive the comparison. SPZ_BAD_SETTINGS, told to the sink, when an arrangement is wrong or none is allowed. */
spz_status comparison_set(const spz_settings *settings, bool thirds, bool two_orchestras, bool singles, const spz_sink *sink, Arena *arena,
                          Comparison *out);

/* geometry_pair in one of the arrangements. */
PairView comparison_pair(const Comparison *comparison, size_t arrangement, spz_section a, spz_section b);
/* What the four standard arrangements give on average on this stage: what each arrangement is measured against. */
PairView comparison_usual_pair(const Comparison *comparison, spz_section a, spz_section b);
/* The width of the pair in an arrangement, as far as it counts: an order of the house's own gains nothing by seating sections farther
 * apart than the four standard arrangements seat these or the violins; whoever sits across the podium is across already. */
double comparison_felt_widths(const Comparison *comparison, size_t arrangement, spz_section a, spz_section b);
double comparison_usual_centrality(const Comparison *comparison);
double comparison_usual_openness(const Comparison *comparison, spz_section section);
#endif
