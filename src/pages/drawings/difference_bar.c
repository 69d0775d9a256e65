#include "pages/drawings/difference_bar.h"
#include "pages/drawings/score_view.h"
#include "wording/phrase.h"
#include <math.h>

static const double middle = 0.5, reach = 0.4; /* shares of the width */

void difference_bar(Markup *html, spz_language language, double points, double longest)
{
    double length = longest > 0 ? reach * fabs(points) / longest : 0, from = points > 0 ? middle - length : middle;
    Buffer figure = {0};
    say_figure(&figure, language, fabs(points), 1);
    markup_open_class(html, "svg", "difference");
    markup_put(html, "height", "16");
    markup_put(html, "role", "img");
    markup_put(html, "aria-label", buffer_text(&figure));
    markup_open_class(html, "line", "axis");
    draw_percent(html, "x1", middle);
    draw_percent(html, "x2", middle);
    markup_put(html, "y1", "0");
    markup_put(html, "y2", "16");
    markup_close_void(html);
    markup_open_class(html, "rect", points > 0 ? "speaks" : "speaks against");
    draw_percent(html, "x", from);
    markup_put(html, "y", "4");
    draw_percent(html, "width", length);
    markup_put(html, "height", "8");
    markup_close_void(html);
    markup_open_class(html, "text", points > 0 ? "end" : "begin");
    draw_percent(html, "x", points > 0 ? from : from + length);
    markup_put(html, "dx", points > 0 ? "-5" : "5");
    markup_put(html, "y", "13");
    markup_words(html, buffer_text(&figure));
    markup_close(html);
    markup_close(html);
    buffer_let_go(html, &figure);
}
