/* The areas share their edges half way between the outermost desks of neighbours. */
#include "pages/drawings/stage/stage_picture.h"
#include "pages/drawings/score_view.h"
#include "support/numbers.h"
#include "wording/seatings/seating_words.h"
#include "wording/section_words.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

enum { AREAS_MOST = 24 };
static const double pi = 3.14159265358979323846;
/* Units of the drawing. */
static const double width = 500, string_radius = 236, whole_radius = 318, wind_depth = 26, wind_gap = 6, side_air = 8, below = 118, little_below = 44;
static const double row_half = 0.75, gap = 3.5; /* metres, units between two areas */

typedef struct Area {
    spz_section section;
    int orchestra, players;
    double from, to;      /* radians, house right is 0, house left pi */
    double inner, outer;  /* metres from the podium */
    bool behind;          /* basses behind all others */
} Area;

typedef struct Picture {
    Markup *html;
    spz_language language;
    const spz_plan *plan;
    const SectionMap *map; /* NULL: every section plays */
    StageSize size;
    Area areas[AREAS_MOST];
    size_t count;
    double inner, outer, back; /* metres: of the half circle; with the basses behind it */
    double scale, x, y;        /* units a metre; the podium */
} Picture;

static bool in_order(const spz_plan *plan, spz_section section)
{
    spz_order order = spz_plan_order(plan);
    for (int i = 0; i < order.count; i++)
        if (order.sections[i] == section)
            return true;
    return false;
}

/* Basses without a part have no place behind the others; all other sections keep theirs, or the half circle would be another. */
static bool stands_there(const Picture *p, spz_section section)
{
    bool plays = !p->map || p->map->group_count == 0;
    for (size_t i = 0; !plays && i < p->map->group_count; i++)
        plays = p->map->groups[i].about.section == section;
    return plays || in_order(p->plan, section);
}

static Area *area_of(Picture *p, const spz_stage_desk *desk)
{
    for (size_t i = 0; i < p->count; i++)
        if (p->areas[i].section == desk->section && p->areas[i].orchestra == desk->orchestra)
            return &p->areas[i];
    if (p->count == AREAS_MOST)
        return NULL;
    p->areas[p->count] = (Area){.section = desk->section, .orchestra = desk->orchestra, .from = HUGE_VAL, .to = -HUGE_VAL, .inner = HUGE_VAL,
                                .behind = !in_order(p->plan, desk->section)};
    return &p->areas[p->count++];
}

static void gather(Picture *p)
{
    for (size_t i = 0; i < spz_plan_desks(p->plan); i++) {
        const spz_stage_desk *desk = spz_plan_desk(p->plan, i);
        if (!stands_there(p, desk->section))
            continue;
        Area *area = area_of(p, desk);
        double radius = hypot(desk->x, desk->y), angle = atan2(desk->y, desk->x), half = spz_plan_desk_width(p->plan, desk->section) / 2 / radius;
        if (!area)
            continue;
        area->players += desk->players;
        area->from = fmin(area->from, angle - half);
        area->to = fmax(area->to, angle + half);
        area->inner = fmin(area->inner, radius - row_half);
        area->outer = fmax(area->outer, radius + row_half);
    }
}

static int by_angle(const void *a, const void *b)
{
    const Area *one = a, *two = b;
    if (one->behind != two->behind)
        return one->behind ? 1 : -1;
    double left = one->from + one->to, right = two->from + two->to;
    if (left < right || left > right)
        return left < right ? 1 : -1;
    return one->section != two->section ? (one->section < two->section ? -1 : 1) : one->orchestra - two->orchestra;
}

/* One half circle: all areas reach from the innermost to the outermost row, and meet. */
static void share_out(Picture *p)
{
    qsort(p->areas, p->count, sizeof *p->areas, by_angle);
    p->inner = HUGE_VAL;
    for (size_t i = 0; i < p->count; i++) {
        Area *area = &p->areas[i];
        p->back = fmax(p->back, area->outer);
        if (area->behind)
            continue;
        p->inner = fmin(p->inner, area->inner);
        p->outer = fmax(p->outer, area->outer);
        if (i == 0)
            area->to = fmax(area->to, pi);
        if (i + 1 < p->count && !p->areas[i + 1].behind)
            area->from = p->areas[i + 1].to = (area->from + p->areas[i + 1].to) / 2;
        else
            area->from = fmin(area->from, 0);
    }
    for (size_t i = 0; i < p->count; i++)
        if (!p->areas[i].behind) {
            p->areas[i].inner = p->inner;
            p->areas[i].outer = p->outer;
        } else {
            p->areas[i].inner = fmax(p->areas[i].inner, p->outer);
        }
}

static double at_x(const Picture *p, double radius, double angle)
{
    return p->x + radius * cos(angle);
}

static double at_y(const Picture *p, double radius, double angle)
{
    return p->y - radius * sin(angle);
}

static const double hair = 1e-7; /* units: what stands midway between two tenths goes one way on every computer, whatever its cosines end in */

/* A piece of a ring, in units and radians from house left. */
static void draw_ring(const Picture *p, const char *class, double from, double to, double inner, double outer)
{
    char n[10][NUMBER_TEXT];
    const double at[10] = {at_x(p, outer, to), at_y(p, outer, to), outer, at_x(p, outer, from), at_y(p, outer, from),
                           at_x(p, inner, from), at_y(p, inner, from), inner, at_x(p, inner, to), at_y(p, inner, to)};
    for (int i = 0; i < 10; i++)
        number_text_short(at[i] - hair, 1, n[i]);
    markup_open_class(p->html, "path", class);
    markup_put_format(p->html, "d", "M%s %sA%s %s 0 0 1 %s %sL%s %sA%s %s 0 0 0 %s %sz", n[0], n[1], n[2], n[2], n[3], n[4], n[5], n[6], n[7], n[7], n[8], n[9]);
    markup_close_void(p->html);
}

static void draw_area(const Picture *p, const Area *area)
{
    char class[32];
    double inner = area->inner * p->scale, outer = area->outer * p->scale, air = p->size == STAGE_GLYPH ? 0 : gap;
    snprintf(class, sizeof class, "area %s", view_class(area->section));
    if (area->behind)
        inner += wind_gap;
    draw_ring(p, class, area->from + air / outer, area->to - air / outer, inner + air / 2, outer - air / 2);
}

static void draw_desks(const Picture *p, const Area *area)
{
    Buffer path = {0};
    for (size_t i = 0; i < spz_plan_desks(p->plan); i++) {
        const spz_stage_desk *desk = spz_plan_desk(p->plan, i);
        if (desk->section != area->section || desk->orchestra != area->orchestra)
            continue;
        double radius = hypot(desk->x, desk->y), angle = atan2(desk->y, desk->x), half = desk->players == 2 ? spz_plan_desk_width(p->plan, desk->section) / 3.4 / radius : 0.001;
        char n[4][NUMBER_TEXT];
        const double at[4] = {at_x(p, radius * p->scale, angle + half), at_y(p, radius * p->scale, angle + half), at_x(p, radius * p->scale, angle - half),
                              at_y(p, radius * p->scale, angle - half)};
        for (int k = 0; k < 4; k++)
            number_text_short(at[k], 1, n[k]);
        buffer_printf(&path, "M%s %sL%s %s", n[0], n[1], n[2], n[3]);
    }
    markup_open(p->html, "path");
    markup_put_format(p->html, "class", "desks %s", view_class(area->section));
    markup_put(p->html, "d", buffer_text(&path));
    markup_close_void(p->html);
    buffer_let_go(p->html, &path);
}

/* The players under the name; of those behind the others beside it, where the ring is narrow. */
static void name_area(const Picture *p, const Area *area)
{
    char class[40], number[NUMBER_TEXT];
    const char *name = words_section_short(p->language, area->section);
    double radius = (area->inner + area->outer) / 2 * p->scale, angle = (area->from + area->to) / 2;
    double x = at_x(p, radius, angle), y = at_y(p, radius, angle);
    bool counts = p->size == STAGE_WHOLE;
    snprintf(class, sizeof class, "who %s", view_class(area->section));
    markup_open_class(p->html, "text", class);
    markup_put_number(p->html, "x", x, 1);
    markup_put_number(p->html, "y", y + (counts && !area->behind ? 0 : 6), 1);
    markup_words(p->html, name);
    number_text(area->players, 0, number);
    if (counts && area->behind) {
        markup_words(p->html, " ");
        markup_element(p->html, "tspan", "many", number);
    }
    markup_close(p->html);
    snprintf(class, sizeof class, "many %s", view_class(area->section));
    if (counts && !area->behind)
        markup_label(p->html, class, x, y + 17, number);
}

static int winds_of(const SectionMap *map, spz_family out[3])
{
    static const spz_family rows[] = {SPZ_FAMILY_WOODWIND, SPZ_FAMILY_BRASS, SPZ_FAMILY_PERCUSSION};
    int count = 0;
    for (int row = 0; map && row < 3; row++)
        for (size_t i = 0; i < map->line_count; i++)
            if (map->lines[i].family == rows[row] && !map->lines[i].left_out) {
                out[count++] = rows[row];
                break;
            }
    return count;
}

static void draw_winds(const Picture *p, const spz_family *rows, int count)
{
    double inner = fmax(p->back, p->outer) * p->scale + 2 * wind_gap;
    for (int i = 0; i < count; i++, inner += wind_depth + wind_gap) {
        double half = 95 / inner, middle = inner + wind_depth / 2;
        draw_ring(p, "winds-area", pi / 2 - half, pi / 2 + half, inner, inner + wind_depth);
        markup_label(p->html, "quiet", p->x, p->y - middle + 4, words_family(p->language, rows[i]));
    }
}

static void draw_podium(const Picture *p)
{
    double half = p->size == STAGE_WHOLE ? 16 : 12;
    if (spz_plan_is_single(p->plan))
        return;
    if (p->size == STAGE_GLYPH)
        markup_box(p->html, "podium", width / 2 - 24, p->y - 40, 48, 48);
    else
        markup_box(p->html, "podium", p->x - half, p->y - half + 4, 2 * half, 2 * half);
    if (p->size == STAGE_WHOLE)
        markup_label(p->html, "quiet", p->x, p->y + 36, phrase_text(p->language, PHRASE_STAGE_PODIUM));
}

static void draw_audience(const Picture *p)
{
    Markup *html = p->html;
    double edge = p->y + 58;
    bool whole = p->size == STAGE_WHOLE;
    markup_line(html, "apron", 0, whole ? edge : p->y + 36, width, whole ? edge : p->y + 36);
    if (!whole)
        return;
    markup_label(html, "quiet", p->x, edge + 16, phrase_text(p->language, PHRASE_STAGE_AUDIENCE));
    for (int row = 0; row < 2; row++) {
        markup_open_class(html, "path", "rows");
        markup_put_format(html, "d", "M16 %dQ250 %d 484 %d", (int)edge + 18 + 20 * row, (int)edge + 41 + 20 * row, (int)edge + 18 + 20 * row);
        markup_close_void(html);
    }
}

/* The half circle as large as the sheet allows: its width, and the height of what stands behind it. */
static double measure(Picture *p, int wind_rows)
{
    double behind = wind_rows * (wind_depth + wind_gap) + (wind_rows ? wind_gap : 0), back = fmax(p->back, p->outer);
    p->x = width / 2;
    if (p->size == STAGE_GLYPH) {
        p->scale = width / 2 / p->outer;
        p->y = width / 2;
        return p->y + 40;
    }
    p->scale = fmin(string_radius / p->outer, (whole_radius - behind) / back);
    p->scale = fmin(p->scale, (width / 2 - side_air) / p->outer);
    for (size_t i = 0; i < p->count; i++) { /* basses that stand behind and to the side */
        double reach = p->areas[i].behind ? p->areas[i].outer * fmax(fabs(cos(p->areas[i].from)), fabs(cos(p->areas[i].to))) : 0;
        p->scale = reach > 0 ? fmin(p->scale, (width / 2 - side_air - wind_gap) / reach) : p->scale;
    }
    p->y = back * p->scale + behind + side_air;
    return p->y + (p->size == STAGE_WHOLE ? below : little_below);
}

/* Whether an area beside another is too narrow for a name in large letters. */
static bool is_narrow(const Picture *p)
{
    static const double name = 74; /* units: the longest in large letters, with air */
    bool narrow = p->count > 7;
    for (size_t i = 0; i < p->count; i++)
        narrow = narrow || (!p->areas[i].behind && (p->areas[i].to - p->areas[i].from) * (p->inner + p->outer) / 2 * p->scale < name);
    return narrow && p->size != STAGE_GLYPH;
}

static void open_picture(const Picture *p, double height)
{
    static const char *const classes[] = {"stage", "stage little", "glyph"};
    Buffer words = {0}, order = {0};
    say_order(&order, p->language, spz_plan_order(p->plan));
    SAY(&words, p->language, PHRASE_STAGE_PICTURE, slot_text("arrangement", words_arrangement(p->language, spz_plan_arrangement(p->plan))), slot_text("order", order.text));
    markup_open_drawing(p->html, is_narrow(p) ? "stage narrow" : classes[p->size], width, height, buffer_text(&words));
    buffers_let_go(p->html, &words, &order);
}

void stage_picture(Markup *html, spz_language language, const spz_plan *plan, const SectionMap *map, StageSize size)
{
    Picture p = {.html = html, .language = language, .plan = plan, .map = map, .size = size};
    spz_family rows[3];
    int wind_rows = size == STAGE_WHOLE ? winds_of(map, rows) : 0;
    gather(&p);
    share_out(&p);
    open_picture(&p, measure(&p, wind_rows));
    for (size_t i = 0; i < p.count; i++)
        if (size != STAGE_GLYPH || !p.areas[i].behind)
            draw_area(&p, &p.areas[i]);
    draw_winds(&p, rows, wind_rows);
    for (size_t i = 0; i < p.count && size == STAGE_WHOLE; i++)
        draw_desks(&p, &p.areas[i]);
    if (size != STAGE_GLYPH)
        draw_audience(&p);
    draw_podium(&p);
    for (size_t i = 0; i < p.count && size != STAGE_GLYPH; i++)
        name_area(&p, &p.areas[i]);
    markup_close_line(html);
}

static const Area *find_area(const Picture *p, const Area *like)
{
    for (size_t i = 0; i < p->count; i++)
        if (p->areas[i].section == like->section && p->areas[i].orchestra == like->orchestra)
            return &p->areas[i];
    return NULL;
}

/* Clear of the names, which stand in the middle of their areas: the ways run nearer to the podium or to the back, by turns, and lead from the side of the
 * old area that lies toward the new one into the near part of that. Of those behind, whose ring is narrow, from edge to edge. */
typedef struct Way {
    double start, end, inner, outer; /* radians; units from the podium */
} Way;

static Way way_between(const Picture *p, const Area *from, const Area *to, int number)
{
    static const double depths[] = {0.2, 0.82, 0.34, 0.68};
    bool behind = from->behind && to->behind;
    double depth = behind ? 0.5 : depths[number % 4], toward = to->from + to->to > from->from + from->to ? 1 : -1;
    double middle = (from->from + from->to) / 2, half = (from->to - from->from) / 2, goal = (to->from + to->to) / 2, goal_half = (to->to - to->from) / 2;
    return (Way){.start = middle + toward * half * (behind ? 0.75 : 0.1), .end = goal - toward * goal_half * (behind ? 0.8 : 0.1),
                 .inner = (from->inner + (from->outer - from->inner) * depth) * p->scale, .outer = (to->inner + (to->outer - to->inner) * depth) * p->scale};
}

static void draw_way(const Picture *p, const Area *from, const Area *to, int number)
{
    enum { STEPS = 14 };
    Buffer path = {0};
    char x[NUMBER_TEXT], y[NUMBER_TEXT];
    Way way = way_between(p, from, to, number);
    double start = way.start, end = way.end, inner = way.inner, outer = way.outer;
    for (int i = 0; i <= STEPS; i++) {
        double share = (double)i / STEPS, angle = start + (end - start) * share, radius = inner + (outer - inner) * share;
        buffer_printf(&path, "%s%s %s", i ? "L" : "M", number_text_short(at_x(p, radius, angle), 1, x), number_text_short(at_y(p, radius, angle), 1, y));
    }
    double turn = end > start ? -1 : 1, tip = end + turn * 2 / outer, back = end + turn * 16 / outer;
    markup_open_class(p->html, "circle", "way-head");
    markup_put_number(p->html, "cx", at_x(p, inner, start), 1);
    markup_put_number(p->html, "cy", at_y(p, inner, start), 1);
    markup_put_number(p->html, "r", 6, 0);
    markup_close_void(p->html);
    const char *const classes[] = {"way-halo", "way"};
    for (int i = 0; i < 2; i++) {
        markup_open_class(p->html, "path", classes[i]);
        markup_put(p->html, "d", buffer_text(&path));
        markup_close_void(p->html);
    }
    char n[6][NUMBER_TEXT];
    const double at[6] = {at_x(p, outer, tip), at_y(p, outer, tip), at_x(p, outer + 8, back), at_y(p, outer + 8, back), at_x(p, outer - 8, back), at_y(p, outer - 8, back)};
    for (int i = 0; i < 6; i++)
        number_text_short(at[i], 1, n[i]);
    markup_open_class(p->html, "path", "way-head");
    markup_put_format(p->html, "d", "M%s %sL%s %sL%s %sz", n[0], n[1], n[2], n[3], n[4], n[5]);
    markup_close_void(p->html);
    buffer_let_go(p->html, &path);
}

/* Both stages of a change have one scale and one height. */
static double measure_both(Picture *p, Picture *other)
{
    measure(other, 0);
    measure(p, 0);
    p->scale = fmin(p->scale, other->scale);
    p->y = fmax(fmax(p->back, p->outer), fmax(other->back, other->outer)) * p->scale + side_air;
    return p->y + little_below;
}

void stage_picture_change(Markup *html, spz_language language, const spz_plan *before, const spz_plan *later, unsigned moved, bool after)
{
    Picture p = {.html = html, .language = language, .plan = after ? later : before, .size = STAGE_LITTLE};
    Picture other = {.html = html, .language = language, .plan = after ? before : later, .size = STAGE_LITTLE};
    int ways = 0;
    gather(&p);
    share_out(&p);
    gather(&other);
    share_out(&other);
    open_picture(&p, measure_both(&p, &other));
    for (size_t i = 0; i < p.count; i++) {
        markup_open_class(html, "g", after && (moved >> p.areas[i].section & 1u) ? "moved" : "kept");
        draw_area(&p, &p.areas[i]);
        markup_close(html);
    }
    draw_audience(&p);
    draw_podium(&p);
    for (size_t i = 0; i < p.count && !after; i++) {
        const Area *to = find_area(&other, &p.areas[i]);
        if (!to || !(moved >> p.areas[i].section & 1u))
            continue;
        bool behind = p.areas[i].behind && to->behind;
        draw_way(&p, &p.areas[i], to, ways);
        ways += !behind;
    }
    for (size_t i = 0; i < p.count; i++)
        name_area(&p, &p.areas[i]);
    markup_close_line(html);
}

spz_plan *stage_plan_of(const spz_settings *settings, const spz_verdict *verdict, size_t place)
{
    spz_plan *plan = NULL;
    const char *name = spz_verdict_ranked(verdict, place)->name;
    if (spz_verdict_plan(verdict, settings, name, NULL, &plan) != SPZ_OK)
        spz_verdict_plan(verdict, NULL, name, NULL, &plan);
    return plan;
}
