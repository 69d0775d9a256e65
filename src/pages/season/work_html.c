/* One seating for several movements: the stage, what each movement says by itself and gives up, in playing order, and what each arrangement would. */
#include "pages/drawings/stage/stage_picture.h"
#include "pages/own_texts.h"
#include "pages/page_heads.h"
#include "pages/growing_report.h"
#include "wording/seatings/change_words.h"
#include "wording/papers/notes_words.h"
#include "wording/seatings/seating_words.h"
#include "writing/document.h"

typedef struct WorkPage {
    Markup html;
    Buffer words; /* under way */
    const spz_verdict *work;
    const spz_settings *settings;
    const char *const *pages;
    spz_language language;
} WorkPage;

static void put(WorkPage *page, const char *element, const char *class)
{
    if (page->words.length)
        markup_element(&page->html, element, class, page->words.text);
    page->html.failed = page->html.failed || buffer_failed(&page->words);
    buffer_clear(&page->words);
}

static void heads(WorkPage *page, const Phrase *each, size_t count)
{
    Markup *html = &page->html;
    table_head(html, page->language, each, count);
    markup_open(html, "tbody");
}

/* Points, bars and minutes that are given up; a dash for nothing. */
static void given_up(WorkPage *page, double points, size_t bars, double seconds)
{
    static const double nothing = 0.05;
    Markup *html = &page->html;
    if (points >= nothing)
        say_points(&page->words, page->language, points);
    markup_element(html, "td", "figure", page->words.length ? page->words.text : "-");
    buffer_clear(&page->words);
    markup_open_class(html, "td", "figure");
    if (points >= nothing && bars)
        markup_format(html, "%zu", bars);
    markup_close(html);
    if (points >= nothing && bars)
        say_clock(&page->words, page->language, seconds);
    markup_element(html, "td", "figure", buffer_text(&page->words));
    buffer_clear(&page->words);
}

static void movement_name(WorkPage *page, const spz_reason *reason)
{
    Markup *html = &page->html;
    markup_open(html, "th");
    markup_put(html, "scope", "row");
    if (page->pages)
        page_link_open(html, NULL, page->pages[reason->movement], 0, 0);
    say_movement(&page->words, page->language, page->work, reason->movement);
    markup_words(html, buffer_text(&page->words));
    buffer_clear(&page->words);
    if (page->pages)
        markup_close(html);
    markup_close(html);
}

static void movement_row(WorkPage *page, const spz_reason *reason)
{
    Markup *html = &page->html;
    bool judged = reason->alone.outcome == SPZ_JUDGED;
    markup_open(html, "tr");
    movement_name(page, reason);
    markup_element(html, "td", NULL, judged ? words_arrangement(page->language, reason->alone.arrangement) : phrase_text(page->language, PHRASE_PAGE_NOTHING_TO_DECIDE));
    markup_element(html, "td", NULL, judged ? words_confidence(page->language, reason->alone.confidence) : "-");
    given_up(page, reason->lost, reason->lost_bars, reason->lost_seconds);
    say_losses(&page->words, page->language, reason->losses, reason->lost > 0.05 ? reason->loss_count : 0);
    markup_element(html, "td", NULL, buffer_text(&page->words));
    buffer_clear(&page->words);
    markup_close_line(html);
}

static void open_table(WorkPage *page, Phrase title)
{
    Markup *html = &page->html;
    markup_open_class(html, "section", "part");
    markup_element(html, "h2", NULL, phrase_text(page->language, title));
    markup_open_class(html, "div", "scroll");
    markup_put(html, "tabindex", "0");
    markup_put(html, "role", "region");
    markup_put(html, "aria-label", phrase_text(page->language, title));
    markup_open(html, "table");
}

static void close_table(WorkPage *page)
{
    for (int i = 0; i < 4; i++) /* body, table, frame, section */
        markup_close(&page->html);
    markup_line_end(&page->html);
}

static void movements(WorkPage *page)
{
    static const Phrase each[] = {PHRASE_PAGE_HEAD_MOVEMENT, PHRASE_WORK_BY_ITSELF, PHRASE_PAGE_HEAD_SURE, PHRASE_WORK_POINTS, PHRASE_WORK_BARS, PHRASE_WORK_MUSIC, PHRASE_WORK_WEAKENED};
    open_table(page, PHRASE_WORK_MOVEMENTS);
    heads(page, each, sizeof each / sizeof *each);
    for (size_t i = 0; i < spz_verdict_reasons(page->work); i++)
        if (spz_verdict_reason(page->work, i)->kind == SPZ_REASON_MOVEMENT)
            movement_row(page, spz_verdict_reason(page->work, i));
    close_table(page);
}

static void arrangements(WorkPage *page)
{
    static const Phrase each[] = {PHRASE_ARRANGEMENTS_HEAD_NAME, PHRASE_ARRANGEMENTS_HEAD_POINTS, PHRASE_WORK_BARS, PHRASE_WORK_MUSIC};
    Markup *html = &page->html;
    open_table(page, PHRASE_ARRANGEMENTS_HEADING);
    heads(page, each, sizeof each / sizeof *each);
    for (size_t i = 0; i < spz_verdict_count(page->work); i++) {
        const spz_ranked *ranked = spz_verdict_ranked(page->work, i);
        markup_open(html, "tr");
        markup_open(html, "th");
        markup_put(html, "scope", "row");
        markup_words(html, words_arrangement(page->language, ranked->name));
        markup_close(html);
        say_figure(&page->words, page->language, ranked->score, 1);
        put(page, "td", "figure");
        markup_open_class(html, "td", "figure");
        markup_format(html, "%zu", ranked->lost_bars);
        markup_close(html);
        say_clock(&page->words, page->language, ranked->lost_seconds);
        put(page, "td", "figure");
        markup_close_line(html);
    }
    close_table(page);
}

static void verdict(WorkPage *page)
{
    spz_plan *plan = stage_plan_of(page->settings, page->work, 0);
    markup_open_class(&page->html, "section", "one-for-all");
    markup_open(&page->html, "figure");
    if (plan)
        stage_picture(&page->html, page->language, plan, NULL, STAGE_WHOLE);
    markup_close(&page->html);
    markup_open(&page->html, "div");
    SAY(&page->words, page->language, PHRASE_ARRANGEMENT_TITLE, slot_text("arrangement", words_arrangement(page->language, spz_verdict_ranked(page->work, 0)->name)));
    put(page, "h2", NULL);
    say_best_order(&page->words, page->language, page->work);
    put(page, "p", NULL);
    say_margin(&page->words, page->language, page->work);
    put(page, "p", NULL);
    say_year(&page->words, page->language, page->work);
    put(page, "p", "small soft");
    markup_close(&page->html);
    markup_close_line(&page->html);
    spz_plan_free(plan);
}

static void body(WorkPage *page)
{
    markup_open(&page->html, "main");
    markup_element(&page->html, "h1", "title", phrase_text(page->language, PHRASE_PAGE_WORK));
    if (spz_verdict_count(page->work)) {
        verdict(page);
        movements(page);
        arrangements(page);
    } else {
        say_statement(&page->words, page->language, spz_verdict_statement(page->work));
        put(page, "p", NULL);
    }
    markup_close(&page->html);
    markup_open(&page->html, "footer");
    markup_element(&page->html, "p", NULL, report_cautions(page->language));
    markup_close(&page->html);
}

static void way_back(WorkPage *page)
{
    Markup *html = &page->html;
    markup_open(html, "header");
    ways_begin(html, page->language, "index.html");
    ways_end(html);
    markup_close_line(html);
}

spz_status spz_report_work(const spz_verdict *work, const char *const *pages, const spz_settings *settings, spz_language language, spz_format format,
                           spz_document **out)
{
    Buffer text;
    WorkPage page = {.work = work, .settings = settings, .pages = pages, .language = language};
    const PageHead head = page_head(language, phrase_text(language, PHRASE_PAGE_WORK), text_page_css);
    *out = NULL;
    if (format != SPZ_AS_HTML)
        return SPZ_BAD_ARGUMENT;
    buffer_init(&text);
    buffer_init(&page.words);
    markup_begin(&page.html, &text);
    markup_page_begin(&page.html, &head);
    way_back(&page);
    body(&page);
    markup_page_end(&page.html, &head);
    markup_end(&page.html);
    text.failed = text.failed || page.words.failed;
    spz_status status = document_take(&text, out);
    buffer_free(&page.words);
    return status;
}
