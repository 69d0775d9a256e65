/* The evening of a concert by minutes: each movement as a strip, as long as it lasts, with what one seating would weaken at its bars. The strips are drawn
 * when the scores are read, and wait here for the page. */
#include "pages/drawings/strip.h"
#include "pages/season/concert_page.h"
#include "support/array.h"
#include "wording/papers/notes_words.h"
#include "wording/seasons/evening_words.h"
#include "wording/seatings/seating_words.h"
#include <string.h>

typedef struct Drawn {
    Buffer file, strip;
    size_t number;
} Drawn;

struct spz_strips {
    spz_report_options options;
    ARRAY(Drawn) drawn;
};

spz_status spz_strips_new(const spz_report_options *options, spz_strips **out)
{
    *out = memory_get(sizeof **out);
    if (!*out)
        return SPZ_NO_MEMORY;
    **out = (spz_strips){.options = options ? *options : SPZ_REPORT_USUAL};
    return SPZ_OK;
}

/* Under the name that the movement has in its score; the page of the concert names it again. */
static void draw_strip(const spz_strips *strips, const ShownMovement *shown, Buffer *out)
{
    Markup html;
    markup_begin(&html, out);
    ScoreView view = score_view(&html, &strips->options, shown);
    strip_thumb(&view, shown->title, false);
    markup_end(&html);
}

spz_status spz_strips_add(spz_strips *strips, const spz_reading *reading)
{
    for (size_t i = 0; i < spz_reading_count(reading); i++) {
        ShownMovement shown = shown_movement(reading, i);
        Drawn drawn = {.number = shown.number};
        if (!shown.reading.verdict)
            return SPZ_BAD_ARGUMENT;
        buffer_init(&drawn.file);
        buffer_init(&drawn.strip);
        buffer_puts(&drawn.file, shown.path);
        draw_strip(strips, &shown, &drawn.strip);
        if (buffer_failed(&drawn.file) || buffer_failed(&drawn.strip) || !array_push(&strips->drawn, drawn)) {
            buffer_free(&drawn.file);
            buffer_free(&drawn.strip);
            return SPZ_NO_MEMORY;
        }
    }
    return SPZ_OK;
}

void spz_strips_free(spz_strips *strips)
{
    if (!strips)
        return;
    for (size_t i = 0; i < strips->drawn.count; i++) {
        buffer_free(&strips->drawn.at[i].file);
        buffer_free(&strips->drawn.at[i].strip);
    }
    array_free(&strips->drawn);
    memory_free(strips);
}

/* NULL where it was not drawn. */
static const char *strips_find(const spz_strips *strips, const spz_planned_movement *movement)
{
    for (size_t i = 0; strips && i < strips->drawn.count; i++)
        if (strips->drawn.at[i].number == movement->number && strcmp(strips->drawn.at[i].file.text, movement->file) == 0)
            return strips->drawn.at[i].strip.text;
    return NULL;
}

static const spz_planned_movement *in_one_seating(const ConcertPage *page, size_t place)
{
    const spz_other_plan *plan = &page->concert->unchanged;
    return plan->possible && place < plan->movement_count ? &plan->movements[place] : NULL;
}

static double seconds_of(const spz_planned_work *work)
{
    double seconds = 0;
    for (size_t i = 0; i < work->movement_count; i++)
        seconds += work->movements[i].seconds;
    return seconds > 1 ? seconds : 60; /* a work of which nothing is known takes some room all the same */
}

/* What one seating weakens in it, at its bars. */
static void lost_lines(Markup *html, const spz_planned_movement *one)
{
    static const double line = 2; /* pixels from the top */
    double bars = (double)one->bars;
    markup_open_class(html, "svg", "lost-bars lost");
    markup_put(html, "height", "5");
    markup_put(html, "aria-hidden", "true");
    for (size_t i = 0; i < one->loss_count; i++) {
        const spz_loss *loss = &one->losses[i];
        if (loss->throughout)
            draw_across(html, "lost-line", 0, 1, line, line);
        for (size_t k = 0; k < loss->basis.bar_count; k++)
            draw_across(html, "lost-line", (double)loss->basis.bars[k].first / bars, (double)(loss->basis.bars[k].last + 1) / bars, line, line);
    }
    markup_close(html);
}

/* '1:20 of 2:40' where one seating gives something up. */
static void lasts(ConcertPage *page, const spz_planned_movement *movement, const spz_planned_movement *one)
{
    Buffer lost = {0};
    if (!one || !(one->lost_seconds > 0)) {
        say_clock(&page->words, page->language, movement->seconds);
        concert_put(page, "span", "clock");
        return;
    }
    say_clock(&lost, page->language, one->lost_seconds);
    Buffer whole = {0};
    say_clock(&whole, page->language, movement->seconds);
    SAY(&page->words, page->language, PHRASE_CONCERT_LOST_OF, slot_text("lost", lost.text), slot_text("whole", whole.text));
    concert_put(page, "span", "clock");
    buffers_let_go(&page->html, &lost, &whole);
}

static void strip_movement(ConcertPage *page, const spz_planned_movement *movement, const spz_planned_movement *one)
{
    Markup *html = &page->html;
    const char *drawing = strips_find(page->strips, movement);
    markup_open_class(html, "li", "piece");
    markup_put_format(html, "style", "flex-grow:%ld", (long)(movement->seconds > 1 ? movement->seconds : 1));
    concert_link(page, drawing ? "play drawn" : "play", movement);
    markup_put(html, "title", season_movement_title(movement));
    if (drawing)
        markup_raw(html, drawing);
    if (one && one->loss_count && one->bars)
        lost_lines(html, one);
    markup_element(html, "span", "unseen", season_movement_title(movement));
    markup_close(html);
    lasts(page, movement, one);
    markup_close(html);
}

static double lost_points(const ConcertPage *page, size_t first, size_t count)
{
    double points = 0;
    for (size_t i = 0; i < count; i++)
        points += in_one_seating(page, first + i) ? in_one_seating(page, first + i)->points : 0;
    return points;
}

/* One way of seating the work; a narrow screen, which has no names beside the rows, puts the row's name before it. */
static void seated_row(ConcertPage *page, const char *class, Phrase row)
{
    markup_open_class(&page->html, "p", class);
    markup_put(&page->html, "data-row", phrase_text(page->language, row));
    markup_words(&page->html, page->words.text);
    markup_close(&page->html);
    page->html.failed = page->html.failed || buffer_failed(&page->words);
    buffer_clear(&page->words);
}

static void strip_work(ConcertPage *page, size_t place, size_t first)
{
    const spz_planned_work *work = &page->concert->works[place];
    Markup *html = &page->html;
    double lost = lost_points(page, first, work->movement_count);
    markup_open_class(html, "li", "on-strip");
    markup_put_format(html, "style", "flex-grow:%ld", (long)seconds_of(work));
    markup_element(html, "p", "of", work->title);
    markup_open_class(html, "ol", "pieces");
    for (size_t i = 0; i < work->movement_count; i++)
        strip_movement(page, &work->movements[i], in_one_seating(page, first + i));
    markup_close(html);
    buffer_puts(&page->words, words_arrangement(page->language, work->seating));
    seated_row(page, "seated", PHRASE_CONCERT_AS_PLANNED);
    if (page->concert->unchanged.possible && lost >= SAID_POINTS) {
        Buffer points = {0};
        say_points(&points, page->language, lost);
        SAY(&page->words, page->language, PHRASE_CONCERT_GIVES_UP, slot_text("points", points.text));
        seated_row(page, "seated given", PHRASE_CONCERT_ONE_SEATING);
        buffer_let_go(&page->html, &points);
    } else if (page->concert->unchanged.possible) {
        buffer_puts(&page->words, words_arrangement(page->language, page->concert->unchanged.seating && !work->chamber ? page->concert->unchanged.seating : work->seating));
        seated_row(page, "seated one", PHRASE_CONCERT_ONE_SEATING);
    }
    markup_close(html);
    if (work->interval_after)
        concert_phrase(page, "li", "pause", PHRASE_CONCERT_INTERVAL);
}

/* The rows of a strip, then those of the two ways of seating. */
static void names(ConcertPage *page)
{
    Markup *html = &page->html;
    char name[WORDS_TEXT];
    markup_open_class(html, "div", "rows-of");
    markup_put(html, "aria-hidden", "true");
    markup_open_class(html, "p", "of-rows");
    if (page->strips) {
        markup_element(html, "span", "vn1", words_body(page->language, &(spz_group){.section = SPZ_VN1}, name));
        markup_element(html, "span", "vn2", words_body(page->language, &(spz_group){.section = SPZ_VN2}, name));
        markup_element(html, "span", NULL, phrase_text(page->language, PHRASE_STRIP_OTHERS));
    } else {
        markup_words(html, phrase_text(page->language, PHRASE_CONCERT_MINUTES));
    }
    markup_close(html);
    concert_phrase(page, "p", "seated", PHRASE_CONCERT_AS_PLANNED);
    concert_phrase(page, "p", "seated", PHRASE_CONCERT_ONE_SEATING);
    markup_close(html);
}

void concert_evening(ConcertPage *page)
{
    Markup *html = &page->html;
    size_t first = 0;
    if (page->strips) {
        ScoreView view = {.html = html, .language = page->language};
        strip_key(&view, page->concert->unchanged.possible && page->concert->unchanged.points >= SAID_POINTS ? phrase_text(page->language, PHRASE_CONCERT_STRIP_LOST) : "", "");
    }
    markup_open_class(html, "div", "evening");
    names(page);
    markup_open_class(html, "ol", "works");
    markup_put_format(html, "style", "--works:%zu", page->concert->work_count);
    for (size_t i = 0; i < page->concert->work_count; i++) {
        strip_work(page, i, first);
        first += page->concert->works[i].movement_count;
    }
    markup_close(html);
    markup_close_line(html);
}
