/* desk_layout.h - one arrangement on the stage: every section is a wedge of the half circle around the podium, its desks stand in
 * rows (arcs) a desk's depth apart, filled from the front. As few rows are used as hold everybody, and the wedges share the half
 * circle in proportion to what each needs. Basses that are not in the order stand on rows of their own, behind all others.
 *
 * Two orchestras share the arc: the first has its left half, the second mirrors it.
 *
 * Where the stage is wider and deeper than needed the desks draw apart by one common factor, up to the house's limit: so a wider
 * stage never brings two sections closer. The natural layout doesn't depend on the stage; it fits or it is refused. */
#ifndef SEATING_DESK_LAYOUT_H
#define SEATING_DESK_LAYOUT_H
#include "seating/arrangement.h"
#include "spezzato/stage.h"

enum { DESK_LIMIT = 160, ROW_LIMIT = 24 };

typedef struct Place {
    double x, y, z;
} Place;

typedef struct Spot {          /* where a section sits, in short */
    Place front, centre, back; /* front desk, middle of all players, middle of the last row */
    double weight;             /* players; 0: not on the stage */
} Spot;

typedef struct Layout {
    Arrangement arrangement;
    int players[SPZ_SECTION_COUNT];
    spz_stage_desk desks[DESK_LIMIT];
    size_t desk_count;
    bool two_orchestras;           /* desks of the second follow those of the first; spots are the first's */
    double span;                   /* radians of the arc that one orchestra has */
    int rows;
    double scale;                  /* 1, or how far the desks draw apart */
    double used_width, used_depth; /* chairs included; as laid out */
    bool fits;
    Spot spots[SPZ_SECTION_COUNT]; /* by section; SPZ_VIOLINS and SPZ_STRINGS (violas, cellos, basses) are sets */
} Layout;

void layout_make(const Arrangement *arrangement, const Rules *rules, Layout *out);
/* The largest strength, in the same proportions, that fits: players by section. False when not even a desk each does. */
bool layout_would_fit(const Arrangement *arrangement, const Rules *rules, int players[SPZ_SECTION_COUNT]);
double layout_desk_width(const Layout *layout, const Rules *rules, spz_section section);
#endif
