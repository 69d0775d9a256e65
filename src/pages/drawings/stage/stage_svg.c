/* The stage as the audience sees it on paper: podium and audience below, house left at the left. One metre is `scale` units. */
#include "pages/drawings/stage/stage_svg.h"
#include "writing/document.h"
#include "writing/markup.h"
#include "support/numbers.h"
#include "pages/own_texts.h"
#include "pages/growing_report.h"
#include "pages/drawings/stage/stage_drawing.h"
#include "sections/section_map.h"
#include "wording/seatings/seating_words.h"
#include "seating/stage/furniture.h"
#include "wording/seatings/laying_words.h"
#include "wording/seatings/stage_words.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

/* Sizes of the sheet in units of the drawing. */
enum { SHEET_LEAST = 860, LETTERS_A_LINE = 150 };
static const double most_stage = 840, most_scale = 60; /* units; units a metre */
static const double number_behind = 0.5; /* metres */
static const double number_type = 9, name_type = 14, told_type = 12, end_radius = 4, above_way = 10; /* units */
static const double letter_width = 0.53; /* of the size of the type, of a sentence on average */

static void take_desk(Drawing *d, const spz_stage_desk *desk)
{
    Furniture f = furniture_of(d->plan, desk);
    double size = 2 * stage_seat(desk->section) * d->scale;
    for (int player = 0; player < desk->players; player++)
        stage_take(d, box_around(stage_across(d, f.seats[player].x), stage_down(d, f.seats[player].y), size, size));
    double x[2] = {stage_across(d, f.ends[0].x), stage_across(d, f.ends[1].x)}, y[2] = {stage_down(d, f.ends[0].y), stage_down(d, f.ends[1].y)};
    stage_take(d, (Box){fmin(x[0], x[1]), fmin(y[0], y[1]), fmax(x[0], x[1]), fmax(y[0], y[1])});
}

/* Behind the desk, as near as there is room. */
static void number_desk(Drawing *d, const spz_stage_desk *desk, const Furniture *f)
{
    char number[NUMBER_TEXT];
    double x = 0, y = 0, least = HUGE_VAL;
    number_text(desk->number, 0, number);
    for (int step = 0; step < 5 && least > 0; step++) {
        double behind = number_behind + 0.1 * step, at_x = stage_across(d, desk->x - f->inward.x * behind),
               at_y = stage_down(d, desk->y - f->inward.y * behind) + 3;
        double covered = label_space_covered(&d->room, box_of_words(number, at_x, at_y, number_type, false));
        if (covered < least) {
            least = covered;
            x = at_x;
            y = at_y;
        }
    }
    stage_words(d, x, y, "number", number);
    stage_take(d, box_of_words(number, x, y, number_type, false));
}

static void draw_desk(Drawing *d, const spz_stage_desk *desk)
{
    Furniture f = furniture_of(d->plan, desk);
    markup_line_end(&d->html);
    markup_open(&d->html, "g");
    for (int player = 0; player < desk->players; player++)
        stage_circle(d, stage_across(d, f.seats[player].x), stage_down(d, f.seats[player].y), stage_seat(desk->section) * d->scale, "seat", stage_fill(desk->section));
    stage_line(d, stage_across(d, f.ends[0].x), stage_down(d, f.ends[0].y), stage_across(d, f.ends[1].x), stage_down(d, f.ends[1].y), "stand");
    number_desk(d, desk, &f);
    markup_line_end(&d->html);
    markup_close(&d->html);
}

typedef struct Middle {
    double x, y; /* weighted by players */
} Middle;

/* `orchestra` 0 or 1: the only or the first one. */
static bool find_middle(const spz_plan *plan, spz_section section, int orchestra, Middle *middle)
{
    double weight = 0;
    *middle = (Middle){0, 0};
    for (size_t i = 0; i < spz_plan_desks(plan); i++) {
        const spz_stage_desk *desk = spz_plan_desk(plan, i);
        if ((desk->orchestra == 2) != (orchestra == 2))
            continue;
        bool violins = section_is_violin(desk->section);
        if (desk->section != section && !(section == SPZ_VIOLINS && violins) && !(section == SPZ_STRINGS && !violins))
            continue;
        middle->x += desk->x * desk->players;
        middle->y += desk->y * desk->players;
        weight += desk->players;
    }
    if (weight > 0) {
        middle->x /= weight;
        middle->y /= weight;
    }
    return weight > 0;
}

/* Whether the desk nearest to the place is one of the section: a name must not stand among the others. */
static bool is_among(const Drawing *d, spz_section section, double x, double y)
{
    double nearest = HUGE_VAL;
    bool own = false;
    for (size_t i = 0; i < spz_plan_desks(d->plan); i++) {
        const spz_stage_desk *desk = spz_plan_desk(d->plan, i);
        double away = hypot(stage_across(d, desk->x) - x, stage_down(d, desk->y) - y);
        if (away < nearest) {
            nearest = away;
            own = desk->section == section;
        }
    }
    return own;
}

static bool is_on_stage(const Drawing *d, Box box)
{
    double width = spz_plan_stage_width(d->plan) * d->scale, depth = d->deep * d->scale;
    return box.left >= d->left && box.right <= d->left + width && box.top >= TOP && box.bottom <= TOP + depth;
}

/* As near to the section's middle as there is room. */
static void name_section(Drawing *d, spz_section section, int orchestra)
{
    enum { RINGS = 20, SPOKES = 32 };
    Middle middle;
    if (!find_middle(d->plan, section, orchestra, &middle))
        return;
    const char *name = words_section_short(d->language, section);
    double x = stage_across(d, middle.x), y = stage_down(d, middle.y) + 5, least = HUGE_VAL;
    for (int spot = 0; spot < RINGS * SPOKES; spot++) {
        int ring = spot / SPOKES;
        double turn = 6.283185307179586 * (spot % SPOKES) / SPOKES, away = 6.0 * ring;
        double at_x = stage_across(d, middle.x) + away * cos(turn), at_y = stage_down(d, middle.y) + 5 + away * sin(turn);
        Box box = box_of_words(name, at_x, at_y, name_type, true);
        double cost = 40 * label_space_covered(&d->room, box) + away;
        if (!is_among(d, section, at_x, at_y - 5) || !is_on_stage(d, box))
            cost += 1000;
        if (cost < least) {
            least = cost;
            x = at_x;
            y = at_y;
        }
    }
    stage_words(d, x, y, "section", name);
    stage_take(d, box_of_words(name, x, y, name_type, true));
}

/* Both ends of the way between two sections; false where one of them isn't there. */
static bool find_ends(const Drawing *d, const spz_section pair[2], Middle *from, Middle *to)
{
    return find_middle(d->plan, pair[0], 1, from) && find_middle(d->plan, pair[1], pair[0] == pair[1] ? 2 : 1, to);
}

static void draw_way(Drawing *d, const spz_section pair[2], size_t index)
{
    Middle end[2];
    if (!find_ends(d, pair, &end[0], &end[1]))
        return;
    stage_line(d, stage_across(d, end[0].x), stage_down(d, end[0].y), stage_across(d, end[1].x), stage_down(d, end[1].y), index ? "way1" : "way0");
    for (int i = 0; i < 2; i++) {
        stage_circle(d, stage_across(d, end[i].x), stage_down(d, end[i].y), end_radius, index ? "end1" : "end0", NULL);
        stage_take(d, box_around(stage_across(d, end[i].x), stage_down(d, end[i].y), 2 * end_radius, 2 * end_radius));
    }
}

/* Metres and milliseconds beside the way, near its middle, where there is room. */
static void tell_way(Drawing *d, const spz_section pair[2], size_t index)
{
    enum { PLACES = 15, HEIGHTS = 21, SIDES = 9 }; /* along the way, above and below it, left and right of it */
    Middle from, to;
    spz_distance way;
    Buffer text = {0};
    if (!spz_plan_distance(d->plan, pair[0], pair[1], &way) || !find_ends(d, pair, &from, &to))
        return;
    say_stage_way(&text, d->language, &way);
    const char *label = buffer_text(&text);
    double x = 0, y = 0, least = HUGE_VAL, long_x = stage_across(d, to.x) - stage_across(d, from.x), long_y = stage_down(d, to.y) - stage_down(d, from.y);
    for (int spot = 0; spot < PLACES * HEIGHTS * SIDES; spot++) {
        double at = (0.5 + spot / (HEIGHTS * SIDES)) / PLACES, up = 4.0 * (spot / SIDES % HEIGHTS - HEIGHTS / 2),
               aside = 16.0 * (spot % SIDES - SIDES / 2);
        double at_x = stage_across(d, from.x) + at * long_x + aside, at_y = stage_down(d, from.y) + at * long_y + 4 + up;
        Box box = box_of_words(label, at_x, at_y, told_type, true);
        double cost = 40 * label_space_covered(&d->room, box) + fabs(at - 0.5) * hypot(long_x, long_y) + 2 * fabs(up + above_way) +
                      fabs(aside);
        if (cost < least && is_on_stage(d, box)) {
            least = cost;
            x = at_x;
            y = at_y;
        }
    }
    if (least < HUGE_VAL) {
        stage_words(d, x, y, index ? "told told1" : "told told0", label);
        stage_take(d, box_of_words(label, x, y, told_type, true));
    }
    buffer_let_go(d, &text);
}

static double scale_bar(Drawing *d, double y)
{
    char number[NUMBER_TEXT];
    for (int metre = 0; metre <= 5; metre++) {
        double x = d->left + metre * d->scale;
        stage_line(d, x, y - 5, x, y, "bar");
        stage_words(d, x, y + 12, "number", number_text(metre, 0, number));
    }
    stage_line(d, d->left, y, d->left + 5 * d->scale, y, "bar");
    stage_words(d, d->left + 5 * d->scale + 14, y + 4, "plain", phrase_text(d->language, PHRASE_STAGE_SCALE));
    return y + 2 * LINE;
}

/* Bytes of the next line: at most `letters` letters, broken at a blank. */
static size_t line_length(const char *text, size_t letters)
{
    size_t at = 0, blank = 0;
    for (size_t count = 0; text[at]; at++) {
        bool begins = ((unsigned char)text[at] & 0xC0) != 0x80; /* a letter of UTF-8 */
        if (begins && count++ == letters && (blank || text[at] == ' '))
            return text[at] == ' ' ? at : blank;
        if (text[at] == ' ')
            blank = at;
    }
    return at;
}

/* Lines of at most `letters` from `x`, `y` on; returns where the next line would stand. */
static double paragraph(Drawing *d, double x, double y, const char *class, const char *text, size_t letters)
{
    while (*text) {
        char piece[4 * LETTERS_A_LINE + 1];
        size_t length = line_length(text, letters);
        snprintf(piece, sizeof piece, "%.*s", (int)length, text);
        stage_words(d, x, y, class, piece);
        y += LINE;
        text += length;
        text += *text == ' ';
    }
    return y;
}

/* What is told of a pair below the stage: two sentences, and how many of their letters go into a line. */
enum { TELLINGS = 2, TOLD_AT = 34 };
static const struct Telling {
    void (*say)(Buffer *out, spz_language language, const spz_plan *plan, const spz_section pair[2]);
    const char *class;
    double type;
} tellings[TELLINGS] = {{say_stage_distance, "plain", 12}, {say_stage_hearing, "small", 10}};

static size_t letters_from(const Drawing *d, double x, double type)
{
    double room = (d->width - x - (double)MARGIN / 2) / (type * letter_width);
    return room < LETTERS_A_LINE ? (size_t)room : LETTERS_A_LINE;
}

static size_t letters_in_line(const Drawing *d, const struct Telling *telling)
{
    return letters_from(d, d->left + TOLD_AT, telling->type);
}

static double facts(Drawing *d, StagePairs pairs, size_t count, double y)
{
    Buffer text = {0};
    for (size_t i = 0; i < count * TELLINGS; i++) {
        const struct Telling *telling = &tellings[i % TELLINGS];
        telling->say(&text, d->language, d->plan, pairs[i / TELLINGS]);
        if (text.length && i % TELLINGS == 0)
            stage_line(d, d->left, y - 4, d->left + 26, y - 4, i / TELLINGS ? "way1" : "way0");
        if (text.length)
            y = paragraph(d, d->left + TOLD_AT, y, telling->class, text.text, letters_in_line(d, telling)) + (i % TELLINGS ? 4 : 0);
        buffer_clear(&text);
    }
    buffer_let_go(d, &text);
    return y;
}

/* Lines that the tellings take beyond one for each. */
static double further_lines(Drawing *d, StagePairs pairs, size_t count)
{
    Buffer text = {0};
    double lines = 0;
    for (size_t i = 0; i < count * TELLINGS; i++) {
        const struct Telling *telling = &tellings[i % TELLINGS];
        telling->say(&text, d->language, d->plan, pairs[i / TELLINGS]);
        for (const char *at = buffer_text(&text); *at;) {
            at += line_length(at, letters_in_line(d, telling));
            lines += *at == ' ';
            at += *at == ' ';
        }
        buffer_clear(&text);
    }
    buffer_let_go(d, &text);
    return lines;
}

/* The least stage that would do, and what gave way on this one. */
static double room(Drawing *d, double y)
{
    Buffer text = {0};
    say_stage_room(&text, d->language, d->plan);
    y = paragraph(d, d->left, y + 4, "plain", buffer_text(&text), letters_from(d, d->left, 12));
    buffer_let_go(d, &text);
    return y;
}

/* What is to be carried in, and the ways between the sections. */
static double tell_laying(Drawing *d, double y)
{
    Buffer text = {0};
    say_laid_sums(&text, d->language, d->laying);
    buffer_puts(&text, " ");
    say_laid_ways(&text, d->language, d->laying);
    y = paragraph(d, d->left, y + 4, "plain", buffer_text(&text), letters_from(d, d->left, 12));
    buffer_let_go(d, &text);
    return y;
}

/* An element that is no drawing: a text, or the styles. */
static void about(Markup *html, const char *element, const char *text)
{
    markup_line_end(html);
    markup_open(html, element);
    if (text)
        markup_words(html, text);
    else
        markup_raw(html, text_stage_css);
    markup_close(html);
}

static void paper(Markup *html)
{
    markup_line_end(html);
    markup_open(html, "rect");
    markup_put(html, "width", "100%");
    markup_put(html, "height", "100%");
    markup_put(html, "fill", "#fff");
    markup_close_void(html);
}

static void head(Drawing *d)
{
    Buffer text = {0};
    Buffer title = {0};
    SAY(&title, d->language, PHRASE_ARRANGEMENT_TITLE, slot_text("arrangement", words_arrangement(d->language, spz_plan_arrangement(d->plan))));
    say_stage_players(&text, d->language, d->plan);
    about(&d->html, "title", buffer_text(&title));
    about(&d->html, "desc", buffer_text(&text));
    about(&d->html, "style", NULL);
    paper(&d->html);
    stage_words(d, d->left, 34, "title", buffer_text(&title));
    stage_words(d, d->left, 56, "plain", buffer_text(&text));
    buffer_clear(&text);
    say_stage_size(&text, d->language, d->plan);
    bool fits = text.length <= letters_from(d, d->left, 12);
    stage_words(d, d->left, 75, fits ? "plain" : "small", buffer_text(&text));
    buffers_let_go(d, &text, &title);
}

static void draw(Drawing *d, StagePairs pairs, size_t count)
{
    char width[NUMBER_TEXT], height[NUMBER_TEXT];
    Markup *html = &d->html;
    markup_xml_head(html);
    markup_open(html, "svg");
    markup_put(html, "xmlns", "http://www.w3.org/2000/svg");
    markup_put(html, "role", "img");
    markup_put_number(html, "width", d->width, 1);
    markup_put_number(html, "height", d->height, 1);
    markup_put_format(html, "viewBox", "0 0 %s %s", number_text_short(d->width, 1, width), number_text_short(d->height, 1, height));
    head(d);
    stage_floor(d);
    for (size_t i = 0; i < count; i++)
        draw_way(d, pairs[i], i);
    for (size_t i = 0; i < spz_plan_desks(d->plan); i++)
        take_desk(d, spz_plan_desk(d->plan, i));
    stage_take(d, box_around(stage_across(d, 0), stage_down(d, 0), d->scale, d->scale)); /* the podium */
    if (d->laying)
        stage_others(d);
    for (size_t i = 0; i < spz_plan_desks(d->plan); i++)
        draw_desk(d, spz_plan_desk(d->plan, i));
    for (spz_section section = SPZ_VN1; section <= SPZ_DB; section++)
        for (int orchestra = 1; orchestra <= (spz_plan_is_double(d->plan) ? 2 : 1); orchestra++)
            name_section(d, section, orchestra);
    for (size_t i = 0; i < count; i++)
        tell_way(d, pairs[i], i);
    double y = scale_bar(d, TOP + d->deep * d->scale + (d->laying ? 4 : 3) * LINE);
    y = room(d, facts(d, pairs, count, y + 4));
    if (d->laying)
        y = tell_laying(d, y);
    paragraph(d, d->left, y + 4, "small", report_cautions(d->language), letters_from(d, d->left, 10));
    markup_line_end(html);
    markup_close_line(html);
}

static void measure(Drawing *d, StagePairs pairs, size_t count)
{
    double stage = spz_plan_stage_width(d->plan);
    d->deep = fmax(spz_plan_stage_depth(d->plan), d->laying ? spz_laying_depth(d->laying) : 0);
    d->scale = fmin(most_stage / stage, most_scale);
    d->width = fmax(stage * d->scale + 2 * MARGIN, SHEET_LEAST);
    d->left = (d->width - stage * d->scale) / 2;
    d->height = TOP + d->deep * d->scale + LINE * (9 + (d->laying ? 4 : 0) + (spz_plan_is_cut(d->plan) ? 5 : 1) + 3 * (double)count + further_lines(d, pairs, count));
}

spz_status stage_svg_laid(const spz_plan *plan, const spz_laying *laying, StagePairs pairs, size_t count, spz_language language, spz_document **out)
{
    Drawing d = {.plan = plan, .laying = laying, .language = language};
    Buffer text;
    buffer_init(&text);
    markup_begin(&d.html, &text);
    measure(&d, pairs, count);
    draw(&d, pairs, count);
    markup_end(&d.html);
    text.failed = text.failed || d.failed;
    label_space_free(&d.room);
    return document_take(&text, out);
}

spz_status stage_svg(const spz_plan *plan, StagePairs pairs, size_t count, spz_language language, spz_document **out)
{
    return stage_svg_laid(plan, NULL, pairs, count, language, out);
}
