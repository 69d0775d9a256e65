#include "seating/desk_layout.h"
#include "sections/section_map.h"
#include <math.h>
#include <string.h>

static const double half_turn = 3.14159265358979323846;
static const double chair_reach =
    0.7; /* metres from the middle of a desk to the outer edge of its chairs and bows: common practice */

/* One section on its way to the stage: desks that wait for a seat, and the part of the half circle that it gets. */
typedef struct Wedge {
    spz_section section;
    int desks, players;
    double desk_width, needs, from, to; /* metres; radians */
} Wedge;

static double row_radius(const Rules *rules, int row)
{
    return rules->podium + row * rules->desk_depth;
}

static double natural_desk_width(const Rules *rules, spz_section section)
{
    return section == SPZ_DB ? 2 * rules->bass_width : rules->desk_width;
}

double layout_desk_width(const Layout *layout, const Rules *rules, spz_section section)
{
    return natural_desk_width(rules, section) * layout->scale;
}

static int row_capacity(double angle, double radius, double desk_width)
{
    return (int)floor(angle * radius / desk_width + 1e-9);
}

static int capacity(const Wedge *wedge, double angle, const Rules *rules, int rows)
{
    int desks = 0;
    for (int row = 0; row < rows; row++)
        desks += row_capacity(angle, row_radius(rules, row), wedge->desk_width);
    return desks;
}

/* The smallest angle that holds the wedge's desks in `rows` rows; more than `span` when none does. */
static double angle_needed(const Wedge *wedge, const Rules *rules, int rows, double span)
{
    double low = 0, high = span;
    if (capacity(wedge, high, rules, rows) < wedge->desks)
        return 2 * half_turn;
    for (int i = 0; i < 40; i++) {
        double middle = (low + high) / 2;
        if (capacity(wedge, middle, rules, rows) >= wedge->desks)
            high = middle;
        else
            low = middle;
    }
    return high;
}

static int gather_wedges(const Arrangement *a, const Rules *rules, const int *players, Wedge *wedges)
{
    int count = 0;
    for (int i = 0; i < a->order.count; i++) {
        spz_section section = a->order.sections[i];
        if (players[section] > 0)
            wedges[count++] = (Wedge){.section = section,
                                      .players = players[section],
                                      .desks = (players[section] + 1) / 2,
                                      .desk_width = natural_desk_width(rules, section)};
    }
    return count;
}

static double needed_by_all(Wedge *wedges, int count, const Rules *rules, int rows, double span)
{
    double all = 0;
    for (int i = 0; i < count; i++)
        all += wedges[i].needs = angle_needed(&wedges[i], rules, rows, span);
    return all;
}

/* As few rows as hold everybody; the wedges then share the arc of `span`. 0: not even the most rows do. */
static int share_arc(Wedge *wedges, int count, const Rules *rules, double span)
{
    for (int rows = 1; rows <= ROW_LIMIT; rows++) {
        double all = needed_by_all(wedges, count, rules, rows, span);
        if (all > span || count == 0)
            continue;
        double at = 0;
        for (int i = 0; i < count; i++) {
            wedges[i].from = at;
            at += wedges[i].needs * span / all;
            wedges[i].to = at;
        }
        return rows;
    }
    return 0;
}

static double row_height(const Rules *rules, int row)
{
    return row < 2 ? 0 : (row - 1) * rules->riser;
}

static void put_desk(Layout *layout, const Wedge *wedge, int number, double angle, double radius, double height)
{
    if (layout->desk_count == DESK_LIMIT)
        return;
    int left = wedge->players - 2 * (number - 1);
    layout->desks[layout->desk_count++] = (spz_stage_desk){.section = wedge->section,
                                                           .number = number,
                                                           .players = left >= 2 ? 2 : 1,
                                                           .x = -radius * cos(angle),
                                                           .y = radius * sin(angle),
                                                           .z = height};
}

/* `count` desks evenly over the wedge in one row, counted from the edge of the stage inward. */
static void put_row(Layout *layout, const Wedge *wedge, int first, int count, double radius, double height)
{
    bool from_left = wedge->from + wedge->to <= half_turn + 1e-9;
    for (int i = 0; i < count; i++) {
        double share = (i + 0.5) / count;
        double angle = from_left ? wedge->from + share * (wedge->to - wedge->from)
                                 : wedge->to - share * (wedge->to - wedge->from);
        put_desk(layout, wedge, first + i, angle, radius, height);
    }
}

static void fill_wedge(Layout *layout, const Wedge *wedge, const Rules *rules, int rows)
{
    int seated = 0;
    for (int row = 0; row < rows && seated < wedge->desks; row++) {
        double radius = row_radius(rules, row);
        int room = row_capacity(wedge->to - wedge->from, radius, wedge->desk_width);
        int here = room < wedge->desks - seated ? room : wedge->desks - seated;
        put_row(layout, wedge, seated + 1, here, radius, row_height(rules, row));
        seated += here;
    }
}

static double middle_of(const Wedge *wedges, int count, spz_section section, double span)
{
    for (int i = 0; i < count; i++)
        if (wedges[i].section == section)
            return (wedges[i].from + wedges[i].to) / 2;
    return span / 2;
}

/* Basses on rows of their own behind the others, around the place that the house wants; more rows where a quarter of the circle
 * is short. */
static void put_basses(Layout *layout, int players, const Wedge *wedges, int count, const Rules *rules)
{
    const Arrangement *a = &layout->arrangement;
    if (players <= 0 || arrangement_has(a, SPZ_DB))
        return;
    Wedge basses = {
        .section = SPZ_DB, .players = players, .desks = (players + 1) / 2, .desk_width = natural_desk_width(rules, SPZ_DB)};
    double middle = a->basses == BASSES_ALONG_THE_BACK
                        ? layout->span / 2
                        : middle_of(wedges, count, a->basses == BASSES_BEHIND_FIRSTS ? SPZ_VN1 : SPZ_VC, layout->span);
    for (int seated = 0, rows = 0; seated < basses.desks; rows++) {
        double radius = row_radius(rules, layout->rows + rows);
        int room = row_capacity(half_turn / 2, radius, basses.desk_width); /* at most a quarter of the circle a row */
        int here = room < 1 ? 1 : room < basses.desks - seated ? room : basses.desks - seated;
        double reach = here * basses.desk_width / radius / 2;
        double at = fmin(fmax(middle, reach), layout->span - reach);
        basses.from = at - reach;
        basses.to = at + reach;
        put_row(layout, &basses, seated + 1, here, radius, row_height(rules, layout->rows + rows));
        seated += here;
    }
}

static void measure(Layout *layout, const Rules *rules)
{
    double reach = 0, depth = 0;
    for (size_t i = 0; i < layout->desk_count; i++) {
        reach = fmax(reach, fabs(layout->desks[i].x));
        depth = fmax(depth, layout->desks[i].y);
    }
    double wide = reach > 0 ? (rules->width / 2 - chair_reach) / reach : 1;
    double deep = depth > 0 ? (rules->depth - rules->front - chair_reach) / depth : 1;
    double room = fmin(wide, deep);
    layout->fits = layout->fits && room >= 1;
    layout->scale = fmin(fmax(room, 1), rules->spread);
    for (size_t i = 0; i < layout->desk_count; i++) {
        layout->desks[i].x *= layout->scale;
        layout->desks[i].y *= layout->scale;
    }
    layout->used_width = 2 * (reach * layout->scale + chair_reach);
    layout->used_depth = rules->front + depth * layout->scale + chair_reach;
}

static void add_to_spot(Spot *spot, const spz_stage_desk *desk)
{
    double weight = desk->players, all = spot->weight + weight;
    Place here = {desk->x, desk->y, desk->z};
    if (spot->weight <= 0)
        spot->front = here;
    spot->centre.x += (here.x - spot->centre.x) * weight / all;
    spot->centre.y += (here.y - spot->centre.y) * weight / all;
    spot->centre.z += (here.z - spot->centre.z) * weight / all;
    spot->weight = all;
}

/* The last row: the desks that sit as far out as any of their section. */
static Place middle_of_last_row(const Layout *layout, spz_section section)
{
    double far = 0;
    Place sum = {0, 0, 0};
    int count = 0;
    for (size_t i = 0; i < layout->desk_count; i++)
        if (layout->desks[i].section == section)
            far = fmax(far, hypot(layout->desks[i].x, layout->desks[i].y));
    for (size_t i = 0; i < layout->desk_count; i++) {
        const spz_stage_desk *desk = &layout->desks[i];
        if (desk->section != section || hypot(desk->x, desk->y) < far - 0.01)
            continue;
        sum = (Place){sum.x + desk->x, sum.y + desk->y, sum.z + desk->z};
        count++;
    }
    return count ? (Place){sum.x / count, sum.y / count, sum.z / count} : sum;
}

static void note_spots(Layout *layout)
{
    for (size_t i = 0; i < layout->desk_count; i++) {
        const spz_stage_desk *desk = &layout->desks[i];
        bool violins = section_is_violin(desk->section);
        add_to_spot(&layout->spots[desk->section], desk);
        add_to_spot(&layout->spots[violins ? SPZ_VIOLINS : SPZ_STRINGS], desk);
    }
    for (spz_section s = SPZ_VN1; s <= SPZ_DB; s++)
        layout->spots[s].back = middle_of_last_row(layout, s);
    static const spz_section sets[] = {SPZ_VIOLINS, SPZ_STRINGS};
    for (size_t i = 0; i < 2; i++)
        layout->spots[sets[i]].front = layout->spots[sets[i]].back = layout->spots[sets[i]].centre;
}

/* The second orchestra as the mirror image of the first, with the players that are left for it. */
static void add_mirror(Layout *layout)
{
    size_t first = layout->desk_count;
    for (size_t i = 0; i < first && layout->desk_count < DESK_LIMIT; i++) {
        spz_stage_desk *desk = &layout->desks[i];
        int left = layout->players[desk->section] / 2 - 2 * (desk->number - 1);
        desk->orchestra = 1;
        if (left <= 0)
            continue;
        spz_stage_desk mirror = *desk;
        mirror.orchestra = 2;
        mirror.x = -desk->x;
        mirror.players = left >= 2 ? 2 : 1;
        layout->desks[layout->desk_count++] = mirror;
    }
}

static void seat(Layout *layout, const int *players, const Rules *rules)
{
    Wedge wedges[SPZ_ORDER_LIMIT];
    int count = gather_wedges(&layout->arrangement, rules, players, wedges);
    layout->rows = share_arc(wedges, count, rules, layout->span);
    layout->fits = layout->rows > 0;
    for (int i = 0; i < count && layout->fits; i++)
        fill_wedge(layout, &wedges[i], rules, layout->rows);
    if (layout->fits)
        put_basses(layout, players[SPZ_DB], wedges, count, rules);
}

void layout_make(const Arrangement *arrangement, const Rules *rules, Layout *out)
{
    int players[SPZ_SECTION_COUNT]; /* of one orchestra */
    memset(out, 0, sizeof *out);
    out->arrangement = *arrangement;
    out->two_orchestras = rules->two_orchestras;
    out->span = rules->two_orchestras ? half_turn / 2 : half_turn;
    for (int s = 0; s < SPZ_SECTION_COUNT; s++)
        out->players[s] = s == SPZ_VN3 && !arrangement_has(arrangement, SPZ_VN3) ? 0 : rules->players[s];
    for (int s = 0; s < SPZ_SECTION_COUNT; s++)
        players[s] = rules->two_orchestras ? (out->players[s] + 1) / 2 : out->players[s];
    seat(out, players, rules);
    measure(out, rules);
    note_spots(out);
    if (out->two_orchestras)
        add_mirror(out);
}

bool layout_would_fit(const Arrangement *arrangement, const Rules *rules, int players[SPZ_SECTION_COUNT])
{
    Rules fewer = *rules;
    Layout layout;
    for (int share = 99; share > 0; share--) {
        for (int s = 0; s < SPZ_SECTION_COUNT; s++)
            fewer.players[s] = rules->players[s] ? (rules->players[s] * share + 99) / 100 : 0;
        layout_make(arrangement, &fewer, &layout);
        if (layout.fits) {
            memcpy(players, layout.players, sizeof layout.players);
            return true;
        }
    }
    return false;
}
