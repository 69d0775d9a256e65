/* The sheet for paper: one table a part, each part of each movement begins a page when printed, rows are never cut. One file, nothing
 * is fetched from anywhere. */
#include "pages/sheets/parts_sheet.h"
#include "pages/growing_report.h"
#include "pages/own_texts.h"
#include "pages/page_heads.h"
#include "wording/section_words.h"
#include <string.h>

static void begin(SheetOut *sheet)
{
    sheet_page_begin(sheet, page_head_of_sheet(sheet->language, phrase_text(sheet->language, PHRASE_PARTS_TITLE), text_parts_css), NULL);
}

/* An element on a line of its own. */
static void html_own_line(Markup *html, const char *element, const char *class, const char *text)
{
    markup_element(html, element, class, text);
    markup_line_end(html);
}

/* A box for each stand's copy: two players share one. */
static void html_boxes(Markup *html, int players)
{
    markup_open_class(html, "td", "boxes");
    for (int stand = 0; stand < (players + 1) / 2 || stand == 0; stand++)
        markup_element(html, "span", "done", "");
    markup_close(html);
}

static void html_open_point(Markup *html, const char *class, const Buffer *words)
{
    if (!words->length)
        return;
    markup_words(html, " ");
    markup_open_class(html, "span", class);
    markup_words(html, words->text);
    markup_words(html, ".");
    markup_close(html);
}

/* Where the table's head has no room, its word stands before the figure. */
static void headed_cell(Markup *html, const char *class, const char *head, const char *text)
{
    markup_open_class(html, "td", class);
    markup_put(html, "data-head", head);
    markup_words(html, text);
    markup_close(html);
}

static void html_row(Markup *html, const PartsPage *page, const Advice *advice)
{
    Buffer remark = {0};
    PartsRow row;
    parts_row(page, advice, &row);
    parts_remark(&remark, page, &row);
    markup_open(html, "tr");
    headed_cell(html, "bar", phrase_text(page->speaker.language, PHRASE_HEAD_BAR), row.bar);
    headed_cell(html, "beat", phrase_text(page->speaker.language, PHRASE_HEAD_BEAT), row.beat);
    markup_element(html, "td", "letter", row.letter);
    markup_element(html, "td", "time", buffer_text(&row.pass));
    markup_open_class(html, "td", "write");
    markup_words(html, buffer_text(&row.words));
    if (remark.length) {
        markup_words(html, " ");
        markup_element(html, "span", "remark", remark.text);
    }
    html_open_point(html, "remark warning", &row.warning);
    html_open_point(html, "remark question", &row.question);
    markup_close(html);
    html_boxes(html, parts_players(page, advice->group));
    markup_close_line(html);
    html->failed = html->failed || buffer_failed(&remark) || parts_row_failed(&row);
    parts_row_free(&row);
    buffer_free(&remark);
}

static void html_group_head(Markup *html, const PartsPage *page, size_t group)
{
    Buffer names = {0}, about = {0};
    char who[WORDS_TEXT];
    parts_names(&names, page, group);
    SAY(&about, page->speaker.language, PHRASE_PARTS_TITLE_IN_SCORE, slot_text("title", page->title), slot_text("names", buffer_text(&names)));
    html_own_line(html, "h2", NULL, words_body(page->speaker.language, &page->map->groups[group].about, who));
    html_own_line(html, "p", "about", buffer_text(&about));
    int players = parts_players(page, group);
    if (players > 0 && page->map->groups[group].about.section != SPZ_DB) { /* what the sharing counts with; basses have stools */
        buffer_clear(&about);
        SAY(&about, page->speaker.language, PHRASE_SEASON_LOAD, slot_number("chairs", players), slot_number("stands", (players + 1) / 2));
        html_own_line(html, "p", "about", buffer_text(&about));
    }
    buffers_let_go(html, &names, &about);
}

/* What every page says on top, since a table's head stands on each: work, movement and part. */
static void html_running_head(Markup *html, const PartsPage *page, size_t group)
{
    char who[WORDS_TEXT];
    const char *work = page->movement->work;
    bool other = *work && strncmp(work, page->title, strlen(work)) != 0;
    markup_open_class(html, "tr", "running");
    markup_open(html, "th");
    markup_put(html, "colspan", "6");
    markup_format(html, "%s%s%s. %s", other ? work : "", other ? ". " : "", page->title, words_body(page->speaker.language, &page->map->groups[group].about, who));
    markup_close(html);
    markup_close_line(html);
}

static void html_heads(Markup *html, const PartsPage *page, size_t group)
{
    spz_language language = page->speaker.language;
    static const Phrase heads[] = {PHRASE_HEAD_BAR, PHRASE_HEAD_BEAT, PHRASE_HEAD_LETTER, PHRASE_PARTS_HEAD_TIME, PHRASE_PARTS_HEAD_WRITE,
                                   PHRASE_PARTS_HEAD_DONE};
    markup_open(html, "thead");
    html_running_head(html, page, group);
    table_head_row(html, language, heads, sizeof heads / sizeof *heads);
    markup_close_line(html);
}

static void html_table(Markup *html, const PartsPage *page, size_t first, size_t last)
{
    markup_open(html, "table");
    markup_line_end(html);
    html_heads(html, page, page->advice->items.at[first].group);
    markup_open(html, "tbody");
    markup_line_end(html);
    for (size_t i = first; i < last; i++)
        html_row(html, page, &page->advice->items.at[i]);
    markup_close_line(html);
    markup_close_line(html);
}

/* false where the part has nothing to be written. */
static bool html_group(Markup *html, const PartsPage *page, size_t group, size_t before)
{
    size_t first, last;
    parts_range(page, group, &first, &last);
    if (first == last)
        return false;
    markup_open_class(html, "section", before ? "part" : "part first");
    markup_line_end(html);
    html_group_head(html, page, group);
    html_table(html, page, first, last);
    markup_close_line(html);
    return true;
}

static void html_empty(Markup *html, const PartsPage *page)
{
    Buffer line = {0}, names = {0};
    parts_untouched(page, &names);
    if (names.length) {
        SAY(&line, page->speaker.language, PHRASE_PARTS_NOTHING, slot_text("names", names.text));
        html_own_line(html, "p", "empty", buffer_text(&line));
    }
    buffers_let_go(html, &line, &names);
}

static void html_about(Markup *html, const PartsPage *page)
{
    char source[SOURCE_TEXT];
    Buffer about = {0};
    parts_about(page, &about);
    html_own_line(html, "h1", NULL, page->title);
    markup_open_class(html, "p", "about");
    markup_format(html, "%s. %s", words_source(page->movement, page->file, source), buffer_text(&about));
    markup_close_line(html);
    bool warning;
    for (size_t i = 0; parts_preface(page, i, &warning, &about); i++)
        html_own_line(html, "p", warning ? "about warning" : "about", buffer_text(&about));
    buffer_let_go(html, &about);
}

static void html_movement(SheetOut *sheet, const PartsPage *page)
{
    Markup *html = &sheet->html;
    size_t shown = 0;
    markup_open_class(html, "section", page->number ? "movement" : "movement first");
    markup_line_end(html);
    html_about(html, page);
    for (size_t group = 0; group < page->map->group_count; group++)
        shown += html_group(html, page, group, shown);
    html_empty(html, page);
    if (page->map->group_count == 0)
        html_own_line(html, "p", "empty", phrase_text(page->speaker.language, PHRASE_PARTS_NONE));
    if (*page->arrangement)
        html_own_line(html, "p", "cautions", report_cautions(page->speaker.language));
    markup_close_line(html);
}

const PartsForm parts_html = {begin, html_movement, sheet_page_end, false};
