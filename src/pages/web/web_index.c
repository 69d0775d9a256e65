/* The overview: a row for each movement, with its stage, its strip to one scale of bars, and what was found. The script sorts the rows. */
#include "pages/drawings/stage/stage_picture.h"
#include "pages/drawings/strip.h"
#include "pages/page_names.h"
#include "pages/page_heads.h"
#include "pages/web/web.h"
#include "wording/seatings/seating_words.h"
#include "wording/section_words.h"
#include <string.h>

typedef struct Counts {
    long striking, clear;
} Counts;

static Counts count(const spz_findings *findings)
{
    Counts counts = {0, 0};
    for (size_t i = 0; i < spz_findings_count(findings); i++) {
        const spz_passage *passage = spz_findings_at(findings, i);
        if (spz_kind_is_antiphony(passage->kind) && passage->ruling.kind != SPZ_VETOED) {
            counts.striking += view_strength(passage) == 2;
            counts.clear += view_strength(passage) == 1;
        }
    }
    return counts;
}

static void index_link(spz_report *report, const ShownMovement *shown)
{
    Markup *html = &report->html;
    char page[512];
    Buffer address = {0};
    markup_address(&address, page_name_of(report->options.pages, shown->path, page, sizeof page));
    buffer_printf(&address, "#m%zu", shown->number);
    html->failed = html->failed || address.failed;
    markup_open(html, "a");
    markup_put(html, "href", address.text);
    markup_words(html, web_own_title(shown));
    markup_close(html);
    if (*web_work(shown)) {
        markup_words(html, " ");
        markup_element(html, "span", "of-work", web_work(shown));
    }
    buffer_free(&address);
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

static void strip_cell(spz_report *report, const ShownMovement *shown)
{
    Markup *html = &report->html;
    ScoreView view = score_view(html, &report->options, shown);
    size_t bars = shown->reading.movement->bar_count;
    Buffer label = {0};
    Slot slots[] = {slot_text("title", shown->title), slot_number("n", (long)bars)};
    say(&label, report->options.language, PHRASE_INDEX_STRIP, slots, 2);
    open_cell(html, "strip-cell", (double)bars);
    markup_open(html, "div");
    markup_put_format(html, "style", "--bars:%zu", bars);
    strip_thumb(&view, label.text ? label.text : "", true);
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

void web_index_row(spz_report *report, const ShownMovement *shown)
{
    Markup *html = &report->html;
    Counts counts = count(shown->reading.findings);
    int year = spz_verdict_by_year(shown->reading.verdict).year;
    char composer[SOURCE_TEXT];
    markup_open(html, "tr");
    markup_open(html, "th");
    markup_put(html, "scope", "row");
    markup_put(html, "data-sort", shown->title);
    index_link(report, shown);
    markup_close(html);
    markup_element(html, "td", "composer-cell", words_composer(shown->reading.movement, composer));
    if (year)
        number_cell(html, "figure year-cell", year);
    else
        markup_element(html, "td", "figure year-cell", "-");
    strip_cell(report, shown);
    seating_cells(report, shown);
    number_cell(html, "figure", counts.striking);
    number_cell(html, "figure", counts.clear);
    markup_close_line(html);
}

void web_index_head(spz_report *report)
{
    static const Phrase heads[] = {PHRASE_PAGE_HEAD_MOVEMENT, PHRASE_INDEX_COMPOSER, PHRASE_INDEX_YEAR, PHRASE_INDEX_STRIP_HEAD, PHRASE_PAGE_HEAD_SEATING,
                                   PHRASE_PAGE_HEAD_SURE, PHRASE_WEB_INDEX_STRIKING, PHRASE_WEB_INDEX_CLEAR};
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
