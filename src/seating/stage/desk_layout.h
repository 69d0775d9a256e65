/* desk_layout.h - one arrangement on the stage: every section is a wedge of the half circle around the podium, its desks stand in
 * rows (arcs) a desk's depth apart, filled from the front. As few rows are used as hold everybody, and the wedges share the half
 * circle in proportion to what each needs. Basses that are not in the order stand on rows of their own, behind all others.
 *
 * Two orchestras share the arc: the first has its left half, the second mirrors it.
 *
 * Where the stage is wider and deeper than needed the desks draw apart by one common factor, up to the house's limit: so a wider
 * stage never brings two sections closer. Where whole arcs do not fit, the rows are cut to the stage, there are more of them, and the
 * basses go along the back if there is no room for them elsewhere; only where that does not hold everybody either is it refused. Fewer
 * players never need a larger stage. */
#ifndef SEATING_DESK_LAYOUT_H
#define SEATING_DESK_LAYOUT_H
#include "seating/stage/arrangement.h"
#include "seating/stage/stage_room.h"
#include "spezzato/stage.h"

enum { LEAST_SIDE_MOST = 6000 }; /* hundredths of a metre: no stage is larger */

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
    bool cut;          /* whole arcs did not fit: the rows are cut to the stage */
    bool basses_moved; /* they stand along the back, as there was no room where the house wants them */
    Spot spots[SPZ_SECTION_COUNT]; /* by section; SPZ_VIOLINS and SPZ_STRINGS (violas, cellos, basses) are sets */
} Layout;

/* Where nothing fits it is laid out as if the stage had no walls. */
void layout_make(const Arrangement *arrangement, const Rules *rules, Layout *out);
bool layout_fits(const Arrangement *arrangement, const Rules *rules);
/* The least width that holds these players at the stage's depth, the least depth at its width: metres, to the hundredth. 0: none up
 * to 60 m does. */
double layout_least_width(const Arrangement *arrangement, const Rules *rules);
double layout_least_depth(const Arrangement *arrangement, const Rules *rules);
/* The largest strength, in the same proportions, that fits: players by section. False when not even a desk each does. */
bool layout_would_fit(const Arrangement *arrangement, const Rules *rules, int players[SPZ_SECTION_COUNT]);
double layout_desk_width(const Layout *layout, const Rules *rules, spz_section section);
#endif
