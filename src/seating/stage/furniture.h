/* furniture.h - chairs and stand of a desk, to the centimetre. */
#ifndef SEATING_FURNITURE_H
#define SEATING_FURNITURE_H
#include "spezzato/laying.h"

typedef struct Furniture {
    spz_spot seats[2];      /* side by side along the row; one in the middle where the desk has one player */
    spz_spot stand, ends[2]; /* of the stand: its middle and its ends, toward the podium */
    spz_spot inward;        /* from the desk toward the podium, 1 m */
} Furniture;

extern const double furniture_chair, furniture_stool; /* half their width, metres: common practice */
Furniture furniture_of(const spz_plan *plan, const spz_stage_desk *desk);
#endif
