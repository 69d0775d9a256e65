#include "pages/drawings/stage/stage_drawing.h"
#include "seating/stage/furniture.h"

const char *stage_fill(spz_section section)
{
    static const struct {
        spz_section section;
        const char *fill;
    } looks[] = {{SPZ_VN1, "#a8c4de"}, {SPZ_VN2, "#e3b785"}, {SPZ_VN3, "#f3dfc6"},
                                 {SPZ_VA, "#eceded"},  {SPZ_VC, "#c2c6c9"},  {SPZ_DB, "#a6abaf"}};
    for (size_t i = 0; i < sizeof looks / sizeof *looks; i++)
        if (looks[i].section == section)
            return looks[i].fill;
    return "#ffffff";
}

double stage_across(const Drawing *d, double x)
{
    return d->left + (spz_plan_stage_width(d->plan) / 2 + x) * d->scale;
}

double stage_down(const Drawing *d, double y)
{
    return TOP + (d->deep - spz_plan_front(d->plan) - y) * d->scale;
}

void stage_line(Drawing *d, double x1, double y1, double x2, double y2, const char *class)
{
    markup_line_end(&d->html);
    markup_line(&d->html, class, x1, y1, x2, y2);
}

void stage_words(Drawing *d, double x, double y, const char *class, const char *text)
{
    markup_line_end(&d->html);
    markup_label(&d->html, class, x, y, text);
}

void stage_box(Drawing *d, double x, double y, double width, double height, const char *class)
{
    markup_line_end(&d->html);
    markup_box(&d->html, class, x, y, width, height);
}

void stage_circle(Drawing *d, double x, double y, double radius, const char *class, const char *fill)
{
    Markup *html = &d->html;
    markup_line_end(html);
    markup_open_class(html, "circle", class);
    markup_put_number(html, "cx", x, 1);
    markup_put_number(html, "cy", y, 1);
    markup_put_number(html, "r", radius, 1);
    if (fill)
        markup_put(html, "fill", fill);
    markup_close_void(html);
}

void stage_take(Drawing *d, Box box)
{
    d->failed = d->failed || !label_space_take(&d->room, box);
}

double stage_seat(spz_section section)
{
    return section == SPZ_DB ? furniture_stool : furniture_chair;
}
