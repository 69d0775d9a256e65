#include "writing/csv_text.h"
#include "writing/text_layout.h"
#include "pages/sheets/notes_sheet.h"
#include "support/numbers.h"
#include "support/utf8.h"
#include <stdio.h>
#include <string.h>

static void no_begin(SheetOut *sheet, const NotesLanguage *language)
{
    (void)sheet, (void)language;
}

/* What a writing function of the language says, as a text of its own. */
static const char *said(Buffer *line, void (*say)(Buffer *, const Citation *), const Citation *citation)
{
    buffer_clear(line);
    say(line, citation);
    return line->text ? line->text : "";
}

static const char *said_of_all(Buffer *line, void (*say)(Buffer *, const Overview *), const MovementNotes *notes)
{
    buffer_clear(line);
    say(line, &notes->overview);
    return line->text ? line->text : "";
}

static void text_movement(SheetOut *sheet, const NotesLanguage *language, const MovementNotes *notes, size_t number)
{
    Buffer line, *out = &sheet->text;
    buffer_init(&line);
    if (number)
        buffer_putc(out, '\n');
    layout_heading(out, notes->title, '=', LAYOUT_USUAL_WIDTH);
    layout_paragraph(out, 0, "", said_of_all(&line, language->paragraph, notes), LAYOUT_USUAL_WIDTH);
    buffer_printf(out, "\n%s\n", notes->citations.count ? language->heading : language->nothing);
    for (size_t i = 0; i < notes->citations.count; i++) {
        layout_paragraph(out, 2, "", said(&line, language->place, &notes->citations.at[i]), LAYOUT_USUAL_WIDTH);
        layout_paragraph(out, 6, "", said(&line, language->sentence, &notes->citations.at[i]), LAYOUT_USUAL_WIDTH);
    }
    if (notes->citations.count) {
        buffer_putc(out, '\n');
        layout_paragraph(out, 0, "", said_of_all(&line, language->times, notes), LAYOUT_USUAL_WIDTH);
    }
    out->failed = out->failed || buffer_failed(&line);
    buffer_free(&line);
}

const NotesForm notes_text = {no_begin, text_movement};

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

static void markdown_movement(SheetOut *sheet, const NotesLanguage *language, const MovementNotes *notes, size_t number)
{
    Buffer line, *out = &sheet->text;
    buffer_init(&line);
    buffer_puts(out, number ? "\n## " : "## ");
    put_markdown(out, notes->title);
    buffer_puts(out, "\n\n");
    put_markdown(out, said_of_all(&line, language->paragraph, notes));
    buffer_printf(out, "\n\n%s%s\n", notes->citations.count ? "### " : "", notes->citations.count ? language->heading : language->nothing);
    for (size_t i = 0; i < notes->citations.count; i++) {
        buffer_puts(out, i ? "- **" : "\n- **");
        put_markdown(out, said(&line, language->place, &notes->citations.at[i]));
        buffer_puts(out, "** ");
        put_markdown(out, said(&line, language->sentence, &notes->citations.at[i]));
        buffer_putc(out, '\n');
    }
    if (notes->citations.count) {
        buffer_puts(out, "\n*");
        put_markdown(out, said_of_all(&line, language->times, notes));
        buffer_puts(out, "*\n");
    }
    out->failed = out->failed || buffer_failed(&line);
    buffer_free(&line);
}

const NotesForm notes_markdown = {no_begin, markdown_movement};

static void csv_start(SheetOut *sheet, const NotesLanguage *language)
{
    (void)language;
    csv_header(&sheet->row, "file,title,kind,first_bar,last_bar,first_index,letter,onset,seconds,again,duration,strength,sentence");
}

static void put_again(CsvRow *row, const Citation *citation)
{
    char text[TIMES_MOST * NUMBER_TEXT] = "", number[NUMBER_TEXT];
    for (size_t i = 1; i < citation->time_count; i++) {
        size_t length = strlen(text);
        snprintf(text + length, sizeof text - length, "%s%s", i > 1 ? " " : "", number_text(citation->times[i], 2, number));
    }
    csv_text(row, text);
}

static void csv_citation(CsvRow *row, const NotesLanguage *language, const MovementNotes *notes, const Citation *citation, Buffer *line)
{
    const spz_passage *passage = citation->passage;
    char rehearsal[REHEARSAL_TEXT], onset[TICKS_TEXT];
    csv_text(row, notes->file);
    csv_text(row, notes->title);
    csv_text(row, spz_kind_name(passage->kind));
    csv_text(row, passage->first_bar);
    csv_text(row, passage->last_bar);
    csv_integer(row, (long long)passage->first);
    csv_text(row, movement_rehearsal_text(notes->movement, (int)passage->first, rehearsal));
    csv_text(row, ticks_text(passage->onset, notes->movement->per_crotchet, onset));
    if (citation->time_count)
        csv_number(row, citation->times[0], 2);
    else
        csv_text(row, "");
    put_again(row, citation);
    if (notes->overview.duration > 0)
        csv_number(row, notes->overview.duration, 2);
    else
        csv_text(row, "");
    csv_number(row, shown_strength(passage->strength), 2);
    csv_text(row, said(line, language->sentence, citation));
    csv_end(row);
}

static void csv_movement(SheetOut *sheet, const NotesLanguage *language, const MovementNotes *notes, size_t number)
{
    Buffer line, *out = &sheet->text;
    (void)number;
    buffer_init(&line);
    for (size_t i = 0; i < notes->citations.count; i++)
        csv_citation(&sheet->row, language, notes, &notes->citations.at[i], &line);
    out->failed = out->failed || buffer_failed(&line);
    buffer_free(&line);
}

const NotesForm notes_csv = {csv_start, csv_movement};
