/* The stage as the audience sees it on paper: podium and audience below, house left at the left. One metre is `scale` units. */
#include "pages/drawings/stage_svg.h"
#include "writing/document.h"
#include "writing/markup.h"
#include "support/numbers.h"
#include "pages/own_texts.h"
#include "pages/growing_report.h"
#include "pages/drawings/label_space.h"
#include "sections/section_map.h"
#include "wording/seating_words.h"
#include "wording/stage_words.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

/* Sizes of the sheet in units of the drawing; of chairs in metres. */
enum { SHEET_LEAST = 860, MARGIN = 56, TOP = 92, LINE = 17, LETTERS_A_LINE = 150 };
static const double most_stage = 840, most_scale = 60; /* units; units a metre */
static const double chair = 0.21, bass_chair = 0.27, stand_ahead = 0.42, number_behind = 0.5;
static const double number_type = 9, name_type = 14, told_type = 12, end_radius = 4, above_way = 10; /* units */
static const double letter_width = 0.53; /* of the size of the type, of a sentence on average */

typedef struct Drawing {
    Html html;
    const spz_plan *plan;
    spz_language language;
    double scale, left, width, height;
    LabelSpace room; /* what words must not cover */
    bool failed;
} Drawing;

typedef struct Look {
    spz_section section;
    const char *fill;
} Look;

static const char *fill_of(spz_section section)
{
    static const Look looks[] = {{SPZ_VN1, "#b9d2ee"}, {SPZ_VN2, "#f6cfa8"}, {SPZ_VN3, "#e9c3df"},
                                 {SPZ_VA, "#c9e4bb"},  {SPZ_VC, "#eee2a0"},  {SPZ_DB, "#d3cce8"}};
    for (size_t i = 0; i < sizeof looks / sizeof *looks; i++)
        if (looks[i].section == section)
            return looks[i].fill;
    return "#ffffff";
}

static double across(const Drawing *d, double x)
{
    return d->left + (spz_plan_stage_width(d->plan) / 2 + x) * d->scale;
}

static double down(const Drawing *d, double y)
{
    return TOP + (spz_plan_stage_depth(d->plan) - spz_plan_front(d->plan) - y) * d->scale;
}

static void line(Drawing *d, double x1, double y1, double x2, double y2, const char *class)
{
    html_line_end(&d->html);
    html_line(&d->html, class, x1, y1, x2, y2);
}

static void words(Drawing *d, double x, double y, const char *class, const char *text)
{
    html_line_end(&d->html);
    html_label(&d->html, class, x, y, text);
}

static void box(Drawing *d, double x, double y, double width, double height, const char *class)
{
    html_line_end(&d->html);
    html_box(&d->html, class, x, y, width, height);
}

static void circle(Drawing *d, double x, double y, double radius, const char *class, const char *fill)
{
    Html *html = &d->html;
    html_line_end(html);
    html_open_class(html, "circle", class);
    html_put_number(html, "cx", x, 1);
    html_put_number(html, "cy", y, 1);
    html_put_number(html, "r", radius, 1);
    if (fill)
        html_put(html, "fill", fill);
    html_close_void(html);
}

static void floor_and_audience(Drawing *d)
{
    double width = spz_plan_stage_width(d->plan), depth = spz_plan_stage_depth(d->plan), edge = TOP + depth * d->scale;
    box(d, d->left, TOP, width * d->scale, depth * d->scale, "floor");
    line(d, d->left, edge, d->left + width * d->scale, edge, "edge");
    words(d, d->left, edge + LINE, "plain", phrase_text(d->language, PHRASE_STAGE_HOUSE_LEFT));
    words(d, across(d, 0), edge + LINE, "middle", phrase_text(d->language, PHRASE_STAGE_AUDIENCE));
    words(d, d->left + width * d->scale, edge + LINE, "end", phrase_text(d->language, PHRASE_STAGE_HOUSE_RIGHT));
    box(d, across(d, -0.5), down(d, 0.5), d->scale, d->scale, "podium");
    words(d, across(d, 0), down(d, 0) + 4, "number", phrase_text(d->language, PHRASE_STAGE_PODIUM));
}

/* A desk in metres: two chairs side by side along the row, their stand toward the podium. */
typedef struct Furniture {
    double x[2], y[2], stand_x[2], stand_y[2], inward_x, inward_y, size;
} Furniture;

static Furniture furniture_of(const Drawing *d, const spz_stage_desk *desk)
{
    double radius = hypot(desk->x, desk->y), apart = spz_plan_desk_width(d->plan, desk->section) / 4;
    Furniture f = {.inward_x = -desk->x / radius,
                   .inward_y = -desk->y / radius,
                   .size = desk->section == SPZ_DB ? bass_chair : chair};
    for (int i = 0; i < 2; i++) {
        double side = desk->players == 1 ? 0 : i ? apart : -apart, end = i ? -0.22 : 0.22;
        f.x[i] = desk->x - f.inward_y * side;
        f.y[i] = desk->y + f.inward_x * side;
        f.stand_x[i] = desk->x + f.inward_x * stand_ahead - f.inward_y * end;
        f.stand_y[i] = desk->y + f.inward_y * stand_ahead + f.inward_x * end;
    }
    return f;
}

static void take(Drawing *d, Box box)
{
    d->failed = d->failed || !label_space_take(&d->room, box);
}

static void take_desk(Drawing *d, const spz_stage_desk *desk)
{
    Furniture f = furniture_of(d, desk);
    for (int player = 0; player < desk->players; player++)
        take(d, box_around(across(d, f.x[player]), down(d, f.y[player]), 2 * f.size * d->scale, 2 * f.size * d->scale));
    double x[2] = {across(d, f.stand_x[0]), across(d, f.stand_x[1])}, y[2] = {down(d, f.stand_y[0]), down(d, f.stand_y[1])};
    take(d, (Box){fmin(x[0], x[1]), fmin(y[0], y[1]), fmax(x[0], x[1]), fmax(y[0], y[1])});
}

/* Behind the desk, as near as there is room. */
static void number_desk(Drawing *d, const spz_stage_desk *desk, const Furniture *f)
{
    char number[NUMBER_TEXT];
    double x = 0, y = 0, least = HUGE_VAL;
    number_text(desk->number, 0, number);
    for (int step = 0; step < 5 && least > 0; step++) {
        double behind = number_behind + 0.1 * step, at_x = across(d, desk->x - f->inward_x * behind),
               at_y = down(d, desk->y - f->inward_y * behind) + 3;
        double covered = label_space_covered(&d->room, box_of_words(number, at_x, at_y, number_type, false));
        if (covered < least) {
            least = covered;
            x = at_x;
            y = at_y;
        }
    }
    words(d, x, y, "number", number);
    take(d, box_of_words(number, x, y, number_type, false));
}

static void draw_desk(Drawing *d, const spz_stage_desk *desk)
{
    Furniture f = furniture_of(d, desk);
    html_line_end(&d->html);
    html_open(&d->html, "g");
    for (int player = 0; player < desk->players; player++)
        circle(d, across(d, f.x[player]), down(d, f.y[player]), f.size * d->scale, "seat", fill_of(desk->section));
    line(d, across(d, f.stand_x[0]), down(d, f.stand_y[0]), across(d, f.stand_x[1]), down(d, f.stand_y[1]), "stand");
    number_desk(d, desk, &f);
    html_line_end(&d->html);
    html_close(&d->html);
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
        double away = hypot(across(d, desk->x) - x, down(d, desk->y) - y);
        if (away < nearest) {
            nearest = away;
            own = desk->section == section;
        }
    }
    return own;
}

static bool is_on_stage(const Drawing *d, Box box)
{
    double width = spz_plan_stage_width(d->plan) * d->scale, depth = spz_plan_stage_depth(d->plan) * d->scale;
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
    double x = across(d, middle.x), y = down(d, middle.y) + 5, least = HUGE_VAL;
    for (int spot = 0; spot < RINGS * SPOKES; spot++) {
        int ring = spot / SPOKES;
        double turn = 6.283185307179586 * (spot % SPOKES) / SPOKES, away = 6.0 * ring;
        double at_x = across(d, middle.x) + away * cos(turn), at_y = down(d, middle.y) + 5 + away * sin(turn);
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
    words(d, x, y, "section", name);
    take(d, box_of_words(name, x, y, name_type, true));
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
    line(d, across(d, end[0].x), down(d, end[0].y), across(d, end[1].x), down(d, end[1].y), index ? "way1" : "way0");
    for (int i = 0; i < 2; i++) {
        circle(d, across(d, end[i].x), down(d, end[i].y), end_radius, index ? "end1" : "end0", NULL);
        take(d, box_around(across(d, end[i].x), down(d, end[i].y), 2 * end_radius, 2 * end_radius));
    }
}

/* Metres and milliseconds beside the way, near its middle, where there is room. */
static void tell_way(Drawing *d, const spz_section pair[2], size_t index)
{
    enum { PLACES = 15, HEIGHTS = 21, SIDES = 9 }; /* along the way, above and below it, left and right of it */
    Middle from, to;
    spz_distance way;
    Buffer text;
    if (!spz_plan_distance(d->plan, pair[0], pair[1], &way) || !find_ends(d, pair, &from, &to))
        return;
    buffer_init(&text);
    say_stage_way(&text, d->language, &way);
    const char *label = text.text ? text.text : "";
    double x = 0, y = 0, least = HUGE_VAL, long_x = across(d, to.x) - across(d, from.x), long_y = down(d, to.y) - down(d, from.y);
    for (int spot = 0; spot < PLACES * HEIGHTS * SIDES; spot++) {
        double at = (0.5 + spot / (HEIGHTS * SIDES)) / PLACES, up = 4.0 * (spot / SIDES % HEIGHTS - HEIGHTS / 2),
               aside = 16.0 * (spot % SIDES - SIDES / 2);
        double at_x = across(d, from.x) + at * long_x + aside, at_y = down(d, from.y) + at * long_y + 4 + up;
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
        words(d, x, y, index ? "told told1" : "told told0", label);
        take(d, box_of_words(label, x, y, told_type, true));
    }
    d->failed = d->failed || buffer_failed(&text);
    buffer_free(&text);
}

static double scale_bar(Drawing *d, double y)
{
    char number[NUMBER_TEXT];
    for (int metre = 0; metre <= 5; metre++) {
        double x = d->left + metre * d->scale;
        line(d, x, y - 5, x, y, "bar");
        words(d, x, y + 12, "number", number_text(metre, 0, number));
    }
    line(d, d->left, y, d->left + 5 * d->scale, y, "bar");
    words(d, d->left + 5 * d->scale + 14, y + 4, "plain", phrase_text(d->language, PHRASE_STAGE_SCALE));
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
        words(d, x, y, class, piece);
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
    Buffer text;
    buffer_init(&text);
    for (size_t i = 0; i < count * TELLINGS; i++) {
        const struct Telling *telling = &tellings[i % TELLINGS];
        telling->say(&text, d->language, d->plan, pairs[i / TELLINGS]);
        if (text.length && i % TELLINGS == 0)
            line(d, d->left, y - 4, d->left + 26, y - 4, i / TELLINGS ? "way1" : "way0");
        if (text.length)
            y = paragraph(d, d->left + TOLD_AT, y, telling->class, text.text, letters_in_line(d, telling)) + (i % TELLINGS ? 4 : 0);
        buffer_clear(&text);
    }
    d->failed = d->failed || buffer_failed(&text);
    buffer_free(&text);
    return y;
}

/* Lines that the tellings take beyond one for each. */
static double further_lines(Drawing *d, StagePairs pairs, size_t count)
{
    Buffer text;
    double lines = 0;
    buffer_init(&text);
    for (size_t i = 0; i < count * TELLINGS; i++) {
        const struct Telling *telling = &tellings[i % TELLINGS];
        telling->say(&text, d->language, d->plan, pairs[i / TELLINGS]);
        for (const char *at = text.length ? text.text : ""; *at;) {
            at += line_length(at, letters_in_line(d, telling));
            lines += *at == ' ';
            at += *at == ' ';
        }
        buffer_clear(&text);
    }
    d->failed = d->failed || buffer_failed(&text);
    buffer_free(&text);
    return lines;
}

/* The least stage that would do, and what gave way on this one. */
static double room(Drawing *d, double y)
{
    Buffer text;
    buffer_init(&text);
    say_stage_room(&text, d->language, d->plan);
    y = paragraph(d, d->left, y + 4, "plain", text.text ? text.text : "", letters_from(d, d->left, 12));
    d->failed = d->failed || buffer_failed(&text);
    buffer_free(&text);
    return y;
}

/* An element that is no drawing: a text, or the styles. */
static void about(Html *html, const char *element, const char *text)
{
    html_line_end(html);
    html_open(html, element);
    if (text)
        html_words(html, text);
    else
        html_raw(html, text_stage_css);
    html_close(html);
}

static void paper(Html *html)
{
    html_line_end(html);
    html_open(html, "rect");
    html_put(html, "width", "100%");
    html_put(html, "height", "100%");
    html_put(html, "fill", "#fff");
    html_close_void(html);
}

static void head(Drawing *d)
{
    Buffer text;
    Buffer title;
    buffer_init(&text);
    buffer_init(&title);
    SAY(&title, d->language, PHRASE_ARRANGEMENT_TITLE, slot_text("arrangement", words_arrangement(d->language, spz_plan_arrangement(d->plan))));
    say_stage_players(&text, d->language, d->plan);
    about(&d->html, "title", title.text ? title.text : "");
    about(&d->html, "desc", text.text ? text.text : "");
    about(&d->html, "style", NULL);
    paper(&d->html);
    words(d, d->left, 34, "title", title.text ? title.text : "");
    words(d, d->left, 56, "plain", text.text ? text.text : "");
    buffer_clear(&text);
    say_stage_size(&text, d->language, d->plan);
    words(d, d->left, 75, "plain", text.text ? text.text : "");
    d->failed = d->failed || buffer_failed(&text) || buffer_failed(&title);
    buffer_free(&text);
    buffer_free(&title);
}

static void draw(Drawing *d, StagePairs pairs, size_t count)
{
    char width[NUMBER_TEXT], height[NUMBER_TEXT];
    Html *html = &d->html;
    html_xml_head(html);
    html_open(html, "svg");
    html_put(html, "xmlns", "http://www.w3.org/2000/svg");
    html_put(html, "role", "img");
    html_put_number(html, "width", d->width, 1);
    html_put_number(html, "height", d->height, 1);
    html_put_format(html, "viewBox", "0 0 %s %s", number_text_short(d->width, 1, width), number_text_short(d->height, 1, height));
    head(d);
    floor_and_audience(d);
    for (size_t i = 0; i < count; i++)
        draw_way(d, pairs[i], i);
    for (size_t i = 0; i < spz_plan_desks(d->plan); i++)
        take_desk(d, spz_plan_desk(d->plan, i));
    take(d, box_around(across(d, 0), down(d, 0), d->scale, d->scale)); /* the podium */
    for (size_t i = 0; i < spz_plan_desks(d->plan); i++)
        draw_desk(d, spz_plan_desk(d->plan, i));
    for (spz_section section = SPZ_VN1; section <= SPZ_DB; section++)
        for (int orchestra = 1; orchestra <= (spz_plan_is_double(d->plan) ? 2 : 1); orchestra++)
            name_section(d, section, orchestra);
    for (size_t i = 0; i < count; i++)
        tell_way(d, pairs[i], i);
    double y = scale_bar(d, TOP + spz_plan_stage_depth(d->plan) * d->scale + 3 * LINE);
    y = room(d, facts(d, pairs, count, y + 4));
    paragraph(d, d->left, y + 4, "small", report_cautions(d->language), letters_from(d, d->left, 10));
    html_line_end(html);
    html_close(html);
    html_line_end(html);
}

static void measure(Drawing *d, StagePairs pairs, size_t count)
{
    double stage = spz_plan_stage_width(d->plan);
    d->scale = fmin(most_stage / stage, most_scale);
    d->width = fmax(stage * d->scale + 2 * MARGIN, SHEET_LEAST);
    d->left = (d->width - stage * d->scale) / 2;
    d->height = TOP + spz_plan_stage_depth(d->plan) * d->scale + LINE * (9 + (spz_plan_is_cut(d->plan) ? 5 : 1) + 3 * (double)count + further_lines(d, pairs, count));
}

spz_status stage_svg(const spz_plan *plan, StagePairs pairs, size_t count, spz_language language, spz_document **out)
{
    Drawing d = {.plan = plan, .language = language};
    Buffer text;
    buffer_init(&text);
    html_begin(&d.html, &text);
    measure(&d, pairs, count);
    draw(&d, pairs, count);
    html_end(&d.html);
    text.failed = text.failed || d.failed;
    label_space_free(&d.room);
    spz_status status = document_take(&text, out);
    buffer_free(&text);
    return status;
}
