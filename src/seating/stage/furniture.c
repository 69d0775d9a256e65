#include "seating/stage/furniture.h"
#include <math.h>

const double furniture_chair = 0.21, furniture_stool = 0.27;
static const double stand_ahead = 0.42, stand_half = 0.22; /* metres: common practice */

Furniture furniture_of(const spz_plan *plan, const spz_stage_desk *desk)
{
    double radius = hypot(desk->x, desk->y), apart = spz_plan_desk_width(plan, desk->section) / 4;
    Furniture f = {.inward = {-desk->x / radius, -desk->y / radius}};
    f.stand = (spz_spot){desk->x + f.inward.x * stand_ahead, desk->y + f.inward.y * stand_ahead};
    for (int i = 0; i < 2; i++) {
        double side = desk->players == 1 ? 0 : i ? apart : -apart, end = i ? -stand_half : stand_half;
        f.seats[i] = (spz_spot){desk->x - f.inward.y * side, desk->y + f.inward.x * side};
        f.ends[i] = (spz_spot){f.stand.x - f.inward.y * end, f.stand.y + f.inward.x * end};
    }
    return f;
}
