/* The change sheet of one concert as text: what the stage crew needs on one page, with a box before everything that is to be done. */
#include "writing/text_layout.h"
#include "pages/growing_report.h"
#include "pages/season_forms.h"
#include "wording/season_words.h"
#include "wording/passage_words.h"
#include <stdio.h>

typedef struct Sheet {
    Buffer *out;
    Buffer line;
    int width;
} Sheet;

static void end_line(Sheet *sheet, int indent, const char *lead)
{
    layout_flow(sheet->out, indent, lead, &sheet->line, sheet->width);
}

static void say_move(Sheet *sheet, const spz_section_move *move)
{
    char name[WORDS_TEXT];
    buffer_printf(&sheet->line, "%s (", words_capital(spz_section_words(move->section), name, sizeof name));
    season_count(&sheet->line, move->players, "player", "players");
    buffer_printf(&sheet->line, "): from %s to %s", move->from, move->to);
    end_line(sheet, 2, "[ ] ");
}

static void say_change(Sheet *sheet, const spz_changeover *change)
{
    buffer_puts(sheet->out, "\n");
    season_place(&sheet->line, change);
    buffer_puts(&sheet->line, " (");
    season_minutes(&sheet->line, change->minutes);
    buffer_puts(&sheet->line, ")");
    end_line(sheet, 0, "");
    buffer_puts(&sheet->line, "F");
    season_from_to(&sheet->line, change);
    buffer_puts(&sheet->line, ".");
    end_line(sheet, 2, "");
    season_orchestras(&sheet->line, change);
    if (sheet->line.length)
        end_line(sheet, 2, "[ ] ");
    for (size_t i = 0; i < change->move_count; i++)
        say_move(sheet, &change->moves[i]);
    season_load(&sheet->line, change);
    buffer_printf(&sheet->line, " to be carried, of %d desks", change->desks);
    end_line(sheet, 2, "[ ] ");
    if (*change->remark) {
        buffer_puts(&sheet->line, change->remark);
        end_line(sheet, 2, "[ ] ");
    }
}

static void say_works(Sheet *sheet, const spz_planned_concert *concert)
{
    char lead[32];
    buffer_puts(sheet->out, "\nProgramme\n");
    for (size_t i = 0; i < concert->work_count; i++) {
        const spz_planned_work *work = &concert->works[i];
        snprintf(lead, sizeof lead, "%2zu. ", i + 1);
        buffer_printf(&sheet->line, "%s: %s (", work->title, work->seating);
        season_order(&sheet->line, work);
        buffer_puts(&sheet->line, ")");
        if (*work->note)
            buffer_printf(&sheet->line, " - %s", work->note);
        end_line(sheet, 0, lead);
        if (work->interval_after)
            buffer_puts(sheet->out, "    --- interval ---\n");
    }
}

static void say_head(Sheet *sheet, const spz_planned_concert *concert)
{
    buffer_printf(&sheet->line, "Change sheet: %s", concert->name);
    layout_heading(sheet->out, sheet->line.text ? sheet->line.text : "", '=', sheet->width);
    buffer_clear(&sheet->line);
    season_when_where(&sheet->line, concert);
    end_line(sheet, 0, "");
}

void sheet_text(const spz_planned_concert *concert, int width, Buffer *out)
{
    Sheet sheet = {.out = out, .width = width};
    buffer_init(&sheet.line);
    say_head(&sheet, concert);
    if (concert->problem) {
        buffer_printf(&sheet.line, "Not planned: %s.", concert->problem);
        end_line(&sheet, 0, "");
    } else {
        say_works(&sheet, concert);
        if (concert->setup)
            say_change(&sheet, concert->setup);
        else
            buffer_puts(out, "\nBefore the concert the stage stays in the house's usual seating.\n");
        for (size_t i = 0; i < concert->change_count; i++)
            say_change(&sheet, &concert->changes[i]);
        if (concert->change_count == 0)
            buffer_puts(out, "\nNo change within the concert.\n");
    }
    buffer_puts(out, "\n");
    layout_paragraph(out, 0, "", report_cautions, width);
    out->failed = out->failed || buffer_failed(&sheet.line);
    buffer_free(&sheet.line);
}
