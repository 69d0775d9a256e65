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
    int year = spz_movement_year(movement);
    SAY(&line, report->options.language, year ? PHRASE_PAGE_BARS_YEAR : PHRASE_PAGE_BARS, slot_text("file", shown->file),
        slot_number("n", (long)spz_movement_bars(movement)), slot_number("year", year));
    layout_flow(&report->out, 0, "", &line, report->options.width);
}

void block_sections(spz_report *report, const ShownMovement *shown)
{
    const spz_sections *sections = shown->reading.sections;
    size_t count = spz_sections_groups(sections);
    Buffer line, names;
    buffer_init(&line);
    buffer_init(&names);
    for (size_t i = 0; i < count; i++) {
        char name[WORDS_TEXT];
        buffer_printf(&names, "%s%s", i ? ", " : "", words_body(report->options.language, spz_sections_group(sections, i), name));
    }
    SAY(&line, report->options.language, count ? PHRASE_PAGE_SECTIONS : PHRASE_PAGE_NO_SECTIONS, slot_text("names", names.text));
    layout_flow(&report->out, 0, "", &line, report->options.width);
    report->out.failed = report->out.failed || names.failed;
    buffer_free(&names);
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
    spz_language language = report->options.language;
    if (report->movements == 0)
        overview_line(report, phrase_text(language, PHRASE_PAGE_HEAD_MOVEMENT), phrase_text(language, PHRASE_PAGE_HEAD_SEATING),
                      phrase_text(language, PHRASE_PAGE_HEAD_SURE));
    if (spz_verdict_count(verdict))
        overview_line(report, shown->title, spz_verdict_ranked(verdict, 0)->name, words_confidence(spz_verdict_confidence(verdict)));
    else
        overview_line(report, shown->title, phrase_text(language, PHRASE_PAGE_NOTHING_TO_DECIDE), "-");
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
    layout_heading(&report->out, phrase_text(report->options.language, PHRASE_PAGE_WORK), '=', report->options.width);
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
