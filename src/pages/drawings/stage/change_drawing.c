#include "pages/drawings/stage/change_drawing.h"
#include "pages/drawings/score_view.h"
#include "wording/seatings/stage_words.h"
#include <math.h>
#include <stdio.h>

static const double most_wide = 440, most_scale = 34, margin = 4, half_desk = 0.5; /* units; units a metre; metres */

typedef struct ChangeDrawing {
    Markup *html;
    spz_language language;
    const spz_changeover *change;
    double scale, half_width, deep; /* units a metre; metres to either side of the podium and behind it that are drawn */
} ChangeDrawing;

static double across(const ChangeDrawing *d, double x)
{
    return margin + (d->half_width + x) * d->scale;
}

static double down(const ChangeDrawing *d, double y)
{
    return margin + (d->deep - y) * d->scale;
}

static void draw_desk(const ChangeDrawing *d, spz_section section, int number, double x, double y, const char *fate)
{
    char name[24], class[40];
    double half = half_desk * d->scale;
    snprintf(class, sizeof class, "desk %s %s", fate, view_class(section));
    markup_line_end(d->html);
    markup_box(d->html, class, across(d, x) - 1.15 * half, down(d, y) - 0.7 * half, 2.3 * half, 1.4 * half);
    snprintf(name, sizeof name, "%s.%d", words_desk_mark(d->language, section), number);
    snprintf(class, sizeof class, "desk-name %s %s", fate, view_class(section));
    markup_label(d->html, class, across(d, x), down(d, y) + 4, name);
}

/* A desk that goes no farther than its own width has no arrow: the table says where to. */
static bool goes(const spz_desk_move *move)
{
    return move->fate == SPZ_DESK_MOVED && hypot(move->x - move->from_x, move->y - move->from_y) > 2 * half_desk;
}

/* The line lies under the desks, so that it crosses out no name; the tip stands before the place that it leads to, over what stands there now. */
static void draw_way(const ChangeDrawing *d, const spz_desk_move *move, bool tip)
{
    double x = move->x - move->from_x, y = move->y - move->from_y, way = hypot(x, y), cut = half_desk / way;
    double tip_x = across(d, move->x - cut * x), tip_y = down(d, move->y - cut * y), size = 8 / (way * d->scale);
    double back_x = -x * d->scale * size, back_y = y * d->scale * size;
    if (!tip) {
        markup_line_end(d->html);
        markup_line(d->html, "desk-way", across(d, move->from_x), down(d, move->from_y), tip_x, tip_y);
        return;
    }
    markup_open_class(d->html, "path", "desk-tip");
    markup_put_format(d->html, "d", "M%.1f %.1fL%.1f %.1fL%.1f %.1fZ", tip_x, tip_y, tip_x + back_x - back_y * 0.4, tip_y + back_y + back_x * 0.4,
                      tip_x + back_x + back_y * 0.4, tip_y + back_y - back_x * 0.4);
    markup_close_void(d->html);
}

static void draw_ways(const ChangeDrawing *d, bool tips)
{
    for (int i = 0; i < d->change->desks; i++)
        if (goes(&d->change->desk_moves[i]))
            draw_way(d, &d->change->desk_moves[i], tips);
}

static void draw_before(const ChangeDrawing *d)
{
    const spz_changeover *change = d->change;
    draw_ways(d, false);
    for (int i = 0; i < change->desks; i++) {
        const spz_desk_move *move = &change->desk_moves[i];
        if (move->fate != SPZ_DESK_CARRIED_ON)
            draw_desk(d, move->from_section, move->from_number, move->from_x, move->from_y, move->stays ? "stays" : "moves");
    }
    for (size_t i = 0; i < change->struck_count; i++)
        if (change->struck[i].stands)
            draw_desk(d, change->struck[i].section, change->struck[i].number, change->struck[i].from_x, change->struck[i].from_y, "struck");
    draw_ways(d, true);
}

static void draw_after(const ChangeDrawing *d)
{
    static const char *const fates[] = {"stays", "moves", "new", "struck"};
    for (int i = 0; i < d->change->desks; i++) {
        const spz_desk_move *move = &d->change->desk_moves[i];
        draw_desk(d, move->section, move->number, move->x, move->y, fates[move->fate]);
    }
}

/* As much of the stage as holds a desk before or after. */
static void measure(ChangeDrawing *d)
{
    const spz_changeover *change = d->change;
    for (size_t i = 0; i < (size_t)change->desks + change->struck_count; i++) {
        const spz_desk_move *move = i < (size_t)change->desks ? &change->desk_moves[i] : &change->struck[i - (size_t)change->desks];
        d->half_width = fmax(d->half_width, fmax(fabs(move->x), fabs(move->from_x)) + 1);
        d->deep = fmax(d->deep, fmax(move->y, move->from_y) + 1);
    }
    d->scale = fmin(most_wide / (2 * d->half_width), most_scale);
}

void change_drawing(Markup *html, spz_language language, const spz_changeover *change, bool after)
{
    ChangeDrawing d = {.html = html, .language = language, .change = change, .half_width = 1, .deep = 1};
    measure(&d);
    double width = 2 * d.half_width * d.scale, height = (d.deep + change->stage_front) * d.scale;
    markup_open_drawing(html, "change-stage", width + 2 * margin, height + 2 * margin,
                      phrase_text(language, after ? PHRASE_CHANGE_IMAGE_AFTER : PHRASE_CHANGE_IMAGE_BEFORE));
    markup_line(html, "apron", margin, margin + height, margin + width, margin + height);
    markup_box(html, "podium", across(&d, -0.5), down(&d, 0.5), d.scale, d.scale);
    if (after)
        draw_after(&d);
    else
        draw_before(&d);
    markup_line_end(html);
    markup_close(html);
}
