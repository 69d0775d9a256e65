/* The change sheet of one concert as text: what the stage crew needs on one page, with a box before everything that is to be done. */
#include "writing/text_layout.h"
#include "pages/growing_report.h"
#include "pages/season_forms.h"
#include "wording/seasons/evening_words.h"
#include "wording/seatings/seating_words.h"
#include <stdio.h>

typedef struct Sheet {
    Buffer *out;
    Buffer line;
    int width;
    spz_language language;
} Sheet;

static void end_line(Sheet *sheet, int indent, const char *lead)
{
    layout_flow(sheet->out, indent, lead, &sheet->line, sheet->width);
}

/* What is to be done, unless it is nothing. */
static void end_box(Sheet *sheet)
{
    if (sheet->line.length)
        end_line(sheet, 2, "[ ] ");
}

static void put_change_head(Sheet *sheet, const spz_changeover *change)
{
    Buffer text = {0};
    buffer_puts(sheet->out, "\n");
    say_change_place(&sheet->line, sheet->language, change);
    say_minutes(&text, sheet->language, change->minutes);
    buffer_printf(&sheet->line, " (%s)", buffer_text(&text));
    end_line(sheet, 0, "");
    buffer_clear(&text);
    say_change(&text, sheet->language, change);
    SAY(&sheet->line, sheet->language, PHRASE_SEASON_SHEET_CHANGE, slot_text("change", text.text));
    end_line(sheet, 2, "");
    buffer_let_go(sheet->out, &text);
}

/* Every desk by its name, and the sums. Those that stay untouched are one line. */
static void put_desks(Sheet *sheet, const spz_changeover *change)
{
    for (size_t i = 0; i < (size_t)change->desks + change->struck_count; i++) {
        const spz_desk_move *move = i < (size_t)change->desks ? &change->desk_moves[i] : &change->struck[i - (size_t)change->desks];
        if (move->chairs + move->stands == 0)
            continue;
        say_desk_move(&sheet->line, sheet->language, move);
        end_box(sheet);
    }
    say_desk_sums(&sheet->line, sheet->language, change);
    end_line(sheet, 2, "");
    layout_paragraph(sheet->out, 2, "", phrase_text(sheet->language, PHRASE_CHANGE_ABOUT), sheet->width);
}

static void put_change(Sheet *sheet, const spz_changeover *change)
{
    put_change_head(sheet, change);
    say_orchestras(&sheet->line, sheet->language, change);
    end_box(sheet);
    for (size_t i = 0; i < change->move_count; i++) {
        say_move(&sheet->line, sheet->language, &change->moves[i]);
        end_box(sheet);
    }
    put_desks(sheet, change);
    say_desks_of(&sheet->line, sheet->language, change);
    end_box(sheet);
    say_change_remark(&sheet->line, sheet->language, change);
    end_box(sheet);
}

static void put_work(Sheet *sheet, const spz_planned_concert *concert, size_t place)
{
    const spz_planned_work *work = &concert->works[place];
    char lead[32];
    Buffer order = {0};
    snprintf(lead, sizeof lead, "%2zu. ", place + 1);
    say_seated_order(&order, sheet->language, work);
    SAY(&sheet->line, sheet->language, PHRASE_SEASON_SHEET_WORK, slot_text("title", work->title), slot_text("seating", words_arrangement(sheet->language, work->seating)),
        slot_text("order", order.text));
    if (*work->note)
        buffer_printf(&sheet->line, " - %s", work->note);
    end_line(sheet, 0, lead);
    say_pieces(&sheet->line, sheet->language, concert, place);
    if (sheet->line.length)
        end_line(sheet, 4, "[ ] ");
    if (work->interval_after)
        layout_paragraph(sheet->out, 4, "", phrase_text(sheet->language, PHRASE_SEASON_INTERVAL_LINE), sheet->width);
    buffer_let_go(sheet->out, &order);
}

static void put_head(Sheet *sheet, const spz_planned_concert *concert)
{
    SAY(&sheet->line, sheet->language, PHRASE_SEASON_SHEET_OF, slot_text("concert", concert->name));
    layout_heading(sheet->out, buffer_text(&sheet->line), '=', sheet->width);
    buffer_clear(&sheet->line);
    say_when_where(&sheet->line, sheet->language, concert);
    end_line(sheet, 0, "");
    say_usual_absence(&sheet->line, sheet->language, concert);
    if (sheet->line.length)
        end_line(sheet, 0, "");
}

static void put_sentence(Sheet *sheet, Phrase phrase)
{
    buffer_puts(sheet->out, "\n");
    layout_paragraph(sheet->out, 0, "", phrase_text(sheet->language, phrase), sheet->width);
}

static void put_changes(Sheet *sheet, const spz_planned_concert *concert)
{
    if (concert->repeats) {
        buffer_puts(sheet->out, "\n");
        say_repeats(&sheet->line, sheet->language, concert);
        end_line(sheet, 0, "");
    }
    if (concert->setup)
        put_change(sheet, concert->setup);
    else if (!concert->repeats)
        put_sentence(sheet, PHRASE_SEASON_SHEET_STAYS);
    for (size_t i = 0; i < concert->change_count; i++)
        put_change(sheet, &concert->changes[i]);
    if (concert->change_count == 0)
        put_sentence(sheet, PHRASE_SEASON_SHEET_NO_CHANGE);
}

void sheet_text(const spz_planned_concert *concert, const spz_season_look *look, Buffer *out)
{
    Sheet sheet = {.out = out, .width = look->width, .language = look->language};
    buffer_init(&sheet.line);
    put_head(&sheet, concert);
    if (concert->problem) {
        say_not_planned(&sheet.line, sheet.language, concert);
        end_line(&sheet, 0, "");
    } else {
        put_sentence(&sheet, PHRASE_SEASON_SHEET_PROGRAMME);
        for (size_t i = 0; i < concert->work_count; i++)
            put_work(&sheet, concert, i);
        put_changes(&sheet, concert);
    }
    buffer_puts(out, "\n");
    layout_paragraph(out, 0, "", report_cautions(sheet.language), sheet.width);
    buffer_let_go(out, &sheet.line);
}
