/* Two seatings side by side: the recommended one beside every other, one at a time; what each gains and loses, and what a listener hears from
 * where he sits. The script shows one panel and one seat; without it all stand one under the other. */
#include "pages/drawings/difference_bar.h"
#include "pages/drawings/hearing_line.h"
#include "pages/drawings/stage/stage_picture.h"
#include "pages/web/web.h"
#include "wording/seatings/seating_words.h"
#include <math.h>
#include <stdio.h>

enum { BARS_LISTED = 24 };

static void choice(Markup *html, const char *form, const char *what, size_t value, const char *words, bool chosen)
{
    markup_open(html, "label");
    markup_open(html, "input");
    markup_put(html, "type", "radio");
    markup_put_format(html, "name", "%s-%s", form, what);
    markup_put_format(html, "value", "%zu", value);
    markup_put(html, "data-chooses", what);
    markup_put(html, "data-name", words);
    if (chosen)
        markup_put(html, "checked", "checked");
    markup_close_void(html);
    markup_format(html, " %s", words);
    markup_close(html);
}

static const char *seat_words(spz_language language, size_t place)
{
    return phrase_text(language, (Phrase)(PHRASE_SEAT_FRONT + place));
}

static void choices(const Web *web)
{
    const spz_verdict *verdict = web->view.verdict;
    spz_language language = web->view.language;
    Markup *html = web->html;
    char form[WEB_ID];
    snprintf(form, sizeof form, "m%zu", web->shown->number);
    markup_open_class(html, "form", "choices");
    markup_open(html, "fieldset");
    markup_element(html, "legend", NULL, phrase_text(language, PHRASE_TWO_BESIDE));
    for (size_t place = 1; place < spz_verdict_count(verdict); place++)
        choice(html, form, "second", place, words_arrangement(language, spz_verdict_ranked(verdict, place)->name), place == view_other(verdict));
    markup_close(html);
    markup_open(html, "fieldset");
    markup_element(html, "legend", NULL, phrase_text(language, PHRASE_TWO_SEAT));
    for (size_t place = 0; place < SPZ_LISTENER_COUNT; place++)
        choice(html, form, "seat", place, seat_words(language, place), place == SPZ_MIDDLE_SEATS);
    markup_close(html);
    markup_element(html, "p", "small soft", phrase_text(language, PHRASE_TWO_SEATS));
    markup_close_line(html);
}

/* 'Vn I and Vn II 26 degrees apart, 2.4 times what can be told apart', from every seat. */
static void heard(const Web *web, const spz_plan *plan)
{
    spz_language language = web->view.language;
    for (size_t place = 0; place < spz_plan_places(plan); place++) {
        spz_separation hearing;
        if (!spz_plan_separation(plan, SPZ_VN1, SPZ_VN2, place, &hearing))
            continue;
        markup_open_class(web->html, "p", "small heard");
        markup_put_format(web->html, "data-seat", "%zu", place);
        WEB_SAY(web->html, language, hearing.widths < 1 ? PHRASE_TWO_HEARD_ONE : PHRASE_TWO_HEARD, slot_text("seat", seat_words(language, place)),
                slot_number("degrees", lround(hearing.angle)), slot_decimal("times", hearing.widths, 1));
        markup_close(web->html);
    }
}

static void one_side(const Web *web, size_t place, Phrase heading)
{
    Markup *html = web->html;
    spz_language language = web->view.language;
    const spz_ranked *ranked = spz_verdict_ranked(web->view.verdict, place);
    spz_plan *plan = stage_plan_of(web->report->options.settings, web->view.verdict, place);
    Buffer order;
    markup_open_class(html, "figure", "side");
    markup_open(html, "figcaption");
    markup_element(html, "strong", NULL, phrase_text(language, heading));
    markup_open(html, "span");
    WEB_SAY(html, language, PHRASE_TWO_NAMED, slot_text("arrangement", words_arrangement(language, ranked->name)), slot_decimal("n", ranked->score, 1));
    markup_close(html);
    markup_close(html);
    if (plan) {
        stage_picture(html, language, plan, web->map, STAGE_LITTLE);
        hearing_line(html, language, plan);
        heard(web, plan);
    } else {
        buffer_init(&order);
        say_order(&order, language, ranked->order);
        web_element(html, "p", NULL, &order);
        buffer_free(&order);
    }
    markup_close(html);
    spz_plan_free(plan);
}

/* Passages that one place of the ranking loses and the other doesn't, as links. */
static void lost_ones(const Web *web, size_t loses, size_t keeps, Phrase heading)
{
    Markup *html = web->html;
    spz_language language = web->view.language;
    size_t count = 0;
    markup_open(html, "div");
    markup_element(html, "strong", NULL, phrase_text(language, heading));
    markup_open_class(html, "p", "links");
    for (size_t i = 0; i < spz_findings_count(web->view.findings); i++) {
        if (!view_loses(web->view.verdict, loses, i) || view_loses(web->view.verdict, keeps, i))
            continue;
        if (count && count < BARS_LISTED)
            markup_words(html, ", ");
        if (count++ < BARS_LISTED)
            web_bars_link(web, i);
    }
    if (count > BARS_LISTED)
        WEB_SAY(html, language, PHRASE_TWO_MORE, slot_number("n", (long)(count - BARS_LISTED)));
    if (count == 0)
        markup_words(html, phrase_text(language, PHRASE_ARRANGEMENTS_NOTHING));
    markup_close(html);
    markup_close(html);
}

/* Ground by ground: what the recommended one has more of, or less. */
static void grounds(const Web *web, size_t place)
{
    spz_language language = web->view.language;
    const spz_ranked *best = spz_verdict_ranked(web->view.verdict, 0), *second = spz_verdict_ranked(web->view.verdict, place);
    double longest = 0;
    for (size_t t = 0; t < best->term_count; t++)
        longest = fmax(longest, fabs(best->terms[t].points - second->terms[t].points));
    markup_open_class(web->html, "div", "grounds");
    for (size_t t = 0; t < best->term_count; t++) {
        double more = best->terms[t].points - second->terms[t].points;
        if (fabs(more) < 0.05)
            continue;
        markup_open_class(web->html, "p", "term");
        markup_element(web->html, "span", NULL, words_term(language, best->terms[t].kind));
        markup_words(web->html, " ");
        difference_bar(web->html, language, more, longest);
        markup_close(web->html);
    }
    markup_open_class(web->html, "p", "sum");
    WEB_SAY(web->html, language, PHRASE_WHY_SUM, slot_decimal("n", best->points - second->points, 1), slot_decimal("here", best->score, 1), slot_decimal("there", second->score, 1));
    markup_close(web->html);
    markup_close(web->html);
}

static void panel(const Web *web, size_t place)
{
    Markup *html = web->html;
    markup_open_class(html, "div", place == view_other(web->view.verdict) ? "second usual" : "second");
    markup_put_format(html, "data-place", "%zu", place);
    one_side(web, 0, PHRASE_TWO_THIS);
    grounds(web, place);
    one_side(web, place, PHRASE_TWO_OTHER);
    markup_open_class(html, "div", "lost-and-gained");
    lost_ones(web, place, 0, PHRASE_TWO_LOSES);
    lost_ones(web, 0, place, PHRASE_TWO_GAINS);
    markup_close(html);
    markup_close_line(html);
}

void web_two_seatings(const Web *web)
{
    const spz_verdict *verdict = web->view.verdict;
    if (spz_verdict_count(verdict) < 2)
        return;
    markup_open_class(web->html, "section", "part two");
    markup_element(web->html, web_heading(web, 1), NULL, phrase_text(web->view.language, PHRASE_TWO_HEADING));
    markup_element(web->html, "p", "lead", phrase_text(web->view.language, PHRASE_TWO_ABOUT));
    choices(web);
    for (size_t place = 1; place < spz_verdict_count(verdict); place++)
        panel(web, place);
    markup_close_line(web->html);
}
