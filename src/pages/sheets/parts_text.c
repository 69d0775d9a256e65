#include "writing/text_layout.h"
#include "pages/sheets/parts_sheet.h"
#include "pages/growing_report.h"
#include "wording/section_words.h"

enum { INDENT = 2 };

static void text_head(Buffer *out, const PartsPage *page)
{
    char source[SOURCE_TEXT];
    Buffer line = {0};
    if (page->number)
        buffer_putc(out, '\n');
    layout_heading(out, page->title, '=', LAYOUT_USUAL_WIDTH);
    layout_paragraph(out, 0, "", words_source(page->movement, page->file, source), LAYOUT_USUAL_WIDTH);
    parts_about(page, &line);
    layout_flow(out, 0, "", &line, LAYOUT_USUAL_WIDTH);
    bool warning;
    for (size_t i = 0; parts_preface(page, i, &warning, &line); i++)
        layout_flow(out, 0, warning ? "! " : "", &line, LAYOUT_USUAL_WIDTH);
    buffer_let_go(out, &line);
}

static void text_group_head(Buffer *out, const PartsPage *page, size_t group)
{
    Buffer line = {0}, names = {0};
    parts_names(&names, page, group);
    SAY(&line, page->speaker.language, PHRASE_PARTS_IN_SCORE, slot_players("who", &page->map->groups[group].about, 1),
        slot_text("names", buffer_text(&names)));
    buffer_free(&names);
    buffer_putc(out, '\n');
    layout_heading(out, buffer_text(&line), '-', LAYOUT_USUAL_WIDTH);
    buffer_let_go(out, &line);
}

static void add_point(Buffer *remark, const Buffer *words)
{
    if (words->length)
        buffer_printf(remark, "%s%s.", remark->length ? " " : "", words->text);
}

static void text_rows(Buffer *out, const PartsPage *page, size_t first, size_t end)
{
    spz_language language = page->speaker.language;
    const char *const heads[] = {phrase_text(language, PHRASE_HEAD_BAR), phrase_text(language, PHRASE_HEAD_BEAT),
                                 phrase_text(language, PHRASE_HEAD_LETTER), phrase_text(language, PHRASE_PARTS_HEAD_TIME),
                                 phrase_text(language, PHRASE_PARTS_HEAD_WRITE)};
    static const int most[] = {18, 8, 12, 16, 0};
    Buffer remark = {0};
    Table table;
    table_begin(&table, 5, heads, most);
    for (size_t i = first; i < end; i++) {
        PartsRow row;
        parts_row(page, &page->advice->items.at[i], &row);
        table_row(&table, (const char *const[]){row.bar, row.beat, row.letter, buffer_text(&row.pass), buffer_text(&row.words)});
        parts_remark(&remark, page, &row);
        add_point(&remark, &row.warning);
        add_point(&remark, &row.question);
        if (remark.length)
            table_note(&table, remark.text);
        out->failed = out->failed || parts_row_failed(&row);
        parts_row_free(&row);
    }
    table_end(&table, out, INDENT, LAYOUT_USUAL_WIDTH);
    buffer_let_go(out, &remark);
}

/* The parts that stay as they are, in one line. */
static void text_empty(Buffer *out, const PartsPage *page)
{
    Buffer line = {0}, names = {0};
    parts_untouched(page, &names);
    if (names.length) {
        SAY(&line, page->speaker.language, PHRASE_PARTS_NOTHING, slot_text("names", names.text));
        buffer_putc(out, '\n');
        layout_flow(out, 0, "", &line, LAYOUT_USUAL_WIDTH);
    }
    buffers_let_go(out, &line, &names);
}

static void text_movement(SheetOut *sheet, const PartsPage *page)
{
    Buffer *out = &sheet->text;
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
        buffer_printf(out, "\n%s\n", phrase_text(page->speaker.language, PHRASE_PARTS_NONE));
    if (*page->arrangement) {
        buffer_putc(out, '\n');
        layout_paragraph(out, 0, "", report_cautions(page->speaker.language), LAYOUT_USUAL_WIDTH);
    }
}

const PartsForm parts_text = {sheet_nothing, text_movement, sheet_nothing, false};
