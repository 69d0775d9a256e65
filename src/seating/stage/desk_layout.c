#include "seating/stage/desk_layout.h"
#include "sections/section_map.h"
#include <math.h>
#include <string.h>

static const double half_turn = 3.14159265358979323846;
static const double squeeze = 1.02; /* desks are set so much closer, as a factor, before another row is begun: common practice */

static double natural_desk_width(const Rules *rules, spz_section section)
{
    return section == SPZ_DB ? 2 * rules->bass_width : section == SPZ_VC ? rules->cello_width : rules->desk_width;
}

double layout_desk_width(const Layout *layout, const Rules *rules, spz_section section)
{
    return natural_desk_width(rules, section) * layout->scale;
}

static Wedge wedge_of(const Rules *rules, spz_section section, int players)
{
    return (Wedge){.section = section, .players = players, .desks = (players + 1) / 2, .desk_width = natural_desk_width(rules, section)};
}

/* The smallest angle that holds the wedge's desks in `rows` rows without walls; more than the span when none does. */
static double angle_needed(const Wedge *wedge, const Room *room, int rows)
{
    Wedge tried = *wedge;
    double low = 0, high = room->span;
    tried.from = 0;
    tried.to = high;
    if (room_seats(room, rows, &tried) < wedge->desks)
        return 2 * half_turn;
    for (int i = 0; i < 40; i++) {
        tried.to = (low + high) / 2;
        if (room_seats(room, rows, &tried) >= wedge->desks)
            high = tried.to;
        else
            low = tried.to;
    }
    return high;
}

static int gather_wedges(const Arrangement *a, const Rules *rules, const int *players, Wedge *wedges)
{
    int count = 0;
    for (int i = 0; i < a->order.count; i++) {
        spz_section section = a->order.sections[i];
        if (players[section] > 0)
            wedges[count++] = wedge_of(rules, section, players[section]);
    }
    for (int i = 0; i < count; i++) { /* half an aisle to each side; of two orchestras one between them too */
        wedges[i].aisle_from = i > 0 ? rules->aisle / 2 : 0;
        wedges[i].aisle_to = i + 1 < count || rules->two_orchestras ? rules->aisle / 2 : 0;
    }
    return count;
}

static double needed_by_all(Wedge *wedges, int count, const Room *room, int rows)
{
    double all = 0;
    for (int i = 0; i < count; i++)
        all += wedges[i].needs = angle_needed(&wedges[i], room, rows);
    return all;
}

/* The wedges share the whole arc as each needs, their desks a little narrower where it is short. False where a wedge can't seat its desks so: aisles
 * don't get narrower. */
static bool lay_along_arc(Wedge *wedges, int count, const Room *room, int rows)
{
    double all = needed_by_all(wedges, count, room, rows), at = 0;
    bool seated = count > 0 && all <= room->span * squeeze;
    for (int i = 0; i < count && seated; i++) {
        Wedge *wedge = &wedges[i];
        wedge->desk_width *= fmin(1, room->span / all);
        wedge->from = at;
        wedge->to = at += wedge->needs * room->span / all;
        seated = room_seats(room, rows, wedge) >= wedge->desks;
    }
    return seated;
}

/* Without walls: as few rows as hold everybody. 0: not even the most rows do. */
static int share_arc(Wedge *wedges, int count, const Room *room)
{
    Wedge natural[SPZ_ORDER_LIMIT];
    memcpy(natural, wedges, sizeof natural);
    for (int rows = 1; rows <= ROW_LIMIT; rows++) {
        if (lay_along_arc(wedges, count, room, rows))
            return rows;
        memcpy(wedges, natural, sizeof natural);
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

static int put_row(Layout *layout, const Room *room, const Wedge *wedge, int row, int seated)
{
    double angles[DESK_LIMIT];
    int here = room_row_seats(room, row, wedge, wedge->desks - seated, angles);
    for (int i = 0; i < here; i++)
        put_desk(layout, wedge, seated + 1 + i, angles[i], room_row_radius(room->rules, row), row_height(room->rules, row));
    return here;
}

static void fill_wedge(Layout *layout, const Room *room, const Wedge *wedge)
{
    for (int row = 0, seated = 0; row < layout->rows && seated < wedge->desks; row++)
        seated += put_row(layout, room, wedge, row, seated);
}

static double middle_of(const Wedge *wedges, int count, spz_section section, double span)
{
    for (int i = 0; i < count; i++)
        if (wedges[i].section == section)
            return (wedges[i].from + wedges[i].to) / 2;
    return span / 2;
}

/* Where the basses stand when they are not in the order: on rows of their own behind the others. */
typedef struct BassRows {
    double middle, most; /* radians: around which angle, and how much of the arc they may take */
} BassRows;

static BassRows bass_rows_wanted(const Layout *layout, const Wedge *wedges, int count)
{
    BassPlace place = layout->arrangement.basses;
    double middle = place == BASSES_ALONG_THE_BACK ? layout->span / 2
                                                   : middle_of(wedges, count, place == BASSES_BEHIND_FIRSTS ? SPZ_VN1 : SPZ_VC, layout->span);
    return (BassRows){middle, half_turn / 2}; /* at most a quarter of the circle a row */
}

static BassRows bass_rows_along_the_back(const Layout *layout)
{
    return (BassRows){layout->span / 2, layout->span};
}

/* Full rows first, from `first` on, and more of them where one is short. False where the rows end before all basses stand. */
static bool put_basses(Layout *layout, const Room *room, int players, BassRows where, int first)
{
    Wedge basses = wedge_of(room->rules, SPZ_DB, players);
    int rows = room_rows(room), seated = 0;
    for (int row = first; row < rows && seated < basses.desks; row++) {
        for (int wanted = basses.desks - seated; wanted > 0; wanted--)
            if (room_gather(room, row, &basses, where.middle, where.most, wanted)) {
                seated += put_row(layout, room, &basses, row, seated);
                break;
            }
    }
    return seated == basses.desks;
}

/* Nobody else sits beside or behind this desk within its own width and half of another's. */
static bool stands_behind(const Layout *layout, const Rules *rules, const spz_stage_desk *bass)
{
    double radius = hypot(bass->x, bass->y), angle = atan2(bass->y, -bass->x);
    for (size_t i = 0; i < layout->desk_count; i++) {
        const spz_stage_desk *other = &layout->desks[i];
        double away = hypot(other->x, other->y), room = (rules->bass_width + natural_desk_width(rules, other->section) / 2) / radius;
        if (other->section != SPZ_DB && away > radius - 0.01 && fabs(atan2(other->y, -other->x) - angle) < room - 1e-9)
            return false;
    }
    return true;
}

/* Basses that found room behind all rows come forward to the first row that is free there, as far as they stay behind whoever sits
 * before them. */
static void draw_basses_in(Layout *layout, const Room *room, int players, BassRows where)
{
    size_t strings = layout->desk_count;
    while (strings > 0 && layout->desks[strings - 1].section == SPZ_DB)
        strings--;
    if (strings == layout->desk_count)
        return;
    for (int first = 1; first < layout->rows; first++) {
        Layout tried = *layout;
        tried.desk_count = strings;
        bool free = put_basses(&tried, room, players, where, first);
        for (size_t i = strings; i < tried.desk_count && free; i++)
            free = stands_behind(&tried, room->rules, &tried.desks[i]);
        if (free) {
            *layout = tried;
            return;
        }
    }
}

/* How far, as a factor, the desks may draw apart before the first of them meets a wall; under 1 they don't fit. */
static double room_to_grow(const Layout *layout, const Rules *rules)
{
    double room = INFINITY;
    for (size_t i = 0; i < layout->desk_count; i++) {
        const spz_stage_desk *desk = &layout->desks[i];
        double reach = room_reach(desk->section);
        room = fmin(room, (rules->width / 2 - reach) / fmax(fabs(desk->x), 1e-9));
        room = fmin(room, (rules->depth - rules->front - reach) / fmax(desk->y, 1e-9));
    }
    return room;
}

static void measure(Layout *layout, const Rules *rules, bool between_walls)
{
    double room = room_to_grow(layout, rules), across = 0, deep = 0;
    layout->fits = layout->fits && (between_walls || room >= 1);
    layout->scale = between_walls ? 1 : fmin(fmax(room, 1), rules->spread);
    for (size_t i = 0; i < layout->desk_count; i++) {
        spz_stage_desk *desk = &layout->desks[i];
        desk->x *= layout->scale;
        desk->y *= layout->scale;
        across = fmax(across, fabs(desk->x) + room_reach(desk->section));
        deep = fmax(deep, desk->y + room_reach(desk->section));
    }
    layout->used_width = 2 * across;
    layout->used_depth = rules->front + deep;
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

static int own_bass_rows(const Layout *layout, const int *players)
{
    return arrangement_has(&layout->arrangement, SPZ_DB) ? 0 : players[SPZ_DB];
}

/* As if the stage had no walls. */
static void seat_freely(Layout *layout, const int *players, const Rules *rules)
{
    Wedge wedges[SPZ_ORDER_LIMIT] = {{0}};
    const Room room = room_without_walls(rules, layout->span);
    int count = gather_wedges(&layout->arrangement, rules, players, wedges), basses = own_bass_rows(layout, players);
    layout->rows = share_arc(wedges, count, &room);
    layout->fits = layout->rows > 0;
    for (int i = 0; i < count && layout->fits; i++)
        fill_wedge(layout, &room, &wedges[i]);
    if (layout->fits)
        layout->fits = put_basses(layout, &room, basses, bass_rows_wanted(layout, wedges, count), layout->rows);
    if (layout->fits)
        draw_basses_in(layout, &room, basses, bass_rows_wanted(layout, wedges, count));
    measure(layout, rules, false);
}

/* Between the walls of the stage: rows that they cut, more of them where it is deep, and the basses along the back where there is no
 * room for them where the house wants them. */
static void seat_between_walls(Layout *layout, const int *players, const Rules *rules)
{
    Wedge wedges[SPZ_ORDER_LIMIT];
    const Room room = room_of_stage(rules, layout->span);
    int count = gather_wedges(&layout->arrangement, rules, players, wedges), basses = own_bass_rows(layout, players);
    layout->cut = true;
    layout->rows = room_share(&room, wedges, count);
    layout->fits = layout->rows > 0;
    for (int i = 0; i < count && layout->fits; i++)
        fill_wedge(layout, &room, &wedges[i]);
    size_t before = layout->desk_count;
    BassRows where = bass_rows_wanted(layout, wedges, count);
    if (layout->fits && !put_basses(layout, &room, basses, where, layout->rows)) {
        layout->desk_count = before;
        layout->basses_moved = true;
        where = bass_rows_along_the_back(layout);
        layout->fits = put_basses(layout, &room, basses, where, layout->rows);
    }
    if (layout->fits)
        draw_basses_in(layout, &room, basses, where);
    measure(layout, rules, true);
}

static void begin(const Arrangement *arrangement, const Rules *rules, Layout *out, int *players)
{
    memset(out, 0, sizeof *out);
    out->arrangement = *arrangement;
    out->two_orchestras = rules->two_orchestras;
    out->span = rules->two_orchestras ? half_turn / 2 : half_turn;
    for (int s = 0; s < SPZ_SECTION_COUNT; s++)
        out->players[s] = s == SPZ_VN3 && !arrangement_has(arrangement, SPZ_VN3) ? 0 : rules->players[s];
    for (int s = 0; s < SPZ_SECTION_COUNT; s++)
        players[s] = rules->two_orchestras ? (out->players[s] + 1) / 2 : out->players[s];
}

void layout_make(const Arrangement *arrangement, const Rules *rules, Layout *out)
{
    int players[SPZ_SECTION_COUNT]; /* of one orchestra */
    begin(arrangement, rules, out, players);
    seat_freely(out, players, rules);
    if (!out->fits || !layout_fits(arrangement, rules)) {
        begin(arrangement, rules, out, players);
        seat_between_walls(out, players, rules);
    }
    if (!out->fits) { /* for whoever judges it as if it fitted */
        begin(arrangement, rules, out, players);
        seat_freely(out, players, rules);
    }
    note_spots(out);
    if (out->two_orchestras)
        add_mirror(out);
}

bool layout_fits(const Arrangement *arrangement, const Rules *rules)
{
    int players[SPZ_SECTION_COUNT];
    Layout layout;
    begin(arrangement, rules, &layout, players);
    seat_between_walls(&layout, players, rules);
    return layout.fits;
}

/* A hundredth of a metre more or less of the stage, between the bounds of the settings. */
static double least_of(const Arrangement *arrangement, Rules *rules, double *side, int low, int high)
{
    *side = high / 100.0;
    if (!layout_fits(arrangement, rules))
        return 0;
    while (low < high) {
        int middle = (low + high) / 2;
        *side = middle / 100.0;
        if (layout_fits(arrangement, rules))
            high = middle;
        else
            low = middle + 1;
    }
    return high / 100.0;
}

double layout_least_width(const Arrangement *arrangement, const Rules *rules)
{
    Rules tried = *rules;
    return least_of(arrangement, &tried, &tried.width, 1, LEAST_SIDE_MOST);
}

double layout_least_depth(const Arrangement *arrangement, const Rules *rules)
{
    Rules tried = *rules;
    return least_of(arrangement, &tried, &tried.depth, 1, LEAST_SIDE_MOST);
}

static void take_share(Rules *fewer, const Rules *rules, int share)
{
    for (int s = 0; s < SPZ_SECTION_COUNT; s++)
        fewer->players[s] = rules->players[s] ? (rules->players[s] * share + 99) / 100 : 0;
}

bool layout_would_fit(const Arrangement *arrangement, const Rules *rules, int players[SPZ_SECTION_COUNT])
{
    Rules fewer = *rules;
    int low = 0, high = 99; /* hundredths: holds, and may not */
    while (low < high) {
        int middle = (low + high + 1) / 2;
        take_share(&fewer, rules, middle);
        if (layout_fits(arrangement, &fewer))
            low = middle;
        else
            high = middle - 1;
    }
    take_share(&fewer, rules, low);
    memcpy(players, fewer.players, sizeof fewer.players);
    return low > 0;
}
