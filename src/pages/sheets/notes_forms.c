#include "pages/sheets/notes_sheet.h"
#include "model/movement.h"
#include "support/numbers.h"
#include "support/utf8.h"
#include "writing/text_layout.h"
#include <stdio.h>
#include <string.h>

static void nothing(SheetOut *sheet)
{
    (void)sheet;
}

static const char *label(const SheetOut *sheet, Phrase phrase)
{
    return phrase_text(sheet->language, phrase);
}

static void text_movement(SheetOut *sheet, const MovementNotes *notes)
{
    Buffer *out = &sheet->text;
    size_t count = notes->citations.count;
    if (notes->number)
        buffer_putc(out, '\n');
    layout_heading(out, notes->title, '=', LAYOUT_USUAL_WIDTH);
    const char *origin = said_of_all(sheet, say_origin, notes);
    if (*origin) {
        layout_paragraph(out, 0, "", origin, LAYOUT_USUAL_WIDTH);
        buffer_putc(out, '\n');
    }
    layout_paragraph(out, 0, "", said_of_all(sheet, say_overview, notes), LAYOUT_USUAL_WIDTH);
    buffer_printf(out, "\n%s\n", label(sheet, count ? PHRASE_NOTES_HEADING : PHRASE_NOTES_NOTHING));
    for (size_t i = 0; i < count; i++) {
        layout_paragraph(out, 2, "", said_of_one(sheet, say_citation_place, notes, &notes->citations.at[i]), LAYOUT_USUAL_WIDTH);
        layout_paragraph(out, 6, "", said_of_one(sheet, say_citation, notes, &notes->citations.at[i]), LAYOUT_USUAL_WIDTH);
    }
    if (count) {
        buffer_putc(out, '\n');
        layout_paragraph(out, 0, "", said_of_all(sheet, say_times, notes), LAYOUT_USUAL_WIDTH);
    }
}

const NotesForm notes_text = {nothing, text_movement, nothing};

/* Text that Markdown shows as it is: every sign that could mean something is escaped (CommonMark 0.31, backslash escapes). */
static void put_markdown(Buffer *out, const char *text)
{
    while (*text) {
        uint32_t c = utf8_safe(utf8_next(&text));
        char bytes[UTF8_LONGEST];
        if (!c)
            continue;
        if (c < 128 && strchr("\\`*_{}[]<>#&|~!$", (int)c))
            buffer_putc(out, '\\');
        buffer_add(out, bytes, utf8_write(c, bytes));
    }
}

static void markdown_movement(SheetOut *sheet, const MovementNotes *notes)
{
    Buffer *out = &sheet->text;
    size_t count = notes->citations.count;
    buffer_puts(out, notes->number ? "\n## " : "## ");
    put_markdown(out, notes->title);
    buffer_puts(out, "\n\n");
    const char *origin = said_of_all(sheet, say_origin, notes);
    put_markdown(out, origin);
    buffer_puts(out, *origin ? "\n\n" : "");
    put_markdown(out, said_of_all(sheet, say_overview, notes));
    buffer_printf(out, "\n\n%s%s\n", count ? "### " : "", label(sheet, count ? PHRASE_NOTES_HEADING : PHRASE_NOTES_NOTHING));
    for (size_t i = 0; i < count; i++) {
        buffer_puts(out, i ? "- **" : "\n- **");
        put_markdown(out, said_of_one(sheet, say_citation_place, notes, &notes->citations.at[i]));
        buffer_puts(out, "** ");
        put_markdown(out, said_of_one(sheet, say_citation, notes, &notes->citations.at[i]));
        buffer_putc(out, '\n');
    }
    if (count) {
        buffer_puts(out, "\n*");
        put_markdown(out, said_of_all(sheet, say_times, notes));
        buffer_puts(out, "*\n");
    }
}

const NotesForm notes_markdown = {nothing, markdown_movement, nothing};

static void csv_start(SheetOut *sheet)
{
    csv_header(&sheet->row, "file,title,kind,first_bar,last_bar,first_index,letter,onset,seconds,again,duration,strength,sentence");
}

/* Seconds are said only where the score's tempo marks or the user give them. */
static void put_again(CsvRow *row, const Citation *citation, size_t count)
{
    char text[TIMES_MOST * NUMBER_TEXT] = "", number[NUMBER_TEXT];
    for (size_t i = 1; i < count; i++) {
        size_t length = strlen(text);
        snprintf(text + length, sizeof text - length, "%s%s", i > 1 ? " " : "", number_text(citation->times[i].seconds, 2, number));
    }
    csv_text(row, text);
}

static void csv_citation(SheetOut *sheet, const MovementNotes *notes, const Citation *citation)
{
    const spz_passage *passage = citation->passage;
    CsvRow *row = &sheet->row;
    size_t timed = notes->overview.duration > 0 ? citation->time_count : 0;
    char rehearsal[REHEARSAL_TEXT], onset[TICKS_TEXT];
    csv_text(row, notes->file);
    csv_text(row, notes->title);
    csv_text(row, spz_kind_name(passage->kind));
    csv_text(row, passage->first_bar);
    csv_text(row, passage->last_bar);
    csv_integer(row, (long long)passage->first);
    csv_text(row, movement_rehearsal_text(notes->movement, (int)passage->first, rehearsal));
    csv_text(row, ticks_text(passage->onset, notes->movement->per_crotchet, onset));
    if (timed)
        csv_number(row, citation->times[0].seconds, 2);
    else
        csv_text(row, "");
    put_again(row, citation, timed);
    if (notes->overview.duration > 0)
        csv_number(row, notes->overview.duration, 2);
    else
        csv_text(row, "");
    csv_number(row, shown_strength(passage->strength), 2);
    csv_text(row, said_of_one(sheet, say_citation, notes, citation));
    csv_end(row);
}

static void csv_movement(SheetOut *sheet, const MovementNotes *notes)
{
    for (size_t i = 0; i < notes->citations.count; i++)
        csv_citation(sheet, notes, &notes->citations.at[i]);
}

const NotesForm notes_csv = {csv_start, csv_movement, nothing};
