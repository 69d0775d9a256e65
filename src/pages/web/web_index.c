/* The overview: a row for each movement, with its stage, its strip to one scale of bars, and what was found. The script sorts the rows. */
#include "pages/drawings/stage/stage_picture.h"
#include "pages/drawings/strip.h"
#include "pages/page_names.h"
#include "pages/page_heads.h"
#include "pages/web/web.h"
#include "wording/seatings/seating_words.h"
#include "wording/section_words.h"
#include <stdio.h>
#include <string.h>

static long striking(const spz_findings *findings)
{
    long count = 0;
    for (size_t i = 0; i < spz_findings_count(findings); i++) {
        const spz_passage *passage = spz_findings_at(findings, i);
        count += spz_kind_is_antiphony(passage->kind) && passage->ruling.kind != SPZ_VETOED && view_strength(passage) == 2;
    }
    return count;
}

static const char *page_of(const spz_report *report, const ShownMovement *shown, char *page, size_t size)
{
    return page_name_of(report->options.pages, shown->path, page, size);
}

static void index_link(spz_report *report, const ShownMovement *shown)
{
    char page[512];
    page_link(&report->html, page_of(report, shown, page, sizeof page), shown->number, web_own_title(shown));
    if (*web_work(shown)) {
        markup_words(&report->html, " ");
        markup_element(&report->html, "span", "of-work told", web_work(shown));
    }
}

static void open_cell(Markup *html, const char *class, double sorted)
{
    markup_open_class(html, "td", class);
    markup_put_number(html, "data-sort", sorted, 3);
}

static void number_cell(Markup *html, const char *class, long number)
{
    open_cell(html, class, (double)number);
    markup_format(html, "%ld", number);
    markup_close(html);
}

static void strip_cell(spz_report *report, const ShownMovement *shown, const ScoreView *view)
{
    Markup *html = &report->html;
    size_t bars = shown->reading.movement->bar_count;
    Buffer label = {0};
    Slot slots[] = {slot_text("title", shown->title), slot_number("n", (long)bars)};
    say(&label, report->options.language, PHRASE_INDEX_STRIP, slots, 2);
    open_cell(html, "strip-cell", (double)bars);
    markup_open(html, "div");
    markup_put_format(html, "style", "--bars:%zu", bars);
    strip_thumb(view, buffer_text(&label), true);
    markup_close(html);
    markup_close(html);
    report->longest = bars > report->longest ? bars : report->longest;
    buffer_let_go(html, &label);
}

static void seating_cells(spz_report *report, const ShownMovement *shown)
{
    const spz_verdict *verdict = shown->reading.verdict;
    Markup *html = &report->html;
    spz_language language = report->options.language;
    bool judged = spz_verdict_count(verdict) > 0;
    markup_open_class(html, "td", "seating-cell");
    spz_plan *plan = judged ? stage_plan_of(report->options.settings, verdict, 0) : NULL;
    if (plan)
        stage_picture(html, language, plan, NULL, STAGE_GLYPH);
    markup_element(html, "span", NULL, judged ? words_arrangement(language, spz_verdict_ranked(verdict, 0)->name) : words_undecided(language, shown->reading.sections));
    markup_close(html);
    open_cell(html, "sure-cell", judged ? spz_verdict_margin(verdict) : -1);
    static const char *const emphasis[] = {[SPZ_OPEN] = "span", [SPZ_LEANING] = "em", [SPZ_FIRM] = "strong"};
    spz_confidence sure = spz_verdict_confidence(verdict);
    markup_element(html, judged ? emphasis[sure] : "span", NULL, judged ? words_confidence(language, sure) : "-");
    markup_close(html);
    spz_plan_free(plan);
}

/* The bars that decide most, each a link to its passage; sorted by how many answers strike the ear. */
static void decisive_cell(spz_report *report, const ShownMovement *shown, const ScoreView *view)
{
    Markup *html = &report->html;
    char page[512], bars[WORDS_TEXT];
    size_t chosen[VIEW_DECISIVE], count = view_decisive(view, chosen);
    open_cell(html, "decisive-cell", (double)striking(view->findings));
    for (size_t i = 0; i < count; i++) {
        const spz_passage *passage = spz_findings_at(view->findings, chosen[i]);
        markup_words(html, i ? ", " : "");
        page_link_open(html, view_strength(passage) == 2 ? "s2" : NULL, page_of(report, shown, page, sizeof page), shown->number, chosen[i] + 1);
        markup_words(html, words_bars(report->options.language, passage, bars));
        markup_close(html);
    }
    markup_words(html, count ? "" : "-");
    markup_close(html);
}

/* The work of the movements that follow, with who wrote it and when; once for all of them. True where one stands over this movement. */
static bool work_row(spz_report *report, const ShownMovement *shown, const char *composer, const char *year)
{
    Markup *html = &report->html;
    const char *work = web_work(shown);
    Buffer *told = &report->work_told;
    bool again = *work && told->length && strcmp(told->text, work) == 0;
    buffer_clear(told);
    buffer_printf(told, "%s", work);
    html->failed = html->failed || told->failed;
    if (again || !*work)
        return *work;
    markup_open_class(html, "tr", "of-movements");
    markup_open(html, "th");
    markup_put(html, "scope", "rowgroup");
    markup_words(html, work);
    markup_close(html);
    markup_element(html, "td", "composer-cell", composer);
    markup_element(html, "td", "figure year-cell", year);
    markup_open(html, "td");
    markup_put(html, "colspan", "5");
    markup_close(html);
    markup_close_line(html);
    return true;
}

void web_index_row(spz_report *report, const ShownMovement *shown)
{
    Markup *html = &report->html;
    ScoreView view = score_view(html, &report->options, shown);
    int year = spz_verdict_by_year(shown->reading.verdict).year;
    char composer[SOURCE_TEXT], number[16] = "";
    words_composer(shown->reading.movement, composer);
    if (year)
        snprintf(number, sizeof number, "%d", year);
    bool of_work = work_row(report, shown, composer, number);
    markup_open_class(html, "tr", of_work ? "in-work" : "alone");
    markup_put_format(html, "data-place", "%zu", report->movements);
    markup_open(html, "th");
    markup_put(html, "scope", "row");
    markup_put(html, "data-sort", shown->title);
    index_link(report, shown);
    markup_close(html);
    markup_open_class(html, "td", "composer-cell");
    markup_element(html, "span", of_work ? "told" : NULL, composer);
    markup_close(html);
    open_cell(html, "figure year-cell", year);
    markup_element(html, "span", of_work ? "told" : NULL, number);
    markup_close(html);
    strip_cell(report, shown, &view);
    decisive_cell(report, shown, &view);
    seating_cells(report, shown);
    number_cell(html, "figure", striking(view.findings));
    markup_close_line(html);
}

void web_index_head(spz_report *report)
{
    static const Phrase heads[] = {PHRASE_PAGE_HEAD_MOVEMENT, PHRASE_INDEX_COMPOSER, PHRASE_INDEX_YEAR, PHRASE_INDEX_STRIP_HEAD, PHRASE_INDEX_DECISIVE,
                                   PHRASE_PAGE_HEAD_SEATING, PHRASE_PAGE_HEAD_SURE, PHRASE_WEB_INDEX_STRIKING};
    Markup *html = &report->html;
    spz_language language = report->options.language;
    markup_element(html, "h1", "title", phrase_text(language, PHRASE_WEB_INDEX));
    markup_element(html, "p", "lead", phrase_text(language, PHRASE_INDEX_ABOUT));
    ScoreView view = {.html = html, .language = language};
    strip_key(&view, phrase_text(language, PHRASE_INDEX_LOST), "");
    markup_open_class(html, "div", "scroll");
    markup_put(html, "tabindex", "0");
    markup_put(html, "role", "region");
    markup_put(html, "aria-label", phrase_text(language, PHRASE_WEB_INDEX));
    markup_open_class(html, "table", "index");
    table_head(html, language, heads, sizeof heads / sizeof heads[0]);
    markup_open(html, "tbody");
    markup_line_end(html);
}

/* The scale of the strips is known when all movements are. */
void web_index_end(spz_report *report)
{
    Markup *html = &report->html;
    for (int i = 0; i < 3; i++) /* body of the table, table, its frame */
        markup_close(html);
    markup_open(html, "style");
    markup_format(html, ":root { --most-bars: %zu; }", report->longest ? report->longest : 1);
    markup_close_line(html);
}
