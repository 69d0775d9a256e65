#include "pages/drawings/difference_bar.h"
#include "pages/drawings/score_view.h"
#include "wording/phrase.h"
#include <math.h>

static const double middle = 0.5, reach = 0.4; /* shares of the width */

void difference_bar(Html *html, spz_language language, double points, double longest)
{
    double length = longest > 0 ? reach * fabs(points) / longest : 0, from = points > 0 ? middle - length : middle;
    Buffer figure;
    buffer_init(&figure);
    say_figure(&figure, language, fabs(points), 1);
    html_open_class(html, "svg", "difference");
    html_put(html, "height", "16");
    html_put(html, "role", "img");
    html_put(html, "aria-label", figure.text ? figure.text : "");
    html_open_class(html, "line", "axis");
    draw_percent(html, "x1", middle);
    draw_percent(html, "x2", middle);
    html_put(html, "y1", "0");
    html_put(html, "y2", "16");
    html_close_void(html);
    html_open_class(html, "rect", points > 0 ? "speaks" : "speaks against");
    draw_percent(html, "x", from);
    html_put(html, "y", "4");
    draw_percent(html, "width", length);
    html_put(html, "height", "8");
    html_close_void(html);
    html_open_class(html, "text", points > 0 ? "end" : "begin");
    draw_percent(html, "x", points > 0 ? from : from + length);
    html_put(html, "dx", points > 0 ? "-5" : "5");
    html_put(html, "y", "13");
    html_words(html, figure.text ? figure.text : "");
    html_close(html);
    html_close(html);
    html->failed = html->failed || figure.failed;
    buffer_free(&figure);
}
