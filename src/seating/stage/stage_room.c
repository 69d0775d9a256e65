#include "seating/stage/stage_room.h"
#include <math.h>

double room_reach(spz_section section)
{
    return section == SPZ_DB ? 0.9 : 0.7;
}

static const double half_turn = 3.14159265358979323846;
static const double hair = 1e-9; /* radians, or desks: that a desk's width fits exactly */
enum { HALVINGS = 40 };

Room room_without_walls(const Rules *rules, double span)
{
    return (Room){rules, INFINITY, INFINITY, span};
}

Room room_of_stage(const Rules *rules, double span)
{
    return (Room){rules, rules->width / 2, rules->depth - rules->front, span};
}

double room_row_radius(const Rules *rules, int row)
{
    return rules->podium + row * rules->desk_depth;
}

/* The arc of a row, and how far from the podium the middles of such desks may lie to the sides and to the back. */
typedef struct Arc {
    double radius, half_width, depth;
} Arc;

static Arc arc_of(const Room *room, int row, spz_section section)
{
    double reach = room_reach(section);
    return (Arc){room_row_radius(room->rules, row), fmax(room->half_width - reach, 0), fmax(room->depth - reach, 0)};
}

static bool is_whole(const Arc *arc)
{
    return arc->radius <= arc->half_width && arc->radius <= arc->depth;
}

/* The angle from which on the arc is clear of the side wall, and that at which it meets the back (a right angle: nowhere). */
static double side_of(const Arc *arc)
{
    return arc->radius > arc->half_width ? acos(arc->half_width / arc->radius) : 0;
}

static double back_of(const Arc *arc)
{
    return arc->radius > arc->depth ? asin(arc->depth / arc->radius) : half_turn / 2;
}

int room_rows(const Room *room)
{
    int rows = 0;
    while (rows < ROW_LIMIT && room_row_radius(room->rules, rows) <= hypot(room->half_width, room->depth))
        rows++;
    return rows;
}

/* The first angle from `angle` on at which a desk of the row is on the stage; more than a half turn where there is none. */
static double next_on_stage(const Arc *arc, double angle)
{
    double side = side_of(arc), back = back_of(arc);
    angle = fmax(angle, side);
    if (angle > back + hair && angle < half_turn - back)
        angle = half_turn - back;
    return angle <= half_turn - side + hair ? angle : 2 * half_turn;
}

/* Desks from the first of the two angles on, each `width` along the row; at most `most`. */
static int walk_row(const Arc *arc, double from, double to, double width, int most, double *angles)
{
    double step = width / arc->radius;
    int seats = 0;
    for (double at = from + step / 2; seats < most; at += step) {
        at = next_on_stage(arc, at);
        if (at > to - step / 2 + hair)
            break;
        if (angles)
            angles[seats] = at;
        seats++;
    }
    return seats;
}

static bool begins_at_left(const Wedge *wedge)
{
    return wedge->from + wedge->to <= half_turn + hair;
}

/* The same from the wedge's outer edge, whichever side of the stage that is. */
static int walk_inward(const Arc *arc, const Wedge *wedge, double width, int most, double *angles)
{
    if (begins_at_left(wedge))
        return walk_row(arc, wedge->from, wedge->to, width, most, angles);
    int seats = walk_row(arc, half_turn - wedge->to, half_turn - wedge->from, width, most, angles);
    for (int i = 0; angles && i < seats; i++)
        angles[i] = half_turn - angles[i];
    return seats;
}

static void spread_evenly(const Wedge *wedge, int count, double *angles)
{
    for (int i = 0; i < count; i++) {
        double share = (i + 0.5) / count * (wedge->to - wedge->from);
        angles[i] = begins_at_left(wedge) ? wedge->from + share : wedge->to - share;
    }
}

/* In a row that the walls cut: the widest desks of which the row still holds so many. */
static void spread_between_walls(const Arc *arc, const Wedge *wedge, int count, double *angles)
{
    double low = wedge->desk_width, high = 2 * half_turn * arc->radius;
    for (int i = 0; i < HALVINGS; i++) {
        double width = (low + high) / 2;
        if (walk_inward(arc, wedge, width, count, NULL) >= count)
            low = width;
        else
            high = width;
    }
    walk_inward(arc, wedge, low, count, angles);
}

/* What an aisle leaves of it in that row; nothing where it is the whole. */
static Wedge between_aisles(const Wedge *wedge, const Arc *arc)
{
    Wedge left = *wedge;
    left.from += wedge->aisle_from / arc->radius;
    left.to -= wedge->aisle_to / arc->radius;
    if (left.to < left.from)
        left.from = left.to = (left.from + left.to) / 2;
    return left;
}

int room_row_seats(const Room *room, int row, const Wedge *whole_wedge, int wanted, double *angles)
{
    const Arc arc = arc_of(room, row, whole_wedge->section);
    const Wedge clear = between_aisles(whole_wedge, &arc), *wedge = &clear;
    bool whole = is_whole(&arc);
    int seats = whole ? (int)floor((wedge->to - wedge->from) * arc.radius / wedge->desk_width + hair)
                      : walk_inward(&arc, wedge, wedge->desk_width, DESK_LIMIT, NULL);
    if (!angles || seats <= 0)
        return seats > 0 ? seats : 0;
    seats = seats < wanted ? seats : wanted;
    if (whole)
        spread_evenly(wedge, seats, angles);
    else
        spread_between_walls(&arc, wedge, seats, angles);
    return seats;
}

int room_seats(const Room *room, int rows, const Wedge *wedge)
{
    int seats = 0;
    for (int row = 0; row < rows && seats < wedge->desks; row++)
        seats += room_row_seats(room, row, wedge, 0, NULL);
    return seats;
}

static bool holds(const Room *room, int rows, const Wedge *wedge, double from, double to)
{
    Wedge tried = *wedge;
    tried.from = from;
    tried.to = to;
    return room_seats(room, rows, &tried) >= wedge->desks;
}

/* The least end of the wedge that begins at `from`; past the span where there is none. */
static double least_end(const Room *room, int rows, const Wedge *wedge, double from)
{
    double low = from, high = room->span;
    if (from > room->span || !holds(room, rows, wedge, from, high))
        return 2 * half_turn;
    for (int i = 0; i < HALVINGS; i++) {
        double middle = (low + high) / 2;
        if (holds(room, rows, wedge, from, middle))
            high = middle;
        else
            low = middle;
    }
    return high;
}

/* The latest beginning of the wedge that ends at `to`, where there is one. */
static double latest_start(const Room *room, int rows, const Wedge *wedge, double to)
{
    double low = 0, high = to;
    for (int i = 0; i < HALVINGS; i++) {
        double middle = (low + high) / 2;
        if (holds(room, rows, wedge, middle, to))
            low = middle;
        else
            high = middle;
    }
    return low;
}

static bool hold_all(const Room *room, int rows, const Wedge *wedges, int count)
{
    double at = 0;
    for (int i = 0; i < count && at <= room->span; i++)
        at = least_end(room, rows, &wedges[i], at);
    return at <= room->span;
}

/* Metres of the rows on the stage up to an angle, for desks of violins. */
static double length_up_to(const Room *room, int rows, double angle)
{
    double length = 0;
    for (int row = 0; row < rows; row++) {
        const Arc arc = arc_of(room, row, SPZ_VN1);
        double side = side_of(&arc), back = back_of(&arc);
        length += arc.radius * fmax(0, fmin(angle, back) - side);
        length += arc.radius * fmax(0, fmin(angle, half_turn - side) - fmax(half_turn - back, side));
    }
    return length;
}

/* The angle up to which the given share of the rows lies. */
static double angle_at_share(const Room *room, int rows, double share)
{
    double low = 0, high = room->span, wanted = share * length_up_to(room, rows, room->span);
    for (int i = 0; i < HALVINGS; i++) {
        double middle = (low + high) / 2;
        if (length_up_to(room, rows, middle) >= wanted)
            high = middle;
        else
            low = middle;
    }
    return high;
}

static void set_angles(const Room *room, int rows, Wedge *wedges, int count)
{
    double latest[SPZ_ORDER_LIMIT + 1], all = 0, so_far = 0, at = 0;
    latest[count] = room->span;
    for (int i = count - 1; i >= 0; i--)
        latest[i] = latest_start(room, rows, &wedges[i], latest[i + 1]);
    for (int i = 0; i < count; i++)
        all += wedges[i].desks * wedges[i].desk_width;
    for (int i = 0; i < count; i++) {
        so_far += wedges[i].desks * wedges[i].desk_width;
        double fair = angle_at_share(room, rows, so_far / all), least = least_end(room, rows, &wedges[i], at);
        wedges[i].from = at;
        wedges[i].to = at = i + 1 == count ? room->span : fmax(least, fmin(fair, latest[i + 1]));
        wedges[i].desk_width *= 1 - 1e-7; /* where all is tight rounding must leave no desk over */
    }
}

int room_share(const Room *room, Wedge *wedges, int count)
{
    int most = room_rows(room);
    for (int rows = 1; rows <= most; rows++)
        if (count > 0 && hold_all(room, rows, wedges, count)) {
            set_angles(room, rows, wedges, count);
            return rows;
        }
    return 0;
}

static void open_around(const Room *room, Wedge *wedge, double middle, double angle)
{
    wedge->from = fmin(fmax(middle - angle / 2, 0), room->span - angle);
    wedge->to = wedge->from + angle;
}

bool room_gather(const Room *room, int row, Wedge *wedge, double middle, double most, int wanted)
{
    double low = 0, high = fmin(most, room->span);
    open_around(room, wedge, middle, high);
    if (room_row_seats(room, row, wedge, 0, NULL) < wanted)
        return false;
    for (int i = 0; i < HALVINGS; i++) {
        double angle = (low + high) / 2;
        open_around(room, wedge, middle, angle);
        if (room_row_seats(room, row, wedge, 0, NULL) >= wanted)
            high = angle;
        else
            low = angle;
    }
    open_around(room, wedge, middle, high);
    return true;
}
