#include "pages/drawings/staves/stave_glyphs.h"
#include "support/numbers.h"
#include <stdio.h>

/* `format` with a # for each number. */
void glyph_trace(Buffer *path, const char *format, const double *numbers, size_t count)
{
    char text[NUMBER_TEXT];
    size_t at = 0;
    for (; *format; format++)
        if (*format == '#' && at < count)
            buffer_puts(path, number_text_short(numbers[at++], 1, text));
        else
            buffer_putc(path, *format);
}

void glyph_traced(Markup *html, const char *class, Buffer *path)
{
    if (path->length) {
        markup_open_class(html, "path", class);
        markup_put(html, "d", buffer_text(path));
        markup_close_void(html);
    }
    html->failed = html->failed || buffer_failed(path);
    buffer_clear(path);
}

void glyph_path(Markup *html, const char *class, double width, const char *format, const double *numbers, size_t count)
{
    Buffer path = {0};
    glyph_trace(&path, format, numbers, count);
    markup_open(html, "path");
    if (class)
        markup_put(html, "class", class);
    markup_put(html, "d", buffer_text(&path));
    if (width > 0)
        markup_put_number(html, "stroke-width", width, 1);
    markup_close_void(html);
    buffer_let_go(html, &path);
}

static void circle(Markup *html, double x, double y, double radius)
{
    markup_open(html, "circle");
    markup_put_number(html, "cx", x, 1);
    markup_put_number(html, "cy", y, 1);
    markup_put_number(html, "r", radius, 1);
    markup_close_void(html);
}

static void open_moved(Markup *html, double x, double y)
{
    char n[2][NUMBER_TEXT];
    markup_open(html, "g");
    markup_put_format(html, "transform", "translate(%s %s)", number_text_short(x, 1, n[0]), number_text_short(y, 1, n[1]));
}

static void line(Markup *html, const char *path, double width)
{
    glyph_path(html, "pen", width, path, NULL, 0);
}

static void treble(Markup *html)
{
    line(html, "M5.4 14C5.1 13.9 3.8 13.7 3.5 13.2C3.1 12.7 3 11.7 3.3 11C3.6 10.3 4.4 9.3 5.2 9.1C6 9 7.3 9.5 7.9 10C8.5 10.5 8.9 11.6 8.9 12.4C8.9 13.2 8.5 14.4 7.9 15"
               "C7.3 15.6 6.2 16.1 5.2 16.1C4.2 16.1 2.8 15.8 2 15.1C1.2 14.5 .4 13.3 .2 12.2C0 11.1 .4 9.6 1 8.4C1.6 7.2 2.9 6.1 3.8 5C4.7 3.9 5.9 3.1 6.6 2"
               "C7.3 .9 7.8 -.4 7.9 -1.6C8 -2.8 7.4 -4.4 7.1 -5C6.7 -5.6 6.3 -5.7 5.9 -5.4C5.5 -5.1 4.9 -4 4.7 -3C4.5 -2 4.6 -1.3 4.8 .4C4.9 2.1 5.4 4.5 5.8 7.2"
               "C6.2 9.9 6.8 14.7 7 16.8C7.2 18.9 7.3 19.1 7.1 20C6.9 20.9 6.3 21.8 5.8 22.2C5.3 22.6 4.3 22.6 3.8 22.4C3.3 22.2 3 21.1 2.8 20.8", 1);
    circle(html, 3.6, 20.6, 1.3);
}

/* Round the line at `y`: the alto clef's middle line, the tenor clef's second. */
static void c_clef(Markup *html, double y)
{
    open_moved(html, 0, y);
    markup_box(html, "solid", 0, -8, 1.8, 16);
    markup_box(html, "solid", 2.8, -8, 0.6, 16);
    line(html, "M4.2 0C4.5 -.4 5.4 -1.8 5.6 -2.2C6 -1.3 7.6 -.7 8.8 -1.4C10.2 -2.3 10.3 -5.3 8.9 -7C7.8 -8.2 5.2 -8.2 4.9 -6", 1);
    line(html, "M4.2 0C4.5 .4 5.4 1.8 5.6 2.2C6 1.3 7.6 .7 8.8 1.4C10.2 2.3 10.3 5.3 8.9 7C7.8 8.2 5.2 8.2 4.9 6", 1);
    markup_close(html);
}

static void bass(Markup *html)
{
    line(html, "M1.6 4.3C1.7 3.8 1.7 1.9 2.2 1.1C2.8 .4 4.1 -.1 5 -.1C5.9 -.1 7.2 .4 7.7 1.1C8.3 1.9 8.7 3.1 8.6 4.3C8.5 5.6 7.9 7.4 7.2 8.7C6.4 10 5.2 11.3 4 12.3C2.8 13.3 .6 14.3 0 14.7", 1.2);
    circle(html, 2.6, 4.1, 1.7);
    circle(html, 11.2, 2, 0.9);
    circle(html, 11.2, 6, 0.9);
}

void glyph_clef(Markup *html, int clef, double x, double top)
{
    open_moved(html, x, top);
    if (clef == 0)
        treble(html);
    else if (clef == 3)
        bass(html);
    else
        c_clef(html, clef == 1 ? 8 : 4);
    markup_close(html);
}

void glyph_accidental(Markup *html, int alter, double x, double y)
{
    open_moved(html, x, y);
    if (alter == 0) {
        line(html, "M-1.2 -6v8.6M1.2 -2.6v8.6", 0.7);
        line(html, "M-1.2 -1.8l2.4 -.7M-1.2 2.3l2.4 -.7", 1.3);
    } else if (alter == 1) {
        line(html, "M-.9 -5v10.4M.9 -5.6v10.4", 0.6);
        line(html, "M-2 -1.1l4 -1.2M-2 2.3l4 -1.2", 1.3);
    } else if (alter == 2) {
        line(html, "M-1.8 -1.8l3.6 3.6M1.8 -1.8l-3.6 3.6", 1.2);
    } else {
        for (int i = 0; i < (alter == -2 ? 2 : 1); i++)
            line(html, i ? "M-4.6 -7v9.4Q-1.2 .6 -1.9 -1.2Q-3.2 -2.6 -4.6 -.6" : "M-1.2 -7v9.4Q2.2 .6 1.5 -1.2Q.2 -2.6 -1.2 -.6", 0.9);
    }
    markup_close(html);
}

void glyph_full_head(Buffer *path, double x, double y)
{
    glyph_trace(path, "M# #l1.3 -.5", (const double[]){x - 0.65, y + 0.25}, 2);
}

void glyph_head(Markup *html, int type, double x, double y)
{
    char n[2][NUMBER_TEXT];
    markup_open_class(html, "ellipse", "hollow");
    markup_put_number(html, "cx", x, 1);
    markup_put_number(html, "cy", y, 1);
    markup_put(html, "rx", type == 0 ? "2.9" : "2.5");
    markup_put(html, "ry", type == 0 ? "1.6" : "1.5");
    markup_put_format(html, "transform", "rotate(-22 %s %s)", number_text_short(x, 1, n[0]), number_text_short(y, 1, n[1]));
    markup_close_void(html);
}

static void short_rest(Markup *html, int tails)
{
    for (int i = 0; i < tails; i++) {
        circle(html, -1.6 - 0.9 * i, 5.2 + 4 * i, 1.2);
        const double at[] = {-1.9 - 0.9 * i, 6.4 + 4 * i, 1.8 - 0.9 * i, 4.6 + 4 * i};
        glyph_path(html, "pen", 0.8, "M# #L# #", (const double[]){at[0], at[1], at[2], at[3]}, 4);
    }
    glyph_path(html, "pen", 0.8, "M1.8 4.6L#  #", (const double[]){-0.6 - 0.9 * tails, 8.6 + 4 * tails}, 2);
}

void glyph_rest(Markup *html, int type, double x, double top)
{
    open_moved(html, x, top);
    if (type == 0)
        markup_box(html, "solid", -3, 4, 6, 2);
    else if (type == 1)
        markup_box(html, "solid", -3, 6, 6, 2);
    else if (type == 2) {
        line(html, "M-1.2 2.2L1.4 5.4", 0.9);
        line(html, "M1.2 5.2Q-2 7.4 .1 9", 1.7);
        line(html, "M-.2 8.4L1.7 11Q-1.8 9.4 -1.2 11.4T.2 13.6", 0.8);
    } else {
        short_rest(html, type - 2 > 3 ? 3 : type - 2);
    }
    markup_close(html);
}

void glyph_flags(Markup *html, int count, double x, double y, bool up)
{
    for (int i = 0; i < count; i++) {
        double from = y + (up ? 3.2 : -3.2) * i, way = up ? 1 : -1;
        glyph_path(html, "pen", 1, "M# #Q# # # #Q# # # #", (const double[]){x, from, x + 0.4, from + 3 * way, x + 2.8, from + 4.4 * way, x + 4.4, from + 6.4 * way, x + 3, from + 9 * way}, 10);
    }
}

void glyph_dot(Markup *html, double x, double y)
{
    circle(html, x, y, 0.9);
}
