/* The season on paper: the plan first, then one page for each concert's changes. One file, nothing is fetched from anywhere. */
#include "writing/markup.h"
#include "pages/growing_report.h"
#include "pages/season_forms.h"
#include "wording/season_words.h"
#include "wording/passage_words.h"
#include <string.h>

static const char styles[] =
    ":root { color-scheme: light dark; }\n"
    "body { font: 1rem/1.4 Georgia, 'DejaVu Serif', serif; max-width: 60rem; margin: 1.5rem auto; padding: 0 1rem; overflow-wrap: anywhere; }\n"
    "h1 { font-size: 1.5rem; margin: 0 0 .2rem; }\n"
    "h2 { font-size: 1.25rem; margin: 1.6rem 0 .1rem; }\n"
    "h3 { font-size: 1.05rem; margin: .2rem 0; }\n"
    "p { margin: .2rem 0; }\n"
    "ol, ul { margin: .3rem 0; padding-left: 1.6rem; }\n"
    "li { margin: .25rem 0; }\n"
    "ul.todo { list-style: none; padding-left: 1.4rem; text-indent: -1.4rem; }\n"
    "ul.todo li::before { content: ''; display: inline-block; width: .8rem; height: .8rem; border: 1px solid; margin-right: .6rem; }\n"
    ".seating { font-weight: bold; }\n"
    ".change { border-left: .3rem solid #b45309; padding: .2rem .7rem; margin: .5rem 0; }\n"
    ".interval { border-top: 1px dashed; margin: .5rem 0; padding-top: .2rem; font-style: italic; }\n"
    ".small { font-size: .85rem; }\n"
    ".cautions { font-size: .85rem; margin-top: 1rem; border-top: 1px solid #888; padding-top: .4rem; }\n"
    "@media print {\n"
    "  @page { margin: 15mm; }\n"
    "  body { max-width: none; margin: 0; padding: 0; font-size: 10.5pt; color: #000; background: #fff; }\n"
    "  section.sheet { font-size: 9.5pt; }\n"
    "  section.sheet .cautions { font-size: 7.5pt; }\n"
    "  .many { columns: 2; column-gap: 5mm; font-size: 8pt; line-height: 1.25; }\n"
    "  .many h3 { font-size: 1.1em; }\n"
    "  .many > .change { margin: 0 0 .4rem; }\n"
    "  .many li { margin: .1rem 0; }\n"
    "  section.sheet + section.sheet, section.plan + section.sheet { break-before: page; }\n"
    "  li, .change { break-inside: avoid; }\n"
    "  h1, h2, h3, h2 + p { break-after: avoid; }\n"
    "}\n";

enum { FEW_CHANGES = 2 }; /* more of them go in two columns on paper, to stay on one page */

typedef struct Page {
    Html html;
    Buffer text; /* under way */
} Page;

static void begin(Page *page, const char *title)
{
    Html *html = &page->html;
    buffer_init(&page->text);
    html_begin(html);
    html_page_head(html, title, "default-src 'none'; style-src 'unsafe-inline'"); /* nothing may be fetched */
    html_open(html, "style");
    html_raw(html, styles);
    html_close(html);
    html_close(html);
    html_open(html, "body");
}

static void finish(Page *page, Buffer *out)
{
    html_close(&page->html);
    html_close(&page->html);
    html_raw(&page->html, "\n");
    page->html.failed = page->html.failed || buffer_failed(&page->text);
    html_end(&page->html, out);
    buffer_free(&page->text);
}

/* The text under way as one element. */
static void end_text(Page *page, const char *element, const char *class)
{
    if (page->text.length)
        html_element(&page->html, element, class, page->text.text);
    buffer_clear(&page->text);
    html_raw(&page->html, "\n");
}

static void put_when_where(Page *page, const spz_planned_concert *concert)
{
    season_when_where(&page->text, concert);
    end_text(page, "p", NULL);
}

static void put_change(Page *page, const spz_changeover *change)
{
    html_open_class(&page->html, "div", "change");
    season_place(&page->text, change);
    buffer_puts(&page->text, ", ");
    season_minutes(&page->text, change->minutes);
    end_text(page, "h3", NULL);
    buffer_puts(&page->text, "F");
    season_from_to(&page->text, change);
    buffer_puts(&page->text, ".");
    end_text(page, "p", NULL);
    html_open_class(&page->html, "ul", "todo");
    season_orchestras(&page->text, change);
    end_text(page, "li", NULL);
    for (size_t i = 0; i < change->move_count; i++) {
        const spz_section_move *move = &change->moves[i];
        char name[WORDS_TEXT];
        buffer_printf(&page->text, "%s (", words_capital(spz_section_words(move->section), name, sizeof name));
        season_count(&page->text, move->players, "player", "players");
        buffer_printf(&page->text, "): from %s to %s", move->from, move->to);
        end_text(page, "li", NULL);
    }
    season_load(&page->text, change);
    buffer_printf(&page->text, " to be carried, of %d desks", change->desks);
    end_text(page, "li", NULL);
    buffer_puts(&page->text, change->remark);
    end_text(page, "li", NULL);
    html_close(&page->html);
    html_close(&page->html);
}

static void put_movement(Page *page, const spz_planned_movement *movement)
{
    if (!(movement->points > 0))
        return;
    buffer_printf(&page->text, "%s: gives up ", season_movement_title(movement));
    season_points(&page->text, movement->points);
    buffer_printf(&page->text, " against %s%s%s", movement->best, *movement->bars_lost ? "; weakened: " : "", movement->bars_lost);
    end_text(page, "li", NULL);
}

static void put_losses(Page *page, const spz_planned_work *work)
{
    season_evidence(&page->text, work);
    buffer_puts(&page->text, ".");
    season_confidence(&page->text, work);
    end_text(page, "p", "small");
    if (!(work->points > 0))
        return;
    html_open_class(&page->html, "ul", "small");
    for (size_t i = 0; i < work->movement_count; i++)
        put_movement(page, &work->movements[i]);
    html_close(&page->html);
}

/* The changes that come before the work or within it, one line each. */
static void put_changes_of(Page *page, const spz_planned_concert *concert, size_t place)
{
    for (size_t i = 0; i < concert->change_count; i++) {
        const spz_changeover *change = &concert->changes[i];
        if (change->work != place)
            continue;
        buffer_printf(&page->text, "Change %s: ", change->movement ? spz_gap_words(change->gap) : "before it");
        season_load(&page->text, change);
        buffer_puts(&page->text, ", ");
        season_minutes(&page->text, change->minutes);
        end_text(page, "p", "change small");
    }
}

static void put_work(Page *page, const spz_planned_concert *concert, size_t place, bool losses)
{
    const spz_planned_work *work = &concert->works[place];
    html_open(&page->html, "li");
    buffer_puts(&page->text, work->title);
    if (work->year)
        buffer_printf(&page->text, " (%d)", work->year);
    end_text(page, "div", NULL);
    buffer_printf(&page->text, "%s: ", work->seating);
    season_order(&page->text, work);
    buffer_puts(&page->text, work->fixed ? " (fixed)" : "");
    end_text(page, "div", "seating");
    buffer_puts(&page->text, work->note);
    end_text(page, "div", "small");
    if (losses) {
        put_changes_of(page, concert, place);
        put_losses(page, work);
    }
    if (work->interval_after)
        html_element(&page->html, "div", "interval", "Interval");
    html_close(&page->html);
}

static void put_works(Page *page, const spz_planned_concert *concert, bool losses)
{
    html_open(&page->html, "ol");
    for (size_t i = 0; i < concert->work_count; i++)
        put_work(page, concert, i, losses);
    html_close(&page->html);
}

static void put_problem(Page *page, const spz_planned_concert *concert)
{
    buffer_printf(&page->text, "Not planned: %s.", concert->problem);
    end_text(page, "p", NULL);
}

static void put_all_changes(Page *page, const spz_planned_concert *concert)
{
    html_open_class(&page->html, "div", concert->change_count > FEW_CHANGES ? "many" : "changes");
    if (concert->setup)
        put_change(page, concert->setup);
    else
        html_element(&page->html, "p", NULL, "Before the concert the stage stays in the house's usual seating.");
    for (size_t i = 0; i < concert->change_count; i++)
        put_change(page, &concert->changes[i]);
    if (concert->change_count == 0)
        html_element(&page->html, "p", NULL, "No change within the concert.");
    html_close(&page->html);
}

static void put_cautions(Page *page)
{
    html_element(&page->html, "p", "cautions", report_cautions);
}

static void put_sheet(Page *page, const spz_planned_concert *concert)
{
    html_open_class(&page->html, "section", "sheet");
    buffer_printf(&page->text, "Change sheet: %s", concert->name);
    end_text(page, "h2", NULL);
    put_when_where(page, concert);
    if (concert->problem)
        put_problem(page, concert);
    else {
        put_works(page, concert, false);
        put_all_changes(page, concert);
    }
    put_cautions(page);
    html_close(&page->html);
}

static void put_concert(Page *page, const spz_planned_concert *concert)
{
    static void (*const remarks[])(Buffer *, const spz_planned_concert *) = {season_unchanged, season_one_more, season_other_order};
    html_element(&page->html, "h2", NULL, concert->name);
    put_when_where(page, concert);
    if (concert->problem) {
        put_problem(page, concert);
        return;
    }
    put_works(page, concert, true);
    buffer_puts(&page->text, "Given up in all: ");
    season_points(&page->text, concert->points);
    if (concert->price > 0) {
        buffer_puts(&page->text, "; price of the changes: ");
        season_points(&page->text, concert->price);
    }
    buffer_puts(&page->text, ".");
    end_text(page, "p", NULL);
    for (size_t i = 0; i < sizeof remarks / sizeof remarks[0]; i++) {
        remarks[i](&page->text, concert);
        end_text(page, "p", NULL);
    }
}

void season_html(const spz_season *season, int width, Buffer *out)
{
    Page page;
    spz_season_totals totals = spz_season_total(season);
    (void)width;
    begin(&page, "The season: where the strings sit");
    html_open_class(&page.html, "section", "plan");
    html_element(&page.html, "h1", NULL, "The season: where the strings sit");
    season_sums(&page.text, &totals);
    end_text(&page, "p", NULL);
    for (size_t i = 0; i < spz_season_concerts(season); i++)
        put_concert(&page, spz_season_concert(season, i));
    put_cautions(&page);
    html_close(&page.html);
    for (size_t i = 0; i < spz_season_concerts(season); i++)
        put_sheet(&page, spz_season_concert(season, i));
    finish(&page, out);
}

void sheet_html(const spz_planned_concert *concert, Buffer *out)
{
    Page page;
    begin(&page, "Change sheet");
    put_sheet(&page, concert);
    finish(&page, out);
}
