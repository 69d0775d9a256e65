/* How every part was understood, and what to write where that is wrong. */
#include "writing/text_layout.h"
#include "pages/text/text_blocks.h"
#include "wording/section_words.h"
#include <string.h>

enum { INDENT = 2 };

static void begin(spz_report *report)
{
    (void)report;
}

enum { CELLS = PHRASE_LINES_HEAD_BECAUSE - PHRASE_LINES_HEAD_PART + 1 };

/* The cells of one row, each put together in a buffer of its own. */
typedef struct Row {
    Buffer cells[CELLS];
} Row;

/* Strings, and what could not be placed: the lines that a user may want to set right. */
static bool worth_correcting(const spz_line *line)
{
    return line->family == SPZ_FAMILY_STRINGS || line->family == SPZ_FAMILY_UNKNOWN;
}

/* The entries as they would stand in a settings file: under one heading where they have the same. */
static void print_advice(spz_report *report, const char *advice, const char *before)
{
    const char *entry = strchr(advice, '\n');
    size_t heading = entry ? (size_t)(entry - advice) : 0;
    if (entry && strncmp(before, advice, heading + 1) == 0)
        advice = entry + 1;
    while (*advice) {
        size_t length = strcspn(advice, "\n");
        Buffer line = {0};
        buffer_add(&line, advice, length);
        layout_flow(&report->out, 4, "", &line, report->options.width);
        advice += length + (advice[length] == '\n');
    }
}

static void say_how_to_correct(spz_report *report, const ShownMovement *shown)
{
    const spz_sections *sections = shown->reading.sections;
    const char *before = "";
    buffer_putc(&report->out, '\n');
    layout_paragraph(&report->out, 0, "", phrase_text(report_speaker(report, shown).language, PHRASE_LINES_CORRECT), report->options.width);
    for (size_t i = 0; i < spz_sections_lines(sections); i++) {
        bool said = strcmp(before, spz_sections_advice(sections, i)) == 0; /* two sections on one staff are one entry */
        if (said || !worth_correcting(spz_sections_line(sections, i)))
            continue;
        print_advice(report, spz_sections_advice(sections, i), before);
        before = spz_sections_advice(sections, i);
    }
}

static void add_row(spz_report *report, Table *table, const ShownMovement *shown, const spz_line *line)
{
    Row row = {0};
    const char *cells[CELLS];
    spz_language language = report_speaker(report, shown).language;
    buffer_puts(&row.cells[0], spz_movement_part_name(shown->reading.movement, line->part));
    say_line_staff(&row.cells[1], language, line);
    buffer_puts(&row.cells[2], words_family(language, line->family));
    say_line_section(&row.cells[3], language, line);
    if (worth_correcting(line))
        say_line_place(&row.cells[4], language, line);
    say_clues(&row.cells[5], language, line);
    for (int i = 0; i < CELLS; i++)
        cells[i] = row.cells[i].text;
    table_row(table, cells);
    for (int i = 0; i < CELLS; i++)
        buffer_let_go(&report->out, &row.cells[i]);
}

static void page(spz_report *report, const ShownMovement *shown)
{
    static const int most[] = {26, 16, 10, 14, 18, 0};
    const char *heads[CELLS];
    const spz_sections *sections = shown->reading.sections;
    Table table;
    block_title(report, shown);
    buffer_putc(&report->out, '\n');
    for (int i = 0; i < CELLS; i++)
        heads[i] = phrase_text(report_speaker(report, shown).language, (Phrase)(PHRASE_LINES_HEAD_PART + i));
    table_begin(&table, CELLS, heads, most);
    for (size_t i = 0; i < spz_sections_lines(sections); i++)
        add_row(report, &table, shown, spz_sections_line(sections, i));
    table_end(&table, &report->out, INDENT, report->options.width);
    say_how_to_correct(report, shown);
}

const Form text_sections = {begin, page, begin};
