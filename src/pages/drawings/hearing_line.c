#include "pages/drawings/hearing_line.h"
#include "pages/drawings/score_view.h"
#include "support/numbers.h"
#include "wording/seatings/seating_words.h"
#include <math.h>

static const double widest = 60; /* degrees from the middle to the end of the line */

/* Where that direction stands on the line: the script reckons likewise. */
static double share_of(double degrees)
{
    return 0.5 + 0.5 * fmin(fmax(degrees / widest, -1), 1);
}

static void put_degrees(Markup *html, const spz_plan *plan, spz_section section, int orchestra)
{
    Buffer all = {0};
    double degrees = 0;
    char number[NUMBER_TEXT];
    for (size_t place = 0; place < spz_plan_places(plan); place++) {
        spz_plan_direction(plan, section, orchestra, place, &degrees);
        buffer_printf(&all, "%s%s", place ? " " : "", number_text_short(100 * share_of(degrees), 1, number));
    }
    markup_put(html, "data-at", all.text ? all.text : "");
    buffer_let_go(html, &all);
}

static void dot(Markup *html, spz_language language, const spz_plan *plan, spz_section section, int orchestra)
{
    double degrees;
    if (!spz_plan_direction(plan, section, orchestra, SPZ_MIDDLE_SEATS, &degrees))
        return;
    markup_open(html, "svg");
    markup_put_format(html, "class", "heard-at %s", view_class(section));
    draw_percent(html, "x", share_of(degrees));
    markup_put(html, "overflow", "visible");
    put_degrees(html, plan, section, orchestra);
    draw_dot(html, 0, 24, 6);
    markup_label(html, "name", 0, section_is_violin(section) ? 13 : section == SPZ_DB ? 59 : 45, words_section_short(language, section));
    markup_close(html);
}

void hearing_line(Markup *html, spz_language language, const spz_plan *plan)
{
    markup_open_class(html, "svg", "hearing");
    markup_put(html, "height", "64");
    markup_put(html, "role", "img");
    markup_put(html, "aria-label", phrase_text(language, PHRASE_TWO_HEARING));
    draw_across(html, "axis", 0, 1, 24, 24);
    for (int orchestra = 1; orchestra <= (spz_plan_is_double(plan) ? 2 : 1); orchestra++)
        for (int section = SPZ_VN1; section <= SPZ_DB; section++)
            dot(html, language, plan, (spz_section)section, orchestra);
    markup_close(html);
}
