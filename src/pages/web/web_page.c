/* The conductor's page as a whole: its frame, the way to other pages, and what stands over the first screen. */
#include "pages/web/web.h"
#include "pages/own_texts.h"
#include "pages/page_heads.h"
#include "support/sha256.h"
#include "wording/papers/notes_words.h"
#include "wording/section_words.h"
#include "spezzato/sheets.h"
#include <stdio.h>
#include <string.h>

/* `key` of the sounds beside it; NULL: it has none, and nothing that would play them. */
static PageHead head_of(spz_language language, const char *title, const char *key)
{
    PageHead head = page_head(language, title, text_page_css);
    head.script = text_page_js;
    head.more_style = text_own_ear_css;
    head.more_script = text_own_ear_js;
    head.key = key;
    head.last_style = key ? text_player_css : NULL;
    head.last_script = key ? text_player_js : NULL;
    return head;
}

void web_say(Markup *html, spz_language language, Phrase phrase, const Slot *slots, size_t count)
{
    Buffer words = {0};
    say(&words, language, phrase, slots, count);
    web_words(html, &words);
    buffer_free(&words);
}

void web_put(Markup *html, const char *attribute, spz_language language, Phrase phrase, const Slot *slots, size_t count)
{
    Buffer words = {0};
    say(&words, language, phrase, slots, count);
    markup_put(html, attribute, buffer_text(&words));
    buffer_let_go(html, &words);
}

void web_words(Markup *html, Buffer *words)
{
    markup_words(html, buffer_text(words));
    html->failed = html->failed || buffer_failed(words);
    buffer_clear(words);
}

void web_element(Markup *html, const char *element, const char *class, Buffer *words)
{
    html->failed = html->failed || buffer_failed(words);
    if (words->length)
        markup_element(html, element, class, words->text);
    buffer_clear(words);
}

const char *web_heading(const Web *web, int below)
{
    static const char *const levels[] = {"h1", "h2", "h3", "h4"};
    int level = below + (web->shown->of > 1);
    return levels[level < 3 ? level : 3];
}

static void skip_link(Markup *html, spz_language language)
{
    markup_open_class(html, "a", "skip");
    markup_put(html, "href", "#main");
    markup_words(html, phrase_text(language, PHRASE_NAV_SKIP));
    markup_close(html);
}

/* The title of a page beside this one: without the work, where that is this page's too; `told` where it has none. */
static const char *along_title(const char *title, const char *work, const char *told)
{
    if (!title || !*title)
        return told;
    size_t length = strlen(work);
    return length && strncmp(title, work, length) == 0 && strncmp(title + length, ": ", 2) == 0 && title[length + 2] ? title + length + 2 : title;
}

/* Back to the overview, and to the pages before and after, by their titles. */
static void ways(Markup *html, const spz_report_options *options, const char *work)
{
    spz_language language = options->language;
    const char *before = phrase_text(language, PHRASE_NAV_BEFORE), *after = phrase_text(language, PHRASE_NAV_AFTER);
    if (!options->overview && !options->before && !options->after && !options->season && !options->work)
        return;
    ways_begin(html, language, options->overview);
    way_to(html, options->season, phrase_text(language, PHRASE_WEB_INDEX_SEASON));
    way_to(html, options->work, phrase_text(language, PHRASE_PAGE_WORK));
    way_along(html, "before", options->before, along_title(options->before_title, work, before), before);
    way_along(html, "after", options->after, along_title(options->after_title, work, after), after);
    ways_end(html);
}

const char *web_own_title(const ShownMovement *shown)
{
    return along_title(shown->title, shown->reading.movement->work, shown->title);
}

const char *web_work(const ShownMovement *shown)
{
    return web_own_title(shown) == shown->title ? "" : shown->reading.movement->work;
}

static void work_line(const Web *web)
{
    Markup *html = web->html;
    char composer[SOURCE_TEXT];
    const char *work = web_work(web->shown);
    words_composer(web->movement, composer);
    if (!*composer && !*work)
        return;
    markup_open_class(html, "p", "work");
    markup_words(html, composer);
    markup_words(html, *composer && *work ? ", " : "");
    markup_words(html, work);
    markup_close(html);
}

static void fact(Markup *html, const char *figure, const char *about)
{
    markup_open(html, "div");
    markup_element(html, "dt", NULL, about);
    markup_element(html, "dd", NULL, figure);
    markup_close(html);
}

static void facts(const Web *web)
{
    Markup *html = web->html;
    spz_language language = web->view.language;
    double seconds = spz_movement_duration(web->movement);
    Buffer clock = {0};
    char number[32];
    markup_open_class(html, "dl", "facts");
    int year = spz_verdict_by_year(web->view.verdict).year;
    snprintf(number, sizeof number, "%d", year);
    fact(html, year ? number : "?", phrase_text(language, year ? PHRASE_FIRST_COMPOSED : PHRASE_FIRST_YEAR_UNKNOWN));
    snprintf(number, sizeof number, "%zu", web->movement->bar_count);
    Slot bars = slot_number("n", (long)web->movement->bar_count);
    say(&clock, language, PHRASE_FIRST_BARS, &bars, 1);
    fact(html, number, buffer_text(&clock));
    buffer_clear(&clock);
    if (seconds > 0 && web->movement->tempo_count) {
        say_clock(&clock, language, seconds);
        fact(html, buffer_text(&clock), phrase_text(language, PHRASE_FIRST_LASTS));
    }
    markup_close(html);
    buffer_let_go(html, &clock);
}

static void masthead(const Web *web)
{
    Markup *html = web->html;
    markup_open_class(html, "div", "mast");
    markup_open(html, "div");
    work_line(web);
    markup_element(html, web_heading(web, 0), "title", web_own_title(web->shown));
    markup_close(html);
    facts(web);
    markup_close_line(html);
}

/* From where the reading comes, and how the parts were understood. */
static void about_reading(const Web *web)
{
    size_t count = web->map->group_count;
    spz_language language = web->view.language;
    Markup *html = web->html;
    Buffer names = {0};
    for (size_t i = 0; i < count; i++) {
        char name[WORDS_TEXT];
        buffer_printf(&names, "%s%s", i ? ", " : "", words_body(language, &web->map->groups[i].about, name));
    }
    markup_open_class(html, "p", "small soft");
    WEB_SAY(html, language, PHRASE_FIRST_READ_FROM, slot_text("file", web->shown->file));
    markup_words(html, " ");
    WEB_SAY(html, language, count ? PHRASE_PAGE_SECTIONS : PHRASE_PAGE_NO_SECTIONS, slot_text("names", names.text), slot_alone(web->map));
    if (web->report->options.house_rules) {
        markup_words(html, " ");
        WEB_SAY(html, language, PHRASE_PAGE_HOUSE_RULES, slot_text("file", web->report->options.house_rules));
    }
    markup_close_line(html);
    buffer_let_go(html, &names);
}

static void movement_section(const Web *web)
{
    Markup *html = web->html;
    markup_open_class(html, "section", "movement");
    markup_put_format(html, "id", "m%zu", web->shown->number);
    markup_put(html, "aria-label", web->shown->title);
    masthead(web);
    web_first_screen(web);
    web_why(web);
    web_two_seatings(web);
    if (web->map->group_count)
        web_passages(web);
    web_stage(web);
    web_rehearsal(web);
    about_reading(web);
    markup_close(html);
    markup_raw(html, "\n");
}

static void page_movement(spz_report *report, const ShownMovement *shown)
{
    Web web = {.html = &report->html, .report = report, .shown = shown, .map = shown->reading.sections, .movement = shown->reading.movement,
               .view = score_view(&report->html, &report->options, shown)};
    web_engrave(&web);
    movement_section(&web);
    web_engraved_free(&web);
}

static void begin(spz_report *report)
{
    (void)report;
}

/* The page is named after its first movement. */
static void begin_once(spz_report *report, const ShownMovement *first)
{
    spz_language language = report->options.language;
    Markup *html = &report->html;
    char key[SHA256_TEXT];
    if (report->movements > 0)
        return;
    PageHead head = head_of(language, report->options.brief || !first ? phrase_text(language, PHRASE_WEB_INDEX) : first->title, web_sound_key(&report->options, key));
    markup_page_begin(html, &head);
    skip_link(html, language);
    markup_open(html, "header");
    ways(html, &report->options, first ? first->reading.movement->work : "");
    if (!report->options.brief && first && first->of > 1) {
        const char *work = first->reading.movement->work;
        markup_element(html, "h1", "title", *work ? work : first->file);
    }
    markup_close(html);
    markup_open(html, "main");
    markup_put(html, "id", "main");
    markup_line_end(html);
    if (report->options.brief)
        web_index_head(report);
}

static void movement(spz_report *report, const ShownMovement *shown)
{
    begin_once(report, shown);
    if (report->options.brief)
        web_index_row(report, shown);
    else
        page_movement(report, shown);
}

/* With what goes with every proposal for a stage. */
static void end(spz_report *report)
{
    spz_language language = report->options.language;
    char key[SHA256_TEXT];
    PageHead head = head_of(language, "", web_sound_key(&report->options, key));
    Markup *html = &report->html;
    begin_once(report, NULL);
    if (report->options.brief)
        web_index_end(report);
    markup_close(html);
    markup_open(html, "footer");
    markup_element(html, "p", NULL, report_cautions(language));
    markup_close(html);
    markup_page_end(html, &head);
}

const Form html_movements = {begin, movement, end};
