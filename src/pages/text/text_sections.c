/* How every part was understood, and what to write where that is wrong. */
#include "writing/text_layout.h"
#include "pages/text/text_blocks.h"
#include <string.h>

enum { INDENT = 2 };

static void begin(spz_report *report)
{
    (void)report;
}

enum { CELLS = 6 };

/* The cells of one row, each put together in a buffer of its own. */
typedef struct Row {
    Buffer cells[CELLS];
} Row;

static void add_words(Buffer *cell, const char *words)
{
    if (words && *words) {
        buffer_puts(cell, cell->length ? ", " : "");
        buffer_puts(cell, words);
    }
}

static void add_count(Buffer *cell, const char *words, int number)
{
    if (number)
        buffer_printf(cell, "%s%s %d", cell->length ? ", " : "", words, number);
}

static void line_section(const spz_line *line, Buffer *cell)
{
    buffer_puts(cell, line->section ? spz_section_name(line->section) : "-");
    if (line->also)
        buffer_printf(cell, " and %s", spz_section_name(line->also));
}

/* What the line is within its section. */
static void line_place(const spz_line *line, Buffer *cell)
{
    add_count(cell, "orchestra", line->orchestra);
    add_count(cell, "part", line->number);
    add_count(cell, "divided, line", line->division);
    add_words(cell, line->desk);
    if (line->left_out)
        add_words(cell, "left out");
    if (line->role == SPZ_SOLO || line->role == SPZ_CONTINUO)
        add_words(cell, spz_role_name(line->role));
}

static void line_where(const spz_line *line, Buffer *cell)
{
    add_count(cell, "staff", line->staff);
    if (line->voice) {
        add_words(cell, "voice ");
        buffer_puts(cell, line->voice);
    }
}

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
        Buffer line;
        buffer_init(&line);
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
    layout_paragraph(&report->out, 0, "",
                     "To correct a part, copy its line into a settings file, change what stands behind the '=', and give that file "
                     "with --settings:",
                     report->options.width);
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
    buffer_puts(&row.cells[0], spz_movement_part_name(shown->reading.movement, line->part));
    line_where(line, &row.cells[1]);
    buffer_puts(&row.cells[2], spz_family_name(line->family));
    line_section(line, &row.cells[3]);
    if (worth_correcting(line))
        line_place(line, &row.cells[4]);
    buffer_puts(&row.cells[5], line->because);
    for (int i = 0; i < CELLS; i++)
        cells[i] = row.cells[i].text;
    table_row(table, cells);
    for (int i = 0; i < CELLS; i++) {
        report->out.failed = report->out.failed || row.cells[i].failed;
        buffer_free(&row.cells[i]);
    }
}

static void page(spz_report *report, const ShownMovement *shown)
{
    static const char *const heads[] = {"Part", "Where", "Family", "Section", "Place in it", "Because"};
    static const int most[] = {26, 16, 10, 14, 18, 0};
    const spz_sections *sections = shown->reading.sections;
    Table table;
    block_title(report, shown);
    buffer_putc(&report->out, '\n');
    table_begin(&table, CELLS, heads, most);
    for (size_t i = 0; i < spz_sections_lines(sections); i++)
        add_row(report, &table, shown, spz_sections_line(sections, i));
    table_end(&table, &report->out, INDENT, report->options.width);
    say_how_to_correct(report, shown);
}

const Form text_sections = {begin, page, begin};
