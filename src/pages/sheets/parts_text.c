#include "writing/text_layout.h"
#include "pages/sheets/parts_sheet.h"
#include "pages/growing_report.h"

enum { INDENT = 2 };

static void nothing(Buffer *out)
{
    (void)out;
}

static void text_head(Buffer *out, const PartsPage *page)
{
    Buffer line;
    buffer_init(&line);
    if (page->number)
        buffer_putc(out, '\n');
    layout_heading(out, page->title, '=', LAYOUT_USUAL_WIDTH);
    layout_paragraph(out, 0, "", page->file, LAYOUT_USUAL_WIDTH);
    if (*page->arrangement)
        buffer_printf(&line, "What to write into the string parts. Seating: %s.", page->arrangement);
    else
        buffer_puts(&line, "What to write into the string parts.");
    layout_flow(out, 0, "", &line, LAYOUT_USUAL_WIDTH);
    out->failed = out->failed || buffer_failed(&line);
    buffer_free(&line);
}

static void text_group_head(Buffer *out, const PartsPage *page, size_t group)
{
    Buffer line;
    buffer_init(&line);
    buffer_printf(&line, "%s, in the score: ", page->map->groups[group].about.name);
    parts_names(&line, page, group);
    buffer_putc(out, '\n');
    layout_heading(out, line.text ? line.text : "", '-', LAYOUT_USUAL_WIDTH);
    out->failed = out->failed || buffer_failed(&line);
    buffer_free(&line);
}

static void text_rows(Buffer *out, const PartsPage *page, size_t first, size_t end)
{
    static const char *const heads[] = {"Bar", "Beat", "Letter", "Time", "Write"};
    static const int most[] = {18, 8, 12, 16, 0};
    Buffer remark;
    Table table;
    buffer_init(&remark);
    table_begin(&table, 5, heads, most);
    for (size_t i = first; i < end; i++) {
        PartsRow row;
        parts_row(page, &page->advice->items.at[i], &row);
        table_row(&table, (const char *const[]){row.bar, row.beat, row.letter, row.pass, row.advice->words});
        parts_remark(&remark, &row);
        if (remark.length)
            table_note(&table, remark.text);
    }
    table_end(&table, out, INDENT, LAYOUT_USUAL_WIDTH);
    out->failed = out->failed || buffer_failed(&remark);
    buffer_free(&remark);
}

/* The parts that stay as they are, in one line. */
static void text_empty(Buffer *out, const PartsPage *page)
{
    Buffer line;
    buffer_init(&line);
    for (size_t group = 0; group < page->map->group_count; group++) {
        size_t first, end;
        parts_range(page, group, &first, &end);
        if (first == end && !page->map->groups[group].shares_bass)
            buffer_printf(&line, "%s%s", line.length ? ", " : "Nothing to write: ", page->map->groups[group].about.name);
    }
    if (line.length) {
        buffer_puts(&line, ".");
        buffer_putc(out, '\n');
        layout_flow(out, 0, "", &line, LAYOUT_USUAL_WIDTH);
    }
    out->failed = out->failed || buffer_failed(&line);
    buffer_free(&line);
}

static void text_movement(Buffer *out, const PartsPage *page)
{
    text_head(out, page);
    for (size_t group = 0; group < page->map->group_count; group++) {
        size_t first, end;
        parts_range(page, group, &first, &end);
        if (first == end)
            continue;
        text_group_head(out, page, group);
        text_rows(out, page, first, end);
    }
    text_empty(out, page);
    if (page->map->group_count == 0)
        buffer_puts(out, "\nThere are no string parts to write into.\n");
    if (*page->arrangement) {
        buffer_putc(out, '\n');
        layout_paragraph(out, 0, "", report_cautions, LAYOUT_USUAL_WIDTH);
    }
}

const PartsForm parts_text = {nothing, text_movement, nothing};
