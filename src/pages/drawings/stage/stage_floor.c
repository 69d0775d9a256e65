/* What is on the stage besides the desks: a grid of metres from the podium, risers to scale, ways, winds and percussion, soloists and piano. */
#include "pages/drawings/stage/stage_drawing.h"
#include "support/numbers.h"
#include "wording/seatings/laying_words.h"
#include <math.h>
#include <stdio.h>

static const double degree = 3.14159265358979323846 / 180;
static const double player_type = 8, piano_wide = 2.75, piano_deep = 1.58; /* units; metres */

/* A line each metre, its number at the edge; the lines through the podium are stronger. */
static void draw_grid(Drawing *d)
{
    char number[NUMBER_TEXT];
    double half = spz_plan_stage_width(d->plan) / 2, front = spz_plan_front(d->plan), top = d->deep - front;
    for (int x = (int)ceil(-half); x <= half; x++) {
        stage_line(d, stage_across(d, x), stage_down(d, top), stage_across(d, x), stage_down(d, -front), x ? "grid" : "axis");
        stage_words(d, stage_across(d, x), stage_down(d, -front) + 12, "number", number_text(x, 0, number));
    }
    for (int y = (int)ceil(-front); y <= top; y++) {
        stage_line(d, stage_across(d, -half), stage_down(d, y), stage_across(d, half), stage_down(d, y), y ? "grid" : "axis");
        stage_words(d, stage_across(d, -half) - 12, stage_down(d, y) + 3, "number", number_text(y, 0, number));
    }
}

/* The outline of an arc's riser, end to end. */
static void outline_arc(Drawing *d, const spz_riser *riser)
{
    double from = riser->from * degree, to = riser->to * degree;
    char n[8][NUMBER_TEXT];
    const double at[8] = {stage_across(d, riser->front * sin(from)), stage_down(d, riser->front * cos(from)), stage_across(d, riser->front * sin(to)),
                          stage_down(d, riser->front * cos(to)), stage_across(d, riser->back * sin(to)), stage_down(d, riser->back * cos(to)),
                          stage_across(d, riser->back * sin(from)), stage_down(d, riser->back * cos(from))};
    char inner[NUMBER_TEXT], outer[NUMBER_TEXT];
    for (int i = 0; i < 8; i++)
        number_text(at[i], 1, n[i]);
    number_text(riser->front * d->scale, 1, inner);
    number_text(riser->back * d->scale, 1, outer);
    markup_line_end(&d->html);
    markup_open_class(&d->html, "path", "riser");
    markup_put_format(&d->html, "d", "M%s %s A%s %s 0 0 1 %s %s L%s %s A%s %s 0 0 0 %s %s Z", n[0], n[1], inner, inner, n[2], n[3], n[4], n[5], outer, outer,
                    n[6], n[7]);
    markup_close_void(&d->html);
}

static void draw_risers(Drawing *d)
{
    for (size_t i = 0; i < spz_laying_risers(d->laying); i++) {
        const spz_riser *riser = spz_laying_riser(d->laying, i);
        if (riser->straight)
            stage_box(d, stage_across(d, riser->from), stage_down(d, riser->back), (riser->to - riser->from) * d->scale,
                      (riser->back - riser->front) * d->scale, "riser");
        else
            outline_arc(d, riser);
    }
}

/* Heights stand at the house left end of each riser, when all else is drawn. */
static void name_risers(Drawing *d)
{
    Buffer text = {0};
    for (size_t i = 0; i < spz_laying_risers(d->laying); i++) {
        const spz_riser *riser = spz_laying_riser(d->laying, i);
        double middle = (riser->front + riser->back) / 2, x = riser->straight ? riser->from - 0.1 : middle * sin(riser->from * degree),
               y = riser->straight ? middle : middle * cos(riser->from * degree) - 0.25;
        buffer_clear(&text);
        say_riser_height(&text, d->language, riser);
        stage_words(d, stage_across(d, x), stage_down(d, y) + 3, "height", buffer_text(&text));
    }
    buffer_let_go(d, &text);
}

/* Along its middle line, so far to the right of it. */
static void draw_way(Drawing *d, const spz_way *way, double aside)
{
    double length = hypot(way->back.x - way->front.x, way->back.y - way->front.y);
    double x = aside * (way->back.y - way->front.y) / length, y = -aside * (way->back.x - way->front.x) / length;
    stage_line(d, stage_across(d, way->front.x + x), stage_down(d, way->front.y + y), stage_across(d, way->back.x + x), stage_down(d, way->back.y + y), "aisle");
}

/* The clear way between two sections, from the front desks to the last row; where an aisle is asked for, its two sides. */
static void draw_ways(Drawing *d)
{
    spz_way way;
    double side = spz_plan_aisle(d->plan) / 2;
    for (size_t i = 0; spz_laying_way(d->laying, i, &way); i++) {
        draw_way(d, &way, side);
        if (side > 0)
            draw_way(d, &way, -side);
    }
}

void stage_floor(Drawing *d)
{
    double width = spz_plan_stage_width(d->plan), depth = d->deep, edge = TOP + depth * d->scale, below = d->laying ? 2 * LINE : LINE;
    stage_box(d, d->left, TOP, width * d->scale, depth * d->scale, "floor");
    if (d->laying) {
        draw_grid(d);
        draw_risers(d);
        draw_ways(d);
    }
    stage_line(d, d->left, edge, d->left + width * d->scale, edge, "edge");
    stage_words(d, d->left, edge + below, "plain", phrase_text(d->language, PHRASE_STAGE_HOUSE_LEFT));
    stage_words(d, stage_across(d, 0), edge + below, "middle", phrase_text(d->language, PHRASE_STAGE_AUDIENCE));
    stage_words(d, d->left + width * d->scale, edge + below, "end", phrase_text(d->language, PHRASE_STAGE_HOUSE_RIGHT));
    if (spz_plan_is_single(d->plan))
        return;
    stage_box(d, stage_across(d, -0.5), stage_down(d, 0.5), d->scale, d->scale, "podium");
    stage_words(d, stage_across(d, 0), stage_down(d, 0) + 4, "number", phrase_text(d->language, PHRASE_STAGE_PODIUM));
}

static void draw_player(Drawing *d, const spz_laid *laid)
{
    const spz_spot *seat = &laid->seats[0];
    char label[40];
    double x = stage_across(d, seat->x), y = stage_down(d, seat->y), half = 0.22 * d->scale;
    if (laid->kind == SPZ_LAID_SOLOIST)
        snprintf(label, sizeof label, "%s", words_soloist_mark(d->language));
    else
        snprintf(label, sizeof label, "%s %d", words_instrument_mark(d->language, laid->instrument), laid->number);
    stage_circle(d, x, y, 0.21 * d->scale, laid->kind == SPZ_LAID_SOLOIST ? "seat solo" : "seat", laid->kind == SPZ_LAID_SOLOIST ? stage_fill(laid->section) : "#e4e4e0");
    stage_take(d, box_around(x, y, 2 * half, 2 * half));
    if (laid->stands)
        stage_line(d, stage_across(d, laid->stand.x) - half, stage_down(d, laid->stand.y), stage_across(d, laid->stand.x) + half, stage_down(d, laid->stand.y), "stand");
    stage_words(d, x, y - half - 3, "player", label);
    stage_take(d, box_of_words(label, x, y - half - 3, player_type, false));
}

static void draw_piano(Drawing *d, const spz_laid *laid)
{
    double wide = piano_wide * d->scale, deep = piano_deep * d->scale, x = stage_across(d, laid->x), y = stage_down(d, laid->y);
    stage_box(d, x - wide / 2, y - deep / 2, wide, deep, "piano");
    stage_words(d, x, y + 4, "number", words_laid(d->language, laid));
    stage_circle(d, stage_across(d, laid->seats[0].x), stage_down(d, laid->seats[0].y), 0.21 * d->scale, "seat", "#e4e4e0");
    stage_take(d, box_around(x, y, wide, deep));
}

void stage_others(Drawing *d)
{
    for (size_t i = 0; i < spz_laying_count(d->laying); i++) {
        const spz_laid *laid = spz_laying_at(d->laying, i);
        if (laid->kind == SPZ_LAID_PLAYER || laid->kind == SPZ_LAID_SOLOIST)
            draw_player(d, laid);
        else if (laid->kind == SPZ_LAID_PIANO)
            draw_piano(d, laid);
    }
    name_risers(d);
}
