/* Why: the grounds, one line each with its bar, figures and bars folded; the table of all arrangements; the stage to scale. */
#include "support/numbers.h"
#include "pages/drawings/difference_bar.h"
#include "pages/drawings/stage/stage_picture.h"
#include "pages/drawings/stage/stage_svg.h"
#include "pages/web/web.h"
#include "wording/seatings/seating_words.h"
#include "spezzato/stage.h"
#include "support/memory.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { GROUNDS_MOST = 5 };

/* The grounds with points, weightiest first; what else is worth knowing follows. */
typedef struct Ground {
    const spz_reason *reason;
    size_t place;
} Ground;

static int weightier_first(const void *a, const void *b)
{
    const Ground *one = a, *two = b;
    double left = fabs(one->reason->points), right = fabs(two->reason->points);
    return left < right ? 1 : left > right ? -1 : one->place < two->place ? -1 : one->place > two->place;
}

/* The passages that the ground rests on, as links; where it rests on bars alone, these. */
static void ground_bars(const Web *web, const spz_reason *reason)
{
    const spz_basis *basis = &reason->basis;
    Markup *html = web->html;
    Buffer bars;
    if (!basis->bar_count)
        return;
    markup_open_class(html, "p", "small links");
    for (size_t i = 0; i < basis->passage_count; i++) {
        if (i)
            markup_words(html, ", ");
        web_bars_link(web, basis->passages[i].passage);
    }
    if (!basis->passage_count) {
        buffer_init(&bars);
        say_with_bars(&bars, web->view.language, PHRASE_BASIS_PLACE, basis);
        web_words(html, &bars);
        buffer_free(&bars);
    }
    markup_close(html);
}

static void ground(const Web *web, const spz_reason *reason, double longest)
{
    Markup *html = web->html;
    Buffer words = {0};
    markup_open_class(html, "details", "ground");
    markup_open(html, "summary");
    say_ground(&words, web->view.language, web->view.verdict, reason);
    web_element(html, "span", "short", &words);
    markup_words(html, " ");
    difference_bar(html, web->view.language, reason->points, longest);
    markup_close(html);
    markup_open_class(html, "div", "more-said");
    say_reason(&words, web->view.language, web->view.verdict, reason);
    web_element(html, "p", "small", &words);
    ground_bars(web, reason);
    markup_close(html);
    markup_close_line(html);
    buffer_free(&words);
}

/* What the lines don't show, so that they add up to what is told under them. */
static void rest(const Web *web, double points, double longest)
{
    if (fabs(points) < 0.05)
        return;
    markup_open_class(web->html, "div", "ground");
    markup_element(web->html, "span", "short", phrase_text(web->view.language, PHRASE_WHY_REST));
    markup_words(web->html, " ");
    difference_bar(web->html, web->view.language, points, longest);
    markup_close_line(web->html);
}

static void ways_between(const Web *web, size_t other)
{
    const spz_verdict *verdict = web->view.verdict;
    spz_language language = web->view.language;
    markup_open_class(web->html, "p", "between small");
    markup_open(web->html, "span");
    WEB_SAY(web->html, language, PHRASE_WHY_FOR, slot_text("arrangement", words_arrangement(language, spz_verdict_ranked(verdict, 0)->name)));
    markup_close(web->html);
    markup_open(web->html, "span");
    WEB_SAY(web->html, language, PHRASE_WHY_FOR_OTHER, slot_text("arrangement", words_arrangement(language, spz_verdict_ranked(verdict, other)->name)));
    markup_close(web->html);
    markup_close_line(web->html);
}

static void balance(const Web *web, const Ground *grounds, size_t count)
{
    const spz_verdict *verdict = web->view.verdict;
    spz_language language = web->view.language;
    size_t other = view_other(verdict);
    double gap = spz_verdict_ranked(verdict, 0)->points - spz_verdict_ranked(verdict, other)->points, shown = 0, longest = 0;
    for (size_t i = 0; i < count; i++) {
        longest = fmax(longest, fabs(grounds[i].reason->points));
        shown += grounds[i].reason->points;
    }
    longest = fmax(longest, fabs(gap - shown));
    ways_between(web, other);
    for (size_t i = 0; i < count; i++)
        ground(web, grounds[i].reason, longest);
    rest(web, gap - shown, longest);
    markup_open_class(web->html, "p", "sum");
    WEB_SAY(web->html, language, PHRASE_WHY_SUM, slot_decimal("n", gap, 1), slot_decimal("here", spz_verdict_ranked(verdict, 0)->score, 1),
            slot_decimal("there", spz_verdict_ranked(verdict, other)->score, 1));
    markup_close_line(web->html);
}

/* Grounds beyond the first five, what else is worth knowing, what would turn it: folded. */
static void further(const Web *web, const Ground *reasons, size_t count)
{
    Markup *html = web->html;
    spz_language language = web->view.language;
    Buffer words = {0};
    markup_open_class(html, "details", "plain");
    markup_element(html, "summary", NULL, phrase_text(language, PHRASE_WHY_FURTHER));
    markup_open_class(html, "ul", "reasons");
    for (size_t i = 0; i < count; i++) {
        say_reason_and_place(&words, language, web->view.verdict, reasons[i].reason);
        web_element(html, "li", NULL, &words);
    }
    say_instead(&words, language, web->view.verdict);
    web_element(html, "li", NULL, &words);
    say_margin(&words, language, web->view.verdict);
    web_element(html, "li", NULL, &words);
    markup_close(html);
    markup_close_line(html);
    buffer_free(&words);
}

/* One of the two answers: since when, the seating as a small stage, and how sure it would be. */
static void year_side(const Web *web, const spz_statement *view, Phrase when)
{
    Markup *html = web->html;
    spz_language language = web->view.language;
    static const char *const emphasis[] = {[SPZ_OPEN] = "span", [SPZ_LEANING] = "em", [SPZ_FIRM] = "strong"};
    spz_plan *plan = NULL;
    for (size_t place = 0; place < spz_verdict_count(web->view.verdict) && !plan; place++)
        if (strcmp(spz_verdict_ranked(web->view.verdict, place)->name, view->arrangement) == 0)
            plan = stage_plan_of(web->report->options.settings, web->view.verdict, place);
    markup_open(html, "li");
    if (plan)
        stage_picture(html, language, plan, NULL, STAGE_GLYPH);
    markup_open(html, "p");
    markup_element(html, "span", "small soft", phrase_text(language, when));
    markup_element(html, "span", "then", words_arrangement(language, view->arrangement));
    markup_element(html, emphasis[view->confidence], NULL, phrase_text(language, (Phrase)(PHRASE_SEASON_CONFIDENCE_OPEN + (unsigned)view->confidence)));
    markup_close(html);
    markup_close(html);
    spz_plan_free(plan);
}

/* Where the year is not known it is asked for, with the seating both ways. */
static void ask_year(const Web *web, const spz_by_year *by)
{
    Markup *html = web->html;
    spz_language language = web->view.language;
    bool same = by->earlier.confidence == by->later.confidence && strcmp(by->earlier.arrangement, by->later.arrangement) == 0;
    markup_open_class(html, "div", "year asked");
    markup_put_format(html, "id", "m%zu-year", web->shown->number);
    markup_element(html, web_heading(web, 2), NULL, phrase_text(language, PHRASE_YEAR_ASK));
    markup_element(html, "p", NULL, phrase_text(language, same ? PHRASE_YEAR_ASK_ABOUT_SAME : PHRASE_YEAR_ASK_ABOUT));
    markup_open_class(html, "ul", "both-ways");
    year_side(web, &by->earlier, PHRASE_YEAR_ASK_EARLIER);
    year_side(web, &by->later, PHRASE_YEAR_ASK_LATER);
    markup_close(html);
    markup_open_class(html, "p", "small soft");
    WEB_SAY(html, language, PHRASE_YEAR_ASK_HOW, slot_number("before", SPZ_EARLIER_YEAR));
    markup_close(html);
    markup_close(html);
}

static void year(const Web *web)
{
    spz_by_year by = spz_verdict_by_year(web->view.verdict);
    Buffer words = {0};
    if (!by.year && by.earlier.arrangement && by.later.arrangement) {
        ask_year(web, &by);
        return;
    }
    say_year(&words, web->view.language, web->view.verdict);
    markup_open_class(web->html, "p", "year");
    markup_put_format(web->html, "id", "m%zu-year", web->shown->number);
    web_words(web->html, &words);
    markup_close(web->html);
    buffer_free(&words);
}

/* Those with points, weightiest first, then the others. Returns how many have points. */
static size_t in_order(const spz_verdict *verdict, Ground *grounds, size_t all)
{
    size_t count = 0, remarks = all;
    for (size_t i = all; i-- > 0;) {
        const spz_reason *reason = spz_verdict_reason(verdict, i);
        if (reason->points == 0)
            grounds[--remarks] = (Ground){reason, i};
    }
    for (size_t i = 0; i < all; i++)
        if (spz_verdict_reason(verdict, i)->points != 0)
            grounds[count++] = (Ground){spz_verdict_reason(verdict, i), i};
    qsort(grounds, count, sizeof *grounds, weightier_first);
    return count;
}

void web_why(const Web *web)
{
    const spz_verdict *verdict = web->view.verdict;
    size_t all = spz_verdict_reasons(verdict);
    if (spz_verdict_count(verdict) == 0)
        return;
    markup_open_class(web->html, "section", "part why");
    markup_element(web->html, web_heading(web, 1), NULL, phrase_text(web->view.language, PHRASE_WHY_HEADING));
    markup_element(web->html, "p", "lead", phrase_text(web->view.language, PHRASE_WHY_ABOUT));
    Ground *grounds = memory_resize(NULL, all + 1, sizeof *grounds);
    if (grounds) {
        size_t count = in_order(verdict, grounds, all), most = count < GROUNDS_MOST ? count : GROUNDS_MOST;
        balance(web, grounds, most);
        year(web);
        further(web, grounds + most, all - most);
    } else {
        web->html->failed = true;
    }
    web_arrangements(web->html, web->view.language, verdict);
    markup_close_line(web->html);
    memory_free(grounds);
}

static void put_words(Markup *html, Buffer *words)
{
    web_words(html, words);
}

static void open_with(Markup *html, const char *element, const char *class)
{
    if (class)
        markup_open_class(html, element, class);
    else
        markup_open(html, element);
}

/* What is wider than the page can be scrolled, by keyboard too. */
static void scroller(Markup *html, const char *label)
{
    markup_open_class(html, "div", "scroll");
    markup_put(html, "tabindex", "0");
    markup_put(html, "role", "region");
    markup_put(html, "aria-label", label);
}

static void head_cell(Markup *html, const char *scope, const char *text)
{
    markup_open(html, *text ? "th" : "td");
    if (*text)
        markup_put(html, "scope", scope);
    markup_words(html, text);
    markup_close(html);
}

/* The points once more as a bar, for the eye. */
static void points_cell(Markup *html, spz_language language, double score)
{
    Buffer text = {0};
    say_figure(&text, language, score, 1);
    markup_open_class(html, "td", "points");
    put_words(html, &text);
    buffer_free(&text);
    markup_open_drawing(html, "meter", 100, 8, NULL);
    markup_put(html, "aria-hidden", "true");
    markup_box(html, "meter-ground", 0, 0, 100, 8);
    markup_box(html, "meter-fill", 0, 0, score < 0 ? 0 : score > 100 ? 100 : score, 8);
    markup_line(html, "meter-middle", 50, 0, 50, 8);
    markup_close(html);
    markup_close(html);
}

/* The buffer as a cell; it is emptied. */
static void cell(Markup *html, const char *class, Buffer *words)
{
    open_with(html, "td", class);
    put_words(html, words);
    markup_close(html);
}

static void arrangement_row(Markup *html, spz_language language, const spz_verdict *verdict, size_t place)
{
    const spz_ranked *ranked = spz_verdict_ranked(verdict, place);
    Buffer words = {0};
    markup_open(html, "tr");
    markup_open(html, "td");
    markup_format(html, "%zu.", place + 1);
    markup_close(html);
    points_cell(html, language, ranked->score);
    head_cell(html, "row", words_arrangement(language, ranked->name));
    say_order(&words, language, ranked->order);
    cell(html, NULL, &words);
    say_ranked_losses(&words, language, verdict, ranked);
    buffer_puts(&words, words.length ? "" : phrase_text(language, PHRASE_ARRANGEMENTS_NOTHING));
    cell(html, NULL, &words);
    markup_close_line(html);
    buffer_free(&words);
}

static void term_row(Markup *html, spz_language language, const spz_verdict *verdict, size_t index)
{
    Buffer words = {0};
    markup_open(html, "tr");
    head_cell(html, "row", words_term(language, spz_verdict_ranked(verdict, 0)->terms[index].kind));
    for (size_t i = 0; i < spz_verdict_count(verdict); i++) {
        double points = spz_verdict_ranked(verdict, i)->terms[index].points;
        buffer_puts(&words, points >= 0.05 ? "+" : "");
        say_figure(&words, language, points, 1);
        cell(html, "figure", &words);
    }
    say_first_because(&words, language, verdict, index);
    cell(html, NULL, &words);
    markup_close_line(html);
    buffer_free(&words);
}

static void terms(Markup *html, spz_language language, const spz_verdict *verdict)
{
    markup_open_class(html, "details", "plain");
    markup_element(html, "summary", NULL, phrase_text(language, PHRASE_TERMS_HEADING));
    scroller(html, phrase_text(language, PHRASE_TERMS_HEADING));
    markup_open(html, "table");
    markup_open(html, "thead");
    markup_open(html, "tr");
    head_cell(html, "col", phrase_text(language, PHRASE_TERMS_HEAD_GROUND));
    for (size_t i = 0; i < spz_verdict_count(verdict); i++) {
        char place[NUMBER_TEXT];
        head_cell(html, "col", number_text((double)i + 1, 0, place));
    }
    head_cell(html, "col", phrase_text(language, PHRASE_TERMS_HEAD_BECAUSE));
    markup_close(html);
    markup_close(html);
    markup_open(html, "tbody");
    for (size_t t = 0; t < spz_verdict_ranked(verdict, 0)->term_count; t++)
        term_row(html, language, verdict, t);
    for (int i = 0; i < 4; i++) /* tbody, table, div, details */
        markup_close(html);
}

void web_arrangements(Markup *html, spz_language language, const spz_verdict *verdict)
{
    static const Phrase heads[] = {PHRASE_ARRANGEMENTS_HEAD_POINTS, PHRASE_ARRANGEMENTS_HEAD_NAME, PHRASE_ARRANGEMENTS_HEAD_ORDER,
                                   PHRASE_ARRANGEMENTS_HEAD_WEAKENS};
    if (spz_verdict_count(verdict) == 0)
        return;
    markup_open_class(html, "details", "plain");
    markup_element(html, "summary", NULL, phrase_text(language, PHRASE_ARRANGEMENTS_HEADING));
    markup_element(html, "p", "small", phrase_text(language, PHRASE_ARRANGEMENTS_ABOUT));
    scroller(html, phrase_text(language, PHRASE_ARRANGEMENTS_HEADING));
    markup_open_class(html, "table", "arrangements");
    markup_open(html, "thead");
    markup_open(html, "tr");
    head_cell(html, "col", "");
    for (size_t i = 0; i < sizeof heads / sizeof heads[0]; i++)
        head_cell(html, "col", phrase_text(language, heads[i]));
    markup_close(html);
    markup_close(html);
    markup_open(html, "tbody");
    for (size_t i = 0; i < spz_verdict_count(verdict); i++)
        arrangement_row(html, language, verdict, i);
    markup_close(html);
    markup_close(html);
    markup_close(html);
    markup_close(html);
    terms(html, language, verdict);
}

/* The drawing goes in as an image of its own, so that its styles stay its own. */
static void stage_image(Markup *html, spz_language language, const spz_plan *plan, const spz_document *drawing)
{
    Buffer address = {0}, words = {0}, order = {0};
    size_t length = 0;
    const char *svg = spz_document_text(drawing, &length);
    markup_data_address(&address, "image/svg+xml", svg, length);
    say_order(&order, language, spz_plan_order(plan));
    SAY(&words, language, PHRASE_STAGE_IMAGE, slot_text("arrangement", words_arrangement(language, spz_plan_arrangement(plan))),
        slot_text("order", order.text));
    html->failed = html->failed || address.failed || words.failed || order.failed;
    markup_open_class(html, "img", "stage");
    markup_put(html, "alt", words.text);
    markup_put(html, "src", address.text);
    markup_close_void(html);
    markup_line_end(html);
    buffer_free(&address);
    buffer_free(&words);
    buffer_free(&order);
}

void web_stage(const Web *web)
{
    const spz_verdict *verdict = web->shown->reading.verdict;
    spz_language language = web->report->options.language;
    spz_section pairs[2][2];
    size_t count = 0;
    spz_document *drawing = NULL;
    if (spz_verdict_count(verdict) == 0)
        return;
    while (count < 2 && spz_verdict_pair(verdict, count, pairs[count]))
        count++;
    spz_plan *plan = stage_plan_of(web->report->options.settings, verdict, 0);
    if (!plan)
        return;
    markup_open_class(web->html, "section", "part");
    markup_element(web->html, web_heading(web, 1), NULL, phrase_text(language, PHRASE_STAGE_HEADING));
    markup_open_class(web->html, "details", "plain");
    markup_element(web->html, "summary", NULL, phrase_text(language, PHRASE_STAGE_TO_SCALE));
    if (stage_svg(plan, (StagePairs)pairs, count, language, &drawing) == SPZ_OK)
        stage_image(web->html, language, plan, drawing);
    else
        web->html->failed = true;
    markup_close(web->html);
    markup_close(web->html);
    spz_document_free(drawing);
    spz_plan_free(plan);
}
