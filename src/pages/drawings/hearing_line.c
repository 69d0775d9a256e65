#include "pages/drawings/hearing_line.h"
#include "pages/drawings/score_view.h"
#include "sections/section_map.h"
#include "support/numbers.h"
#include "wording/seatings/seating_words.h"
#include <math.h>

enum { HEARD_MOST = 12, PLACES_MOST = 8, ROW = 13 };
static const double widest = 60; /* degrees from the middle to the end of the line */
static const double name_share = 0.15; /* of a line as narrow as on paper: what the longest name needs */

/* A section as it is heard from each place of the audience; its name stands in a row of its own side of the line, violins over it. */
typedef struct Heard {
    spz_section section;
    double shares[PLACES_MOST];
    int row; /* 0 next to the line */
} Heard;

typedef struct Hearing {
    Heard at[HEARD_MOST];
    size_t count, places;
    int rows[2]; /* over and under the line */
} Hearing;

/* Where that direction stands on the line: the script reckons likewise. */
static double share_of(double degrees)
{
    return 0.5 + 0.5 * fmin(fmax(degrees / widest, -1), 1);
}

static bool runs_into(const Hearing *all, const Heard *one, const Heard *two)
{
    bool near = false;
    for (size_t place = 0; place < all->places; place++)
        near = near || fabs(one->shares[place] - two->shares[place]) < name_share;
    return near && section_is_violin(one->section) == section_is_violin(two->section) && one->row == two->row;
}

/* The row nearest to the line in which the name runs into no other, whatever the place. */
static void find_row(Hearing *all, Heard *mine)
{
    for (size_t i = 0; i < all->count; i++)
        if (runs_into(all, &all->at[i], mine)) {
            mine->row++;
            i = (size_t)-1; /* from the first again */
        }
    int *rows = &all->rows[!section_is_violin(mine->section)];
    *rows = mine->row + 1 > *rows ? mine->row + 1 : *rows;
}

static void gather(Hearing *all, const spz_plan *plan, spz_section section, int orchestra)
{
    Heard mine = {.section = section};
    double degrees;
    if (all->count == HEARD_MOST || !spz_plan_direction(plan, section, orchestra, SPZ_MIDDLE_SEATS, &degrees))
        return;
    for (size_t place = 0; place < all->places; place++) {
        spz_plan_direction(plan, section, orchestra, place, &degrees);
        mine.shares[place] = share_of(degrees);
    }
    find_row(all, &mine);
    all->at[all->count++] = mine;
}

static void dot(Markup *html, spz_language language, const Hearing *all, const Heard *heard)
{
    char number[NUMBER_TEXT];
    Buffer shares = {0};
    int line = ROW * all->rows[0] + 11;
    for (size_t place = 0; place < all->places; place++)
        buffer_printf(&shares, "%s%s", place ? " " : "", number_text_short(100 * heard->shares[place], 1, number));
    markup_open(html, "svg");
    markup_put_format(html, "class", "heard-at %s", view_class(heard->section));
    draw_percent(html, "x", heard->shares[SPZ_MIDDLE_SEATS]);
    markup_put(html, "overflow", "visible");
    markup_put(html, "data-at", buffer_text(&shares));
    draw_dot(html, 0, line, 6);
    markup_label(html, "name", 0, section_is_violin(heard->section) ? line - 11 - ROW * heard->row : line + 21 + ROW * heard->row, words_section_short(language, heard->section));
    markup_close(html);
    buffer_let_go(html, &shares);
}

void hearing_line(Markup *html, spz_language language, const spz_plan *plan)
{
    size_t places = spz_plan_places(plan);
    Hearing all = {.places = places < PLACES_MOST ? places : PLACES_MOST, .rows = {1, 1}};
    for (int orchestra = 1; orchestra <= (spz_plan_is_double(plan) ? 2 : 1); orchestra++)
        for (int section = SPZ_VN1; section <= SPZ_DB; section++)
            gather(&all, plan, (spz_section)section, orchestra);
    markup_open_class(html, "svg", "hearing");
    markup_put_format(html, "height", "%d", ROW * (all.rows[0] + all.rows[1]) + 24);
    markup_put(html, "role", "img");
    markup_put(html, "aria-label", phrase_text(language, PHRASE_TWO_HEARING));
    draw_across(html, "axis", 0, 1, ROW * all.rows[0] + 11, ROW * all.rows[0] + 11);
    for (size_t i = 0; i < all.count; i++)
        dot(html, language, &all, &all.at[i]);
    markup_close(html);
}
