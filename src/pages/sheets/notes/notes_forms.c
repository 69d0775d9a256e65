#include "pages/sheets/notes/notes_sheet.h"
#include "support/text/utf8.h"
#include "writing/text_layout.h"
#include <stdio.h>
#include <string.h>

static const char *label(const SheetOut *sheet, Phrase phrase)
{
    return phrase_text(sheet->language, phrase);
}

static void text_entries(SheetOut *sheet, const MovementNotes *notes, const Citation *citation)
{
    size_t lines = citation_list_lines(citation);
    if (lines)
        layout_paragraph(&sheet->text, 6, "", label(sheet, PHRASE_NOTES_ENTRIES), LAYOUT_USUAL_WIDTH);
    for (size_t i = 0; i < lines; i++)
        layout_paragraph(&sheet->text, 10, "", said_of_entry(sheet, notes, citation, i), LAYOUT_USUAL_WIDTH);
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
        text_entries(sheet, notes, &notes->citations.at[i]);
    }
    if (count) {
        buffer_putc(out, '\n');
        layout_paragraph(out, 0, "", said_of_all(sheet, say_times, notes), LAYOUT_USUAL_WIDTH);
    }
}

const NotesForm notes_text = {sheet_nothing, text_movement, sheet_nothing};

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

static void markdown_entries(SheetOut *sheet, const MovementNotes *notes, const Citation *citation)
{
    size_t lines = citation_list_lines(citation);
    if (lines)
        buffer_printf(&sheet->text, " %s", label(sheet, PHRASE_NOTES_ENTRIES));
    for (size_t i = 0; i < lines; i++) {
        buffer_puts(&sheet->text, "\n  - ");
        put_markdown(&sheet->text, said_of_entry(sheet, notes, citation, i));
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
        markdown_entries(sheet, notes, &notes->citations.at[i]);
        buffer_putc(out, '\n');
    }
    if (count) {
        buffer_puts(out, "\n*");
        put_markdown(out, said_of_all(sheet, say_times, notes));
        buffer_puts(out, "*\n");
    }
}

const NotesForm notes_markdown = {sheet_nothing, markdown_movement, sheet_nothing};

