#include "seating/geometry.h"
#include "seating/acoustics.h"
#include <math.h>

static const double half_turn = 3.14159265358979323846;

static double apart(Place a, Place b)
{
    double x = a.x - b.x, y = a.y - b.y, z = a.z - b.z;
    return sqrt(x * x + y * y + z * z);
}

static bool both_there(const Layout *layout, spz_section a, spz_section b)
{
    return layout->spots[a].weight > 0 && layout->spots[b].weight > 0;
}

bool geometry_distance(const Layout *layout, const Rules *rules, spz_section a, spz_section b, spz_distance *out)
{
    *out = (spz_distance){0};
    if (!both_there(layout, a, b))
        return false;
    const Spot *one = &layout->spots[a], *two = &layout->spots[b];
    out->front = apart(one->front, two->front);
    out->centre = apart(one->centre, two->centre);
    out->back = apart(one->back, two->back);
    out->front_delay = 1000 * acoustics_delay(out->front, rules->celsius);
    out->centre_delay = 1000 * acoustics_delay(out->centre, rules->celsius);
    out->back_delay = 1000 * acoustics_delay(out->back, rules->celsius);
    return true;
}

/* Direction of a place for a listener, in radians from his view of the podium, positive to the right. */
static double direction(const Listener *listener, const Rules *rules, Place place)
{
    double back = rules->front + listener->distance;
    double to_podium = atan2(-listener->x, back);
    double there = atan2(place.x - listener->x, back + place.y);
    return there - to_podium;
}

bool geometry_hearing(const Layout *layout, const Rules *rules, spz_section a, spz_section b, size_t place, spz_hearing *out)
{
    *out = (spz_hearing){0};
    if (!both_there(layout, a, b) || place >= LISTENER_COUNT)
        return false;
    const Listener *listener = &rules->listeners[place];
    double one = direction(listener, rules, layout->spots[a].centre), two = direction(listener, rules, layout->spots[b].centre);
    out->place = listener->name;
    out->angle = fabs(one - two) * 180 / half_turn;
    out->ear_delay = 1e6 * fabs(acoustics_ear_delay(one, rules->celsius) - acoustics_ear_delay(two, rules->celsius));
    out->widths = out->angle / rules->blur;
    return true;
}

PairView geometry_pair(const Layout *layout, const Rules *rules, spz_section a, spz_section b)
{
    PairView view = {0};
    spz_distance distance;
    spz_hearing hearing;
    if (!geometry_distance(layout, rules, a, b, &distance))
        return view;
    view.delay = (distance.front_delay + distance.centre_delay + distance.back_delay) / 3000;
    for (size_t i = 0; i < LISTENER_COUNT; i++) {
        geometry_hearing(layout, rules, a, b, i, &hearing);
        view.widths += hearing.widths * rules->listeners[i].weight;
        if (i == 1)
            view.angle = hearing.angle;
    }
    return view;
}

double geometry_bass_centrality(const Layout *layout)
{
    const Spot *cellos = &layout->spots[SPZ_VC], *basses = &layout->spots[SPZ_DB];
    double weight = cellos->weight + basses->weight;
    if (weight <= 0)
        return 0;
    double x = (cellos->centre.x * cellos->weight + basses->centre.x * basses->weight) / weight;
    double y = (cellos->centre.y * cellos->weight + basses->centre.y * basses->weight) / weight;
    return 1 - fabs(atan2(x, y)) / (half_turn / 2);
}

double geometry_openness(const Layout *layout, spz_section section)
{
    const Place *at = &layout->spots[section].centre;
    double radius = hypot(at->x, at->y);
    return radius > 0 ? -at->x / radius : 0;
}
