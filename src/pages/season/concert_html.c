/* The page of one concert: the evening by minutes, what one seating gives up, what each way of seating it costs, the stage before and after each
 * change, the programme. */
#include "pages/drawings/stage/stage_picture.h"
#include "pages/season/concert_page.h"
#include "pages/own_texts.h"
#include "pages/page_heads.h"
#include "pages/page_names.h"
#include "pages/season_forms.h"
#include "spezzato/report.h"
#include "season/planning/season_plan.h"
#include "wording/seasons/evening_words.h"
#include "wording/papers/notes_words.h"
#include "wording/seatings/seating_words.h"
#include <stdio.h>
#include <string.h>

void concert_put(ConcertPage *page, const char *element, const char *class)
{
    if (page->words.length)
        markup_element(&page->html, element, class, page->words.text);
    page->html.failed = page->html.failed || buffer_failed(&page->words);
    buffer_clear(&page->words);
}

void concert_phrase(ConcertPage *page, const char *element, const char *class, Phrase phrase)
{
    markup_element(&page->html, element, class, phrase_text(page->language, phrase));
}

void concert_link(ConcertPage *page, const char *class, const spz_planned_movement *movement)
{
    char name[512];
    page_link_open(&page->html, class, page_name_of(page->pages, movement->file, name, sizeof name), movement->number, 0);
}

static void picture(ConcertPage *page, const char *seating, bool two, StageSize size)
{
    const spz_plan *plan = hall_plan_named(page->hall, seating, two);
    if (plan)
        stage_picture(&page->html, page->language, plan, NULL, size);
}

/* To the concert before or after this one; nothing where there is none. */
static void way_to_concert(ConcertPage *page, const char *kind, size_t index)
{
    char name[40];
    const spz_planned_concert *concert = index < spz_season_concerts(page->season) ? spz_season_concert(page->season, index) : NULL;
    if (concert)
        way_along(&page->html, kind, spz_report_concert_name(index, name, sizeof name), *concert->name ? concert->name : phrase_text(page->language, PHRASE_SEASON_UNNAMED), NULL);
}

static void ways(ConcertPage *page)
{
    ways_begin(&page->html, page->language, "index.html");
    way_to(&page->html, "season.html", phrase_text(page->language, PHRASE_SEASON_TITLE_PAGE));
    way_to_concert(page, "before", page->index - 1);
    way_to_concert(page, "after", page->index + 1);
    ways_end(&page->html);
}

static void fact(ConcertPage *page, Phrase about, long figure)
{
    Markup *html = &page->html;
    markup_open(html, "div");
    SAY(&page->words, page->language, about, slot_number("n", figure));
    concert_put(page, "dt", NULL);
    markup_open(html, "dd");
    markup_format(html, "%ld", figure);
    markup_close(html);
    markup_close(html);
}

static void mast(ConcertPage *page)
{
    Markup *html = &page->html;
    const spz_planned_concert *c = page->concert;
    size_t movements = 0;
    for (size_t i = 0; i < c->work_count; i++)
        movements += c->works[i].movement_count;
    markup_open_class(html, "header", "mast");
    markup_open(html, "div");
    markup_element(html, "h1", "title", *c->name ? c->name : phrase_text(page->language, PHRASE_SEASON_UNNAMED));
    say_when_where(&page->words, page->language, c);
    concert_put(page, "p", "work");
    markup_close(html);
    markup_open_class(html, "dl", "facts");
    fact(page, PHRASE_CONCERT_WORKS, (long)c->work_count);
    fact(page, PHRASE_CONCERT_MOVEMENTS, (long)movements);
    fact(page, PHRASE_CONCERT_CHANGES, (long)c->change_count);
    markup_close(html);
    markup_close_line(html);
}

/* Under the heading that names it. */
static void say_it_gives_up(ConcertPage *page)
{
    const spz_other_plan *plan = &page->concert->unchanged;
    Buffer points = {0};
    if (!plan->seating || chamber_alone(page->concert)) {
        say_one_seating(&page->words, page->language, page->concert);
        return;
    }
    say_points(&points, page->language, plan->points);
    SAY(&page->words, page->language, plan->points > 0 ? PHRASE_CONCERT_IT_GIVES_UP : PHRASE_CONCERT_IT_GIVES_UP_NOTHING, slot_text("points", points.text));
    buffer_let_go(&page->html, &points);
}

/* One seating, and what it gives up. */
static void one_seating(ConcertPage *page)
{
    Markup *html = &page->html;
    const spz_other_plan *plan = &page->concert->unchanged;
    markup_open(html, "section");
    if (plan->seating && !chamber_alone(page->concert)) {
        SAY(&page->words, page->language, PHRASE_CONCERT_ALL_EVENING, slot_text("arrangement", words_arrangement(page->language, plan->seating)));
        concert_put(page, "h2", NULL);
    }
    say_it_gives_up(page);
    concert_put(page, "p", "said");
    say_interval_gain(&page->words, page->language, page->concert);
    concert_put(page, "p", interval_is_planned(page->concert) ? "said planned" : "said");
    concert_evening(page);
    if (plan->points > 0) {
        markup_open_class(html, "ul", "given-up");
        for (size_t i = 0; i < plan->movement_count; i++) {
            say_given_up_by(&page->words, page->language, &plan->movements[i]);
            concert_put(page, "li", NULL);
        }
        markup_close(html);
    }
    markup_close_line(html);
}

/* What each way of seating the evening costs, as bars of one scale. */

typedef struct Cost {
    double points, price;
    Phrase name;
    const char *seating;
} Cost;

static void cost_row(ConcertPage *page, const Cost *cost, double most)
{
    Markup *html = &page->html;
    Buffer points = {0}, price = {0};
    say_points(&points, page->language, cost->points);
    say_points(&price, page->language, cost->price);
    markup_open_class(html, "div", "cost");
    SAY(&page->words, page->language, cost->name, slot_text("arrangement", cost->seating ? words_arrangement(page->language, cost->seating) : ""));
    concert_put(page, "p", NULL);
    markup_open_class(html, "div", "cost-bar");
    markup_put(html, "aria-hidden", "true");
    markup_open_class(html, "span", "solid");
    markup_put_format(html, "style", "width:%ld%%", (long)(most > 0 ? 60 * cost->points / most + 0.5 : 0));
    markup_close(html);
    markup_open_class(html, "span", "hollow");
    markup_put_format(html, "style", "width:%ld%%", (long)(most > 0 ? 60 * cost->price / most + 0.5 : 0));
    markup_close(html);
    markup_close(html);
    SAY(&page->words, page->language, cost->price > 0 ? PHRASE_CONCERT_COST_PRICED : PHRASE_CONCERT_COST, slot_text("points", points.text), slot_text("price", price.text));
    concert_put(page, "p", "cost-words");
    markup_close(html);
    buffers_let_go(&page->html, &points, &price);
}

static void costs(ConcertPage *page)
{
    const spz_planned_concert *c = page->concert;
    Cost all[3];
    size_t count = 0;
    double most = 0;
    if (c->unchanged.possible)
        all[count++] = (Cost){c->unchanged.points, c->unchanged.price, PHRASE_CONCERT_WAY_ONE, c->unchanged.seating};
    if (c->at_interval.possible && !(c->change_count == 1 && c->changes[0].gap == SPZ_AT_INTERVAL && !strcmp(c->changes[0].to, c->at_interval.change->to)))
        all[count++] = (Cost){c->at_interval.points, c->at_interval.price, PHRASE_CONCERT_WAY_INTERVAL, NULL};
    all[count++] = (Cost){c->points, c->price, PHRASE_CONCERT_WAY_PLANNED, NULL};
    for (size_t i = 0; i < count; i++)
        most = all[i].points + all[i].price > most ? all[i].points + all[i].price : most;
    if (!(most > 0))
        return;
    markup_open_class(&page->html, "section", "part");
    concert_phrase(page, "h2", NULL, PHRASE_CONCERT_COSTS);
    concert_phrase(page, "p", "lead", PHRASE_CONCERT_COSTS_ABOUT);
    for (size_t i = 0; i < count; i++)
        cost_row(page, &all[i], most);
    markup_close_line(&page->html);
}

/* A change: the stage before with the ways, what is to be done, the stage after with who has moved outlined. */

static void todo(ConcertPage *page, const spz_changeover *change)
{
    static void (*const last[])(Buffer *, spz_language, const spz_changeover *) = {say_desks_of, say_change_remark};
    Markup *html = &page->html;
    Buffer load = {0}, minutes = {0};
    say_load(&load, page->language, change);
    say_minutes(&minutes, page->language, change->minutes);
    markup_open_class(html, "div", "todo");
    SAY(&page->words, page->language, PHRASE_CONCERT_LOAD, slot_text("load", load.text), slot_text("minutes", minutes.text));
    concert_put(page, "p", "load");
    markup_open(html, "ul");
    say_orchestras(&page->words, page->language, change);
    concert_put(page, "li", NULL);
    for (size_t i = 0; i < change->move_count; i++) {
        say_move(&page->words, page->language, &change->moves[i]);
        concert_put(page, "li", NULL);
    }
    markup_close(html);
    for (size_t i = 0; i < sizeof last / sizeof *last; i++) {
        last[i](&page->words, page->language, change);
        concert_put(page, "p", "small soft");
    }
    markup_close(html);
    buffers_let_go(&page->html, &load, &minutes);
}

static unsigned moved_by(const spz_changeover *change)
{
    unsigned moved = 0;
    for (size_t i = 0; i < change->move_count; i++)
        moved |= 1u << change->moves[i].section;
    return moved;
}

static void stage_side(ConcertPage *page, const spz_changeover *change, bool after)
{
    Markup *html = &page->html;
    const spz_plan *before = hall_plan_named(page->hall, change->from, change->two_before), *later = hall_plan_named(page->hall, change->to, change->two_after);
    markup_open_class(html, "figure", after ? "after" : "before");
    if (before && later)
        stage_picture_change(html, page->language, before, later, moved_by(change), after);
    markup_open(html, "figcaption");
    markup_element(html, "strong", NULL, phrase_text(page->language, after ? PHRASE_CONCERT_AFTER : PHRASE_CONCERT_BEFORE));
    markup_words(html, " ");
    markup_words(html, words_arrangement(page->language, after ? change->to : change->from));
    markup_close(html);
    markup_close(html);
}

static void change_part(ConcertPage *page, const spz_changeover *change)
{
    Markup *html = &page->html;
    markup_open_class(html, "section", "part");
    say_change_place(&page->words, page->language, change);
    concert_put(page, "h2", NULL);
    markup_open_class(html, "div", "change");
    stage_side(page, change, false);
    todo(page, change);
    stage_side(page, change, true);
    markup_close(html);
    markup_close_line(html);
}

/* The programme, in playing order. */

static void programme_movement(ConcertPage *page, const spz_planned_work *work, size_t place)
{
    Markup *html = &page->html;
    const spz_planned_movement *movement = &work->movements[place];
    markup_open(html, "li");
    markup_open_class(html, "span", "which");
    concert_link(page, NULL, movement);
    markup_words(html, season_movement_own_title(work, place));
    markup_close(html);
    markup_close(html);
    say_clock(&page->words, page->language, movement->seconds);
    concert_put(page, "span", "clock");
    markup_element(html, movement->judged && movement->statement.confidence == SPZ_FIRM ? "strong" : "span", NULL,
                 movement->judged ? phrase_text(page->language, (Phrase)(PHRASE_SEASON_CONFIDENCE_OPEN + movement->statement.confidence)) : "-");
    say_given_up_there(&page->words, page->language, movement);
    concert_put(page, "span", "gives");
    markup_close(html);
}

static void programme_work(ConcertPage *page, size_t place)
{
    const spz_planned_work *work = &page->concert->works[place];
    Markup *html = &page->html;
    markup_open_class(html, "li", "programme-work");
    picture(page, work->seating, work->two_orchestras, STAGE_GLYPH);
    markup_open_class(html, "div", "about-work");
    markup_element(html, "h3", NULL, work->title);
    if (work->year || *work->note) {
        if (work->year)
            buffer_printf(&page->words, "%d%s", work->year, *work->note ? phrase_text(page->language, PHRASE_LIST_PART) : "");
        buffer_puts(&page->words, work->note);
        concert_put(page, "p", "small soft");
    }
    buffer_puts(&page->words, words_arrangement(page->language, work->seating));
    concert_put(page, "p", NULL);
    say_evidence(&page->words, page->language, work);
    concert_put(page, "p", "small soft");
    markup_close(html);
    markup_open_class(html, "ol", "movements");
    for (size_t i = 0; i < work->movement_count; i++)
        programme_movement(page, work, i);
    markup_close(html);
    markup_close(html);
    if (work->interval_after)
        concert_phrase(page, "li", "interval-line", PHRASE_CONCERT_INTERVAL);
}

static void programme(ConcertPage *page)
{
    markup_open_class(&page->html, "section", "part");
    concert_phrase(page, "h2", NULL, PHRASE_CONCERT_PROGRAMME);
    markup_open_class(&page->html, "ol", "programme");
    for (size_t i = 0; i < page->concert->work_count; i++)
        programme_work(page, i);
    markup_close(&page->html);
    markup_close_line(&page->html);
}

static void planned(ConcertPage *page)
{
    one_seating(page);
    if (!chamber_alone(page->concert))
        costs(page);
    for (size_t i = 0; i < page->concert->change_count; i++)
        change_part(page, &page->concert->changes[i]);
    programme(page);
    if (page->concert->setup)
        change_part(page, page->concert->setup);
}

char *spz_report_concert_name(size_t index, char *out, size_t size)
{
    snprintf(out, size, "concert-%zu.html", index + 1);
    return out;
}

void concert_html(const spz_season *season, size_t index, const spz_season_look *look, Buffer *out)
{
    const spz_planned_concert *concert = spz_season_concert(season, index);
    ConcertPage page = {.language = look->language, .season = season, .pages = look->pages, .index = index, .hall = season->drafts[index].hall, .concert = concert, .strips = look->strips};
    page.head = page_head(look->language, *concert->name ? concert->name : phrase_text(look->language, PHRASE_SEASON_UNNAMED), text_concert_css);
    buffer_init(&page.words);
    markup_begin(&page.html, out);
    markup_page_begin(&page.html, &page.head);
    markup_open(&page.html, "header");
    ways(&page);
    markup_close(&page.html);
    markup_open(&page.html, "main");
    mast(&page);
    if (concert->problem) {
        say_not_planned(&page.words, page.language, concert);
        concert_put(&page, "p", NULL);
    } else {
        planned(&page);
    }
    markup_close(&page.html);
    markup_open(&page.html, "footer");
    concert_phrase(&page, "p", NULL, PHRASE_CAUTIONS);
    markup_close(&page.html);
    markup_page_end(&page.html, &page.head);
    markup_end(&page.html);
    buffer_free(&page.words);
}
