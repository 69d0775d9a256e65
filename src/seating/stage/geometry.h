/* geometry.h - what lies between two sections of a layout: for the players metres and delays, for the audience angles. */
#ifndef SEATING_GEOMETRY_H
#define SEATING_GEOMETRY_H
#include "seating/stage/desk_layout.h"

/* SPZ_VIOLINS and SPZ_STRINGS (violas, cellos, basses) are sets: what lies between two sets is the mean over their members, by
 * players. Violins on both sides sound from two places, not from the middle between them. */
bool geometry_distance(const Layout *layout, const Rules *rules, spz_section a, spz_section b, spz_distance *out);
bool geometry_hearing(const Layout *layout, const Rules *rules, spz_section a, spz_section b, size_t place, spz_separation *out);

/* Degrees to the right of the podium as a listener on that place sees it; `mirrored`: of the second of two orchestras. */
double geometry_direction(const Layout *layout, const Rules *rules, spz_section section, bool mirrored, size_t place);

/* A pair in short. Widths: the mean over the listeners (front, middle, back and sides a quarter each) of the angle as a multiple
 * of the hall's blur. Delay: the mean of front desks, centres and last rows, in seconds. Zeros where one is not on stage. */
typedef struct PairView {
    double widths, angle, delay; /* angle: degrees from the middle seats */
} PairView;
PairView geometry_pair(const Layout *layout, const Rules *rules, spz_section a, spz_section b);

/* How far the bass (cellos and basses) is in the middle of the sound: 1 on the middle line, 0 at the edge of the stage. */
double geometry_bass_centrality(const Layout *layout);
/* How far the instruments of a violin section turn toward the audience: 1 toward it, 0 across, -1 away. A violin's top faces its
 * player's right. */
double geometry_openness(const Layout *layout, spz_section section);
#endif
