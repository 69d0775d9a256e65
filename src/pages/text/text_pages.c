/* The text pages. The page of a movement is the product: a conductor acts on it without anything else at hand. */
#include "writing/text_layout.h"
#include "pages/text/text_blocks.h"
#include "wording/passage_words.h"

static void begin(spz_report *report)
{
    (void)report;
}

static void nothing_more(spz_report *report)
{
    (void)report;
}

static void between(spz_report *report)
{
    if (report->movements)
        buffer_puts(&report->out, "\n\n");
}

void block_title(spz_report *report, const ShownMovement *shown)
{
    const spz_movement *movement = shown->reading.movement;
    Buffer line;
    buffer_init(&line);
    between(report);
    layout_heading(&report->out, shown->title, '=', report->options.width);
    size_t bars = spz_movement_bars(movement);
    buffer_printf(&line, "%s, %zu bar%s", shown->file, bars, bars == 1 ? "" : "s");
    if (spz_movement_year(movement))
        buffer_printf(&line, ", composed %d", spz_movement_year(movement));
    layout_flow(&report->out, 0, "", &line, report->options.width);
}

void block_sections(spz_report *report, const ShownMovement *shown)
{
    const spz_sections *sections = shown->reading.sections;
    size_t count = spz_sections_groups(sections);
    Buffer line;
    buffer_init(&line);
    buffer_puts(&line, count ? "String sections: " : "No string sections were found");
    for (size_t i = 0; i < count; i++)
        buffer_printf(&line, "%s%s", i ? ", " : "", spz_sections_group(sections, i)->name);
    buffer_putc(&line, '.');
    layout_flow(&report->out, 0, "", &line, report->options.width);
}

/* Heads, or one movement, as a line of the overview. */
static void overview_line(spz_report *report, const char *title, const char *seating, const char *sure)
{
    static const int seating_width = 36, sure_width = 8;
    int title_width = report->options.width - seating_width - sure_width - 4;
    Table table;
    table_begin(&table, 3, NULL, (const int[]){title_width, seating_width, sure_width});
    table.fixed = true;
    table_row(&table, (const char *const[]){title, seating, sure});
    table_end(&table, &report->out, 0, report->options.width);
}

static void overview_movement(spz_report *report, const ShownMovement *shown)
{
    const spz_verdict *verdict = shown->reading.verdict;
    if (report->movements == 0)
        overview_line(report, "Movement", "Seating", "How sure");
    if (spz_verdict_count(verdict))
        overview_line(report, shown->title, spz_verdict_ranked(verdict, 0)->name, words_confidence(spz_verdict_confidence(verdict)));
    else
        overview_line(report, shown->title, "nothing to decide", "-");
}

static void page_movement(spz_report *report, const ShownMovement *shown)
{
    if (report->options.brief) {
        overview_movement(report, shown);
        return;
    }
    block_title(report, shown);
    block_sections(report, shown);
    block_verdict(report, shown->reading.verdict, report->options.all);
    block_ranking(report, shown->reading.verdict, report->options.all);
    if (spz_sections_groups(shown->reading.sections))
        block_passages(report, shown, report->options.all);
}

static void page_seating(spz_report *report, const ShownMovement *shown)
{
    block_title(report, shown);
    block_sections(report, shown);
    block_verdict(report, shown->reading.verdict, true);
    block_ranking(report, shown->reading.verdict, true);
    block_terms(report, shown->reading.verdict);
}

static void page_passages(spz_report *report, const ShownMovement *shown)
{
    block_title(report, shown);
    block_passages(report, shown, true);
}

static void page_work(spz_report *report)
{
    between(report);
    layout_heading(&report->out, "One seating for all these movements", '=', report->options.width);
    block_verdict(report, report->work, true);
    block_ranking(report, report->work, true);
}

static void end_with_cautions(spz_report *report)
{
    if (!report->movements)
        return;
    if (report->work)
        page_work(report);
    buffer_puts(&report->out, "\n\n");
    block_cautions(report);
}

const Form text_movements = {begin, page_movement, end_with_cautions};
const Form text_seating = {begin, page_seating, end_with_cautions};
const Form text_passages = {begin, page_passages, nothing_more};
