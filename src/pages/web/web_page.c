/* The conductor's page as a whole, and the page that leads to several of them. */
#include "pages/web/web.h"
#include "pages/own_texts.h"
#include "support/path.h"
#include "wording/seating_words.h"
#include <stdio.h>
#include <string.h>

static PageHead head_of(spz_language language, const char *title)
{
    return (PageHead){.language = spz_language_code(language), .title = title, .style = text_page_css, .script = text_page_js,
                      .more_style = text_own_ear_css, .more_script = text_own_ear_js};
}

static void page_begin(Html *html, spz_language language, const char *title)
{
    PageHead head = head_of(language, title);
    html_page_begin(html, &head);
    html_open(html, "main");
}

/* With what goes with every proposal for a stage. */
static void page_end(Html *html, spz_language language)
{
    PageHead head = head_of(language, "");
    html_close(html);
    html_open(html, "footer");
    html_element(html, "p", NULL, report_cautions(language));
    html_close(html);
    html_page_end(html, &head);
}

void web_say(Html *html, spz_language language, Phrase phrase, const Slot *slots, size_t count)
{
    Buffer words;
    buffer_init(&words);
    say(&words, language, phrase, slots, count);
    html_words(html, words.length ? words.text : "");
    html->failed = html->failed || words.failed;
    buffer_free(&words);
}

void web_put(Html *html, const char *attribute, spz_language language, Phrase phrase, const Slot *slots, size_t count)
{
    Buffer words;
    buffer_init(&words);
    say(&words, language, phrase, slots, count);
    html_put(html, attribute, words.length ? words.text : "");
    html->failed = html->failed || words.failed;
    buffer_free(&words);
}

static void sections_line(const Web *web)
{
    size_t count = web->map->group_count;
    spz_language language = web_speaker(web).language;
    Html *html = web->html;
    Buffer names;
    buffer_init(&names);
    for (size_t i = 0; i < count; i++) {
        char name[WORDS_TEXT];
        buffer_printf(&names, "%s%s", i ? ", " : "", words_body(language, &web->map->groups[i].about, name));
    }
    html_open(html, "p");
    WEB_SAY(html, language, count ? PHRASE_PAGE_SECTIONS : PHRASE_PAGE_NO_SECTIONS, slot_text("names", names.text));
    html_close(html);
    html_line_end(html);
    html->failed = html->failed || names.failed;
    buffer_free(&names);
}

static void movement_section(const Web *web)
{
    Html *html = web->html;
    const ShownMovement *shown = web->shown;
    spz_language language = web_speaker(web).language;
    html_open_class(html, "section", "movement");
    html_put_format(html, "id", "m%zu", shown->number);
    html_element(html, shown->of > 1 ? "h2" : "h1", NULL, shown->title);
    html_open_class(html, "p", "small");
    WEB_SAY(html, language, web->movement->year ? PHRASE_PAGE_BARS_YEAR : PHRASE_PAGE_BARS, slot_text("file", shown->file),
            slot_number("n", (long)web->movement->bar_count), slot_number("year", web->movement->year));
    html_close(html);
    sections_line(web);
    html_element(html, "h3", NULL, phrase_text(language, PHRASE_WEB_SEATING));
    web_verdict(html, language, shown->reading.verdict);
    if (web->map->group_count)
        web_passages(web);
    web_stage(web);
    web_arrangements(html, language, shown->reading.verdict);
    html_close(html);
    html_raw(html, "\n");
}

static void page_movement(spz_report *report, const ShownMovement *shown)
{
    Web web = {.html = &report->html, .report = report, .shown = shown, .map = shown->reading.sections, .movement = shown->reading.movement};
    web_engrave(&web);
    movement_section(&web);
    web_engraved_free(&web);
}

static void begin(spz_report *report)
{
    (void)report;
}

/* 'symphony-1.musicxml' as 'symphony-1.html'. */
char *spz_report_page_name(const char *path, char *out, size_t size)
{
    const char *name = path_name(path);
    const char *dot = strrchr(name, '.');
    size_t length = dot && dot != name ? (size_t)(dot - name) : strlen(name);
    snprintf(out, size, "%.*s.html", (int)length, name);
    return out;
}

/* A file's name within an address (RFC 3986). */
static void add_escaped(Buffer *out, const char *name)
{
    for (; *name; name++) {
        unsigned char c = (unsigned char)*name;
        if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '.' || c == '_' || c == '~')
            buffer_putc(out, *name);
        else
            buffer_printf(out, "%%%02X", c);
    }
}

static void index_link(Html *html, const ShownMovement *shown)
{
    char page[512];
    Buffer address;
    buffer_init(&address);
    add_escaped(&address, spz_report_page_name(shown->file, page, sizeof page));
    buffer_printf(&address, "#m%zu", shown->number);
    html->failed = html->failed || address.failed;
    html_open(html, "a");
    html_put(html, "href", address.text);
    html_words(html, shown->title);
    html_close(html);
    buffer_free(&address);
}

static void index_row(spz_report *report, const ShownMovement *shown)
{
    Html *html = &report->html;
    const spz_verdict *verdict = shown->reading.verdict;
    bool judged = spz_verdict_count(verdict) > 0;
    spz_language language = report->options.language;
    long striking = 0, clear = 0;
    for (size_t i = 0; i < spz_findings_count(shown->reading.findings); i++) {
        const spz_passage *passage = spz_findings_at(shown->reading.findings, i);
        if (spz_kind_is_antiphony(passage->kind) && passage->ruling.kind != SPZ_VETOED) {
            striking += web_strength(passage) == 2;
            clear += web_strength(passage) == 1;
        }
    }
    html_open(html, "tr");
    html_open(html, "th");
    html_put(html, "scope", "row");
    index_link(html, shown);
    html_close(html);
    html_element(html, "td", NULL, judged ? words_arrangement(language, spz_verdict_ranked(verdict, 0)->name) : phrase_text(language, PHRASE_PAGE_NOTHING_TO_DECIDE));
    html_element(html, "td", NULL, judged ? words_confidence(language, spz_verdict_confidence(verdict)) : "-");
    html_open_class(html, "td", "figure");
    html_format(html, "%ld", striking);
    html_close(html);
    html_open_class(html, "td", "figure");
    html_format(html, "%ld", clear);
    html_close(html);
    html_close(html);
    html_line_end(html);
}

static void season_link(Html *html, spz_language language, const char *page)
{
    Buffer address;
    buffer_init(&address);
    add_escaped(&address, page);
    html->failed = html->failed || address.failed;
    html_open(html, "p");
    html_open(html, "a");
    html_put(html, "href", address.text);
    html_words(html, phrase_text(language, PHRASE_WEB_INDEX_SEASON));
    html_close(html);
    html_close(html);
    html_line_end(html);
    buffer_free(&address);
}

static void index_heads(spz_report *report)
{
    static const Phrase heads[] = {PHRASE_PAGE_HEAD_MOVEMENT, PHRASE_PAGE_HEAD_SEATING, PHRASE_PAGE_HEAD_SURE, PHRASE_WEB_INDEX_STRIKING,
                                   PHRASE_WEB_INDEX_CLEAR};
    Html *html = &report->html;
    spz_language language = report->options.language;
    html_element(html, "h1", NULL, phrase_text(language, PHRASE_WEB_INDEX));
    html_line_end(html);
    if (report->options.season)
        season_link(html, language, report->options.season);
    html_open_class(html, "div", "scroll");
    html_open_class(html, "table", "index");
    html_open(html, "thead");
    html_open(html, "tr");
    for (size_t i = 0; i < sizeof heads / sizeof heads[0]; i++) {
        html_open(html, "th");
        html_put(html, "scope", "col");
        html_words(html, phrase_text(language, heads[i]));
        html_close(html);
    }
    html_close(html);
    html_close(html);
    html_open(html, "tbody");
    html_line_end(html);
}

/* The page is named after its first movement. */
static void begin_once(spz_report *report, const char *title)
{
    spz_language language = report->options.language;
    if (report->movements > 0)
        return;
    page_begin(&report->html, language, report->options.brief || !title ? phrase_text(language, PHRASE_WEB_INDEX) : title);
    if (report->options.brief)
        index_heads(report);
}

static void movement(spz_report *report, const ShownMovement *shown)
{
    begin_once(report, shown->title);
    if (report->options.brief)
        index_row(report, shown);
    else
        page_movement(report, shown);
}

static void end(spz_report *report)
{
    begin_once(report, NULL);
    for (int i = 0; report->options.brief && i < 3; i++) /* body of the table, table, its frame */
        html_close(&report->html);
    page_end(&report->html, report->options.language);
}

const Form html_movements = {begin, movement, end};
