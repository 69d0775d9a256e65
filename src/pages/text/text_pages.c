/* The text pages. The page of a movement is the product: a conductor acts on it without anything else at hand. */
#include "writing/text_layout.h"
#include "pages/text/text_blocks.h"
#include "support/text/utf8.h"
#include "wording/seatings/seating_words.h"
#include "wording/section_words.h"
#include <string.h>

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
    char source[SOURCE_TEXT];
    Buffer line = {0};
    between(report);
    layout_heading(&report->out, shown->title, '=', report->options.width);
    int year = shown->reading.verdict ? spz_verdict_by_year(shown->reading.verdict).year : spz_movement_year(movement);
    SAY(&line, report->options.language, year ? PHRASE_PAGE_BARS_YEAR : PHRASE_PAGE_BARS, slot_text("file", words_source(movement, shown->file, source)),
        slot_number("n", (long)spz_movement_bars(movement)), slot_number("year", year));
    layout_flow(&report->out, 0, "", &line, report->options.width);
    if (report->options.house_rules) {
        SAY(&line, report->options.language, PHRASE_PAGE_HOUSE_RULES, slot_text("file", report->options.house_rules));
        layout_flow(&report->out, 0, "", &line, report->options.width);
    }
}

/* 'String sections: Vn I, Vn II, ...' */
static void block_sections(spz_report *report, const ShownMovement *shown)
{
    const spz_sections *sections = shown->reading.sections;
    size_t count = spz_sections_groups(sections);
    Buffer line = {0}, names = {0};
    for (size_t i = 0; i < count; i++) {
        char name[WORDS_TEXT];
        buffer_printf(&names, "%s%s", i ? ", " : "", words_body(report->options.language, spz_sections_group(sections, i), name));
    }
    SAY(&line, report->options.language, count ? PHRASE_PAGE_SECTIONS : PHRASE_PAGE_NO_SECTIONS, slot_text("names", names.text), slot_alone(sections));
    layout_flow(&report->out, 0, "", &line, report->options.width);
    buffer_let_go(&report->out, &names);
}

/* Columns of the widest of some phrases and the head above them. */
static int widest(spz_language language, Phrase first, Phrase last, Phrase head)
{
    const char *text = phrase_text(language, head);
    size_t columns = utf8_columns(text, strlen(text));
    for (Phrase phrase = first; phrase <= last; phrase++) {
        size_t here = utf8_columns(phrase_text(language, phrase), strlen(phrase_text(language, phrase)));
        columns = here > columns ? here : columns;
    }
    return (int)columns;
}

static const int title_least = 16;

/* Heads, or one movement, as a line of the overview. */
static void overview_line(spz_report *report, const char *title, const char *seating, const char *sure)
{
    spz_language language = report->options.language;
    int seating_width = widest(language, PHRASE_ARRANGEMENT_OPPOSED_CELLOS_LEFT, PHRASE_ARRANGEMENT_TOGETHER_VIOLAS_OUTSIDE, PHRASE_PAGE_HEAD_SEATING) + 1;
    int sure_width = widest(language, PHRASE_CONFIDENCE_OPEN, PHRASE_CONFIDENCE_FIRM, PHRASE_PAGE_HEAD_SURE);
    int title_width = report->options.width - seating_width - sure_width - 4;
    if (title_width < title_least) { /* on a narrow page both go on in a second line */
        seating_width -= title_least - title_width;
        title_width = title_least;
    }
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
        overview_line(report, shown->title, words_arrangement(language, spz_verdict_ranked(verdict, 0)->name),
                      words_confidence(language, spz_verdict_confidence(verdict)));
    else
        overview_line(report, shown->title, words_undecided(language, shown->reading.sections), "-");
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
