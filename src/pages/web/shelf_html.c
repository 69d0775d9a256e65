/* A library's answers as a page: one table whose rows can be sorted and filtered; without its script all of it stands there in order. */
#include "pages/own_texts.h"
#include "pages/page_heads.h"
#include "pages/shelf_forms.h"
#include "wording/phrase.h"
#include "wording/seatings/seating_words.h"
#include "wording/seasons/shelf_words.h"

typedef struct Page {
    Markup html;
    const spz_shelf *shelf;
    spz_language language;
    bool points, passages; /* columns that there is something to put in */
    Buffer words; /* under way */
} Page;

static const char *take_words(Page *page)
{
    return buffer_text(&page->words);
}

/* The words under way as one element. */
static void end_words(Page *page, const char *element, const char *class)
{
    markup_element(&page->html, element, class, take_words(page));
    buffer_clear(&page->words);
}

static void put_heads(Page *page)
{
    const struct { Phrase phrase; bool is; } heads[] = {{PHRASE_LIBRARY_HEAD_COMPOSER, true}, {PHRASE_LIBRARY_HEAD_WORK, true}, {PHRASE_LIBRARY_HEAD_YEAR, true},
                                                        {PHRASE_LIBRARY_HEAD_LASTS, true}, {PHRASE_LIBRARY_HEAD_SEATING, true},
                                                        {PHRASE_LIBRARY_HEAD_POINTS, page->points}, {PHRASE_LIBRARY_HEAD_PASSAGES, page->passages}};
    markup_open(&page->html, "thead");
    markup_open(&page->html, "tr");
    for (size_t i = 0; i < sizeof heads / sizeof heads[0]; i++) {
        if (!heads[i].is)
            continue;
        markup_open(&page->html, "th");
        markup_put(&page->html, "scope", "col");
        markup_open(&page->html, "button");
        markup_put(&page->html, "type", "button");
        markup_words(&page->html, phrase_text(page->language, heads[i].phrase));
        markup_close(&page->html);
        markup_close(&page->html);
    }
    markup_close(&page->html);
    markup_close_line(&page->html);
}

static void put_figure(Page *page, double value, int places, bool there)
{
    if (there)
        say_figure(&page->words, page->language, value, places);
    end_words(page, "td", "figure");
}

/* What is given up and how many passages were found, where the page has these columns. */
static void put_ends(Page *page, double points, bool gives_up, size_t found)
{
    if (page->points)
        put_figure(page, points, 1, gives_up);
    if (page->passages)
        put_figure(page, (double)found, 0, found > 0);
}

static void put_length(Page *page, double seconds, size_t unknown)
{
    say_shelf_length(&page->words, page->language, seconds, unknown);
    end_words(page, "td", "figure");
}

static size_t passages_of(const spz_shelf_work *work)
{
    size_t count = 0;
    for (size_t i = 0; i < work->movement_count; i++)
        count += work->movements[i].found;
    return count;
}

/* What the rows are sorted by, column by column. */
static void put_keys(Page *page, const spz_shelf_work *work)
{
    Markup *html = &page->html;
    const spz_shelf_movement *first = work->movement_count ? work->movements : NULL;
    markup_put(html, "data-k0", work->composer);
    markup_put(html, "data-k1", work->name);
    markup_put_number(html, "data-k2", work->year, 0);
    markup_put_number(html, "data-k3", work->seconds, 1);
    markup_put(html, "data-k4", *work->seating ? work->seating : first ? first->arrangement : "");
    if (page->points)
        markup_put_number(html, "data-k5", work->points + work->partner, 2);
    if (page->passages)
        markup_put_number(html, page->points ? "data-k6" : "data-k5", (double)passages_of(work), 0);
}

static void put_seating(Page *page, const char *arrangement)
{
    markup_element(&page->html, "td", NULL, *arrangement ? words_arrangement(page->language, arrangement) : "");
}

static void put_work(Page *page, const spz_shelf_work *work)
{
    markup_open_class(&page->html, "tr", "work");
    markup_element(&page->html, "td", NULL, work->composer);
    markup_open(&page->html, "th");
    markup_put(&page->html, "scope", "row");
    markup_words(&page->html, work->name);
    say_shelf_needs(&page->words, page->language, work);
    end_words(page, "div", "small");
    markup_close(&page->html);
    if (work->year)
        markup_open(&page->html, "td"), markup_format(&page->html, "%d", work->year), markup_close(&page->html);
    else
        markup_element(&page->html, "td", NULL, "");
    put_length(page, work->seconds, work->lengths_unknown);
    put_seating(page, work->seating);
    put_ends(page, work->points + work->partner, *work->seating != '\0', passages_of(work));
    markup_close_line(&page->html);
}

static void put_movement(Page *page, const spz_shelf_work *work, const spz_shelf_movement *movement)
{
    markup_open_class(&page->html, "tr", "movement");
    markup_element(&page->html, "td", NULL, "");
    markup_open(&page->html, "th");
    markup_put(&page->html, "scope", "row");
    markup_words(&page->html, words_shelf_title(work, movement));
    say_shelf_passages(&page->words, page->language, movement);
    end_words(page, "div", "small");
    say_shelf_losses(&page->words, page->language, movement->weakens);
    end_words(page, "div", "small");
    markup_close(&page->html);
    markup_element(&page->html, "td", NULL, "");
    put_length(page, movement->seconds, 0);
    put_seating(page, movement->arrangement);
    put_ends(page, movement->points, movement->points > 0, movement->found);
    markup_close_line(&page->html);
}

static void put_filter(Page *page)
{
    Markup *html = &page->html;
    markup_open_class(html, "form", "filters");
    markup_put(html, "hidden", "hidden");
    markup_open(html, "label");
    markup_words(html, phrase_text(page->language, PHRASE_LIBRARY_FILTER));
    markup_open(html, "input");
    markup_put(html, "name", "words");
    markup_put(html, "type", "search");
    markup_close_void(html);
    markup_close(html);
    markup_open(html, "output");
    markup_put(html, "data-words", phrase_text(page->language, PHRASE_LIBRARY_SHOWN));
    markup_close(html);
    markup_element(html, "span", "small", phrase_text(page->language, PHRASE_LIBRARY_SORT));
    markup_close_line(html);
}

static void put_table(Page *page)
{
    markup_open_class(&page->html, "div", "scroll");
    markup_open_class(&page->html, "table", "shelf");
    put_heads(page);
    for (size_t i = 0; i < spz_shelf_count(page->shelf); i++) {
        const spz_shelf_work *work = spz_shelf_at(page->shelf, i);
        markup_open(&page->html, "tbody");
        put_keys(page, work);
        markup_line_end(&page->html);
        put_work(page, work);
        for (size_t m = 0; m < work->movement_count; m++)
            put_movement(page, work, &work->movements[m]);
        markup_close_line(&page->html);
    }
    markup_close(&page->html);
    markup_close(&page->html);
}

void shelf_html(const spz_shelf *shelf, const spz_season_look *look, Buffer *out)
{
    spz_shelf_kind kind = spz_shelf_kind_of(shelf);
    Page page = {.shelf = shelf, .language = look->language, .points = kind == SPZ_SHELF_FITS || kind == SPZ_SHELF_PARTNERS};
    for (size_t i = 0; i < spz_shelf_count(shelf) && !page.passages; i++)
        page.passages = passages_of(spz_shelf_at(shelf, i)) > 0;
    PageHead head = page_head(look->language, phrase_text(look->language, PHRASE_LIBRARY_TITLE), text_page_css);
    head.more_style = text_library_css;
    head.script = text_library_js;
    buffer_init(&page.words);
    markup_begin(&page.html, out);
    markup_page_begin(&page.html, &head);
    markup_open(&page.html, "main");
    markup_element(&page.html, "h1", NULL, head.title);
    say_shelf_question(&page.words, page.language, shelf);
    end_words(&page, "p", NULL);
    if (spz_shelf_count(shelf) > 0) {
        put_filter(&page);
        put_table(&page);
    }
    markup_element(&page.html, "p", "small", phrase_text(look->language, PHRASE_CAUTIONS));
    markup_close(&page.html);
    markup_page_end(&page.html, &head);
    page.html.failed = page.html.failed || buffer_failed(&page.words);
    markup_end(&page.html);
    buffer_free(&page.words);
}
