/* The plan of a season as text: a heading for each concert, its works in order with the changes between them, what is given up, and
 * what else could have been done. */
#include "writing/text_layout.h"
#include "pages/growing_report.h"
#include "pages/season_forms.h"
#include "support/path.h"
#include "wording/season_words.h"
#include "wording/passage_words.h"
#include <stdio.h>
#include <string.h>

enum { INDENT = 2, DEEPER = 5 };

typedef struct Page {
    Buffer *out;
    Buffer line; /* under way */
    int width;
} Page;

static void end_line(Page *page, int indent, const char *lead)
{
    layout_flow(page->out, indent, lead, &page->line, page->width);
}

static void say_change(Page *page, const spz_changeover *change)
{
    season_place(&page->line, change);
    buffer_puts(&page->line, ": f");
    season_from_to(&page->line, change);
    buffer_puts(&page->line, ". ");
    season_moves(&page->line, change);
    buffer_puts(&page->line, ". To be carried: ");
    season_load(&page->line, change);
    buffer_puts(&page->line, "; ");
    season_minutes(&page->line, change->minutes);
    if (*change->remark)
        buffer_printf(&page->line, "; %s", change->remark);
    buffer_puts(&page->line, ".");
    end_line(page, INDENT, ">> ");
}

/* Changes that lie before this movement of this work. */
static void say_changes_before(Page *page, const spz_planned_concert *concert, size_t work, size_t movement)
{
    for (size_t i = 0; i < concert->change_count; i++)
        if (concert->changes[i].work == work && concert->changes[i].movement == movement)
            say_change(page, &concert->changes[i]);
}

static void say_movement(Page *page, const spz_planned_movement *movement, bool alone)
{
    if (!(movement->points > 0))
        return;
    if (alone)
        buffer_puts(&page->line, "Gives up ");
    else
        buffer_printf(&page->line, "%s: gives up ", season_movement_title(movement));
    season_points(&page->line, movement->points);
    buffer_printf(&page->line, " against %s", movement->best);
    buffer_printf(&page->line, "%s%s.", *movement->bars_lost ? "; weakened: " : "", movement->bars_lost);
    end_line(page, DEEPER, alone ? "" : "- ");
}

static void say_confidence(Page *page, const spz_planned_work *work)
{
    season_confidence(&page->line, work);
    end_line(page, DEEPER, "");
}

static void say_evidence(Page *page, const spz_planned_concert *concert, size_t place)
{
    const spz_planned_work *work = &concert->works[place];
    bool alone = work->movement_count == 1 && work->points > 0; /* then one line says it all */
    if (!alone) {
        season_evidence(&page->line, work);
        buffer_puts(&page->line, ".");
        say_confidence(page, work);
    }
    for (size_t i = 0; i < work->movement_count; i++) {
        if (i)
            say_changes_before(page, concert, place, i);
        say_movement(page, &work->movements[i], alone);
    }
    if (alone)
        say_confidence(page, work);
}

static void say_work(Page *page, const spz_planned_concert *concert, size_t place)
{
    const spz_planned_work *work = &concert->works[place];
    char lead[32], name[WORDS_TEXT];
    say_changes_before(page, concert, place, 0);
    snprintf(lead, sizeof lead, "%2zu. ", place + 1);
    buffer_puts(&page->line, work->title);
    if (work->year)
        buffer_printf(&page->line, " (%d)", work->year);
    if (*work->note)
        buffer_printf(&page->line, " - %s", work->note);
    end_line(page, 1, lead);
    buffer_printf(&page->line, "%s%s. %s: %s.", words_capital(work->seating, name, sizeof name),
                  work->fixed ? " (fixed in the table)" : "",
                  work->two_orchestras ? "Two orchestras that face each other, each from its edge of the stage inward" : "From house left to house right",
                  work->order);
    if (season_thirds(work) && season_thirds(work) < work->movement_count)
        buffer_printf(&page->line, " In %zu of %zu movements the violins are in three sections.", season_thirds(work), work->movement_count);
    else if (season_thirds(work))
        buffer_puts(&page->line, " The violins are in three sections.");
    end_line(page, DEEPER, "");
    say_evidence(page, concert, place);
    if (work->interval_after)
        buffer_puts(page->out, "     --- interval ---\n");
}

static void say_sums(Page *page, const spz_planned_concert *concert)
{
    buffer_puts(page->out, "\n");
    buffer_puts(&page->line, "Given up in all: ");
    season_points(&page->line, concert->points);
    if (concert->price > 0) {
        buffer_puts(&page->line, "; price of the changes: ");
        season_points(&page->line, concert->price);
    }
    buffer_puts(&page->line, ".");
    end_line(page, INDENT, "");
    season_unchanged(&page->line, concert);
    end_line(page, INDENT, "");
    season_one_more(&page->line, concert);
    end_line(page, INDENT, "");
    season_other_order(&page->line, concert);
    if (page->line.length)
        end_line(page, INDENT, "");
}

static void say_concert(Page *page, const spz_planned_concert *concert)
{
    buffer_puts(page->out, "\n");
    layout_heading(page->out, *concert->name ? concert->name : "(no name)", '-', page->width);
    season_when_where(&page->line, concert);
    if (*concert->hall_settings)
        buffer_printf(&page->line, "; settings %s", path_name(concert->hall_settings));
    end_line(page, 0, "");
    if (concert->problem) {
        buffer_printf(&page->line, "Not planned: %s.", concert->problem);
        end_line(page, INDENT, "");
        return;
    }
    buffer_puts(page->out, "\n");
    if (concert->setup)
        say_change(page, concert->setup);
    for (size_t i = 0; i < concert->work_count; i++)
        say_work(page, concert, i);
    say_sums(page, concert);
}

void season_text(const spz_season *season, int width, Buffer *out)
{
    Page page = {.out = out, .width = width};
    spz_season_totals totals = spz_season_total(season);
    buffer_init(&page.line);
    layout_heading(out, "The season", '=', width);
    season_sums(&page.line, &totals);
    end_line(&page, 0, "");
    if (totals.problems) {
        season_count(&page.line, (long long)totals.problems, "row or score", "rows or scores");
        buffer_puts(&page.line, " could not be used; the messages say which.");
        end_line(&page, 0, "");
    }
    for (size_t i = 0; i < spz_season_concerts(season); i++)
        say_concert(&page, spz_season_concert(season, i));
    buffer_puts(out, "\n");
    layout_paragraph(out, 0, "", report_cautions, width);
    out->failed = out->failed || buffer_failed(&page.line);
    buffer_free(&page.line);
}
