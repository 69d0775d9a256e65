/* The plan of a season as text: a heading for each concert, its works in order with the changes between them, what is given up, and
 * what else could have been done. */
#include "writing/text_layout.h"
#include "pages/growing_report.h"
#include "pages/season_forms.h"
#include "support/path.h"
#include "wording/seasons/evening_words.h"
#include <stdio.h>

enum { INDENT = 2, DEEPER = 5 };

typedef struct Page {
    Buffer *out;
    Buffer line; /* under way */
    int width;
    spz_language language;
} Page;

static void end_line(Page *page, int indent, const char *lead)
{
    layout_flow(page->out, indent, lead, &page->line, page->width);
}

static void put_change(Page *page, const spz_changeover *change)
{
    say_whole_change(&page->line, page->language, change);
    end_line(page, INDENT, ">> ");
}

/* Changes that lie before this movement of this work. */
static void put_changes_before(Page *page, const spz_planned_concert *concert, size_t work, size_t movement)
{
    for (size_t i = 0; i < concert->change_count; i++)
        if (concert->changes[i].work == work && concert->changes[i].movement == movement)
            put_change(page, &concert->changes[i]);
}

static void put_movement(Page *page, const spz_planned_movement *movement, bool alone)
{
    if (!(movement->points > 0))
        return;
    say_loss(&page->line, page->language, movement, alone);
    end_line(page, DEEPER, alone ? "" : "- ");
}

static void put_evidence(Page *page, const spz_planned_concert *concert, size_t place)
{
    const spz_planned_work *work = &concert->works[place];
    bool alone = work->movement_count == 1 && work->points > 0; /* then one line says it all */
    if (!alone) {
        say_evidence(&page->line, page->language, work);
        say_verdicts(&page->line, page->language, work);
        end_line(page, DEEPER, "");
    }
    for (size_t i = 0; i < work->movement_count; i++) {
        if (i)
            put_changes_before(page, concert, place, i);
        put_movement(page, &work->movements[i], alone);
    }
    if (alone) {
        say_verdicts(&page->line, page->language, work);
        end_line(page, DEEPER, "");
    }
}

static void put_work(Page *page, const spz_planned_concert *concert, size_t place)
{
    const spz_planned_work *work = &concert->works[place];
    char lead[32];
    put_changes_before(page, concert, place, 0);
    snprintf(lead, sizeof lead, "%2zu. ", place + 1);
    buffer_puts(&page->line, work->title);
    if (work->year)
        buffer_printf(&page->line, " (%d)", work->year);
    if (*work->note)
        buffer_printf(&page->line, " - %s", work->note);
    end_line(page, 1, lead);
    say_seated(&page->line, page->language, work);
    end_line(page, DEEPER, "");
    put_evidence(page, concert, place);
    if (work->interval_after)
        layout_paragraph(page->out, DEEPER, "", phrase_text(page->language, PHRASE_SEASON_INTERVAL_LINE), page->width);
}

static void put_sums(Page *page, const spz_planned_concert *concert)
{
    static void (*const sayers[])(Buffer *, spz_language, const spz_planned_concert *) = {say_given_up, say_one_more, say_other_order};
    buffer_puts(page->out, "\n");
    for (size_t i = 0; i < sizeof sayers / sizeof sayers[0]; i++) {
        sayers[i](&page->line, page->language, concert);
        if (page->line.length)
            end_line(page, INDENT, "");
    }
}

/* What a conductor chooses first: one seating for all, what it gives up in each movement, what the interval would gain. */
static void put_one_seating(Page *page, const spz_planned_concert *concert)
{
    buffer_puts(page->out, "\n");
    say_one_seating(&page->line, page->language, concert);
    end_line(page, INDENT, "");
    for (size_t i = 0; i < concert->unchanged.movement_count; i++) {
        say_given_up_by(&page->line, page->language, &concert->unchanged.movements[i]);
        if (page->line.length)
            end_line(page, DEEPER, "- ");
    }
    say_interval_gain(&page->line, page->language, concert);
    if (page->line.length)
        end_line(page, INDENT, "");
}

static void put_concert(Page *page, const spz_planned_concert *concert)
{
    buffer_puts(page->out, "\n");
    layout_heading(page->out, *concert->name ? concert->name : phrase_text(page->language, PHRASE_SEASON_UNNAMED), '-', page->width);
    say_when_where(&page->line, page->language, concert);
    if (*concert->hall_settings)
        SAY(&page->line, page->language, PHRASE_SEASON_WHERE_SETTINGS, slot_text("file", path_name(concert->hall_settings)));
    end_line(page, 0, "");
    if (concert->problem) {
        say_not_planned(&page->line, page->language, concert);
        end_line(page, INDENT, "");
        return;
    }
    put_one_seating(page, concert);
    static void (*const remarks[])(Buffer *, spz_language, const spz_planned_concert *) = {say_usual_absence, say_repeats};
    for (size_t i = 0; i < sizeof remarks / sizeof *remarks; i++) {
        remarks[i](&page->line, page->language, concert);
        if (page->line.length)
            end_line(page, 0, "");
    }
    buffer_puts(page->out, "\n");
    if (concert->setup)
        put_change(page, concert->setup);
    for (size_t i = 0; i < concert->work_count; i++)
        put_work(page, concert, i);
    put_sums(page, concert);
}

/* What could not be used (or is doubtful), line by line. */
static void put_notes(Page *page, const spz_season *season, bool doubts, Phrase heading)
{
    size_t at = 0;
    const spz_table_note *note = next_noted(season, doubts, &at);
    if (!note)
        return;
    buffer_puts(page->out, "\n");
    layout_heading(page->out, phrase_text(page->language, heading), '-', page->width);
    for (; note; note = next_noted(season, doubts, &at)) {
        say_noted_line(&page->line, page->language, note);
        end_line(page, 0, "- ");
    }
}

void season_text(const spz_season *season, const spz_season_look *look, Buffer *out)
{
    Page page = {.out = out, .width = look->width, .language = look->language};
    spz_season_totals totals = spz_season_total(season);
    buffer_init(&page.line);
    layout_heading(out, phrase_text(page.language, PHRASE_SEASON_TITLE), '=', page.width);
    say_sums(&page.line, page.language, &totals);
    end_line(&page, 0, "");
    if (totals.problems) {
        SAY(&page.line, page.language, PHRASE_SEASON_PROBLEMS, slot_number("n", (long)totals.problems));
        end_line(&page, 0, "");
    }
    for (size_t i = 0; i < spz_season_concerts(season); i++)
        put_concert(&page, spz_season_concert(season, i));
    put_notes(&page, season, false, PHRASE_SEASON_NOT_USED);
    put_notes(&page, season, true, PHRASE_SEASON_DOUBTFUL);
    buffer_puts(out, "\n");
    layout_paragraph(out, 0, "", report_cautions(page.language), page.width);
    buffer_let_go(out, &page.line);
}
