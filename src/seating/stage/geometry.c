#include "seating/stage/geometry.h"
#include "seating/stage/acoustics.h"
#include <math.h>

static const double half_turn = 3.14159265358979323846;

static double apart(Place a, Place b)
{
    double x = a.x - b.x, y = a.y - b.y, z = a.z - b.z;
    return sqrt(x * x + y * y + z * z);
}

static bool both_there(const Layout *layout, spz_section a, spz_section b)
{
    return layout->spots[a].weight > 0 && layout->spots[b].weight > 0 && (a != b || layout->two_orchestras);
}

/* The sections of a set, or the section itself. */
static size_t members_of(const Layout *layout, spz_section section, spz_section out[3])
{
    static const spz_section violins[] = {SPZ_VN1, SPZ_VN2, SPZ_VN3}, lower[] = {SPZ_VA, SPZ_VC, SPZ_DB};
    if (section != SPZ_VIOLINS && section != SPZ_STRINGS) {
        out[0] = section;
        return layout->spots[section].weight > 0 ? 1 : 0;
    }
    size_t count = 0;
    for (size_t i = 0; i < 3; i++) {
        spz_section member = section == SPZ_VIOLINS ? violins[i] : lower[i];
        if (layout->spots[member].weight > 0)
            out[count++] = member;
    }
    return count;
}

/* Players times players; a section is no pair with itself, but for the bodies of two orchestras. */
static double weight_of_pair(const Layout *layout, spz_section a, spz_section b, bool across)
{
    return a == b && !across ? 0 : layout->spots[a].weight * layout->spots[b].weight;
}

/* Calls `add` with every pair of members and its share: players times players, of all. */
static void each_pair(const Layout *layout, spz_section a, spz_section b, void (*add)(void *, spz_section, spz_section, double),
                      void *sum)
{
    spz_section ones[3], twos[3];
    size_t one_count = members_of(layout, a, ones), two_count = members_of(layout, b, twos);
    double all = 0;
    for (size_t i = 0; i < one_count; i++)
        for (size_t j = 0; j < two_count; j++)
            all += weight_of_pair(layout, ones[i], twos[j], a == b);
    for (size_t i = 0; i < one_count && all > 0; i++)
        for (size_t j = 0; j < two_count; j++) {
            double weight = weight_of_pair(layout, ones[i], twos[j], a == b);
            if (weight > 0)
                add(sum, ones[i], twos[j], weight / all);
        }
}

/* Where the second of a pair sits: of the same section twice it is the body of the other orchestra. */
static Spot second_spot(const Layout *layout, spz_section a, spz_section b)
{
    Spot spot = layout->spots[b];
    if (a == b) {
        spot.front.x = -spot.front.x;
        spot.centre.x = -spot.centre.x;
        spot.back.x = -spot.back.x;
    }
    return spot;
}

typedef struct DistanceSum {
    const Layout *layout;
    spz_distance *distance;
} DistanceSum;

static void add_distance(void *context, spz_section a, spz_section b, double share)
{
    DistanceSum *sum = context;
    const Spot one = sum->layout->spots[a], two = second_spot(sum->layout, a, b);
    sum->distance->front += share * apart(one.front, two.front);
    sum->distance->centre += share * apart(one.centre, two.centre);
    sum->distance->back += share * apart(one.back, two.back);
}

bool geometry_distance(const Layout *layout, const Rules *rules, spz_section a, spz_section b, spz_distance *out)
{
    *out = (spz_distance){0};
    if (!both_there(layout, a, b))
        return false;
    DistanceSum sum = {layout, out};
    each_pair(layout, a, b, add_distance, &sum);
    out->front_delay = 1000 * acoustics_delay(out->front, rules->celsius);
    out->centre_delay = 1000 * acoustics_delay(out->centre, rules->celsius);
    out->back_delay = 1000 * acoustics_delay(out->back, rules->celsius);
    out->delay = (out->front_delay + out->centre_delay + out->back_delay) / 3;
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

double geometry_direction(const Layout *layout, const Rules *rules, spz_section section, bool mirrored, size_t place)
{
    Place centre = layout->spots[section].centre;
    centre.x = mirrored ? -centre.x : centre.x;
    return direction(&rules->listeners[place], rules, centre) * 180 / half_turn;
}

typedef struct HearingSum {
    const Layout *layout;
    const Rules *rules;
    const Listener *listener;
    spz_separation *hearing;
} HearingSum;

static void add_hearing(void *context, spz_section a, spz_section b, double share)
{
    HearingSum *sum = context;
    double one = direction(sum->listener, sum->rules, sum->layout->spots[a].centre);
    double two = direction(sum->listener, sum->rules, second_spot(sum->layout, a, b).centre);
    double celsius = sum->rules->celsius;
    sum->hearing->angle += share * fabs(one - two) * 180 / half_turn;
    sum->hearing->ear_delay += share * 1e6 * fabs(acoustics_ear_delay(one, celsius) - acoustics_ear_delay(two, celsius));
}

bool geometry_hearing(const Layout *layout, const Rules *rules, spz_section a, spz_section b, size_t place, spz_separation *out)
{
    *out = (spz_separation){0};
    if (!both_there(layout, a, b) || place >= SPZ_LISTENER_COUNT)
        return false;
    HearingSum sum = {layout, rules, &rules->listeners[place], out};
    each_pair(layout, a, b, add_hearing, &sum);
    out->listener = (spz_listener)place;
    out->widths = out->angle / rules->blur;
    return true;
}

PairView geometry_pair(const Layout *layout, const Rules *rules, spz_section a, spz_section b)
{
    PairView view = {0};
    spz_distance distance;
    spz_separation hearing;
    if (!geometry_distance(layout, rules, a, b, &distance))
        return view;
    view.delay = distance.delay / 1000;
    for (size_t i = 0; i < SPZ_LISTENER_COUNT; i++) {
        geometry_hearing(layout, rules, a, b, i, &hearing);
        view.widths += hearing.widths * rules->listeners[i].weight;
        if (i == SPZ_MIDDLE_SEATS)
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
