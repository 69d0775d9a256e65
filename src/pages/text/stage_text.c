/* The stage in letters, for the terminal: each desk as section and number, as the audience sees the stage. */
#include "writing/document.h"
#include "writing/text_layout.h"
#include "pages/growing_report.h"
#include "pages/drawings/stage_facts.h"
#include "pages/drawings/stage_svg.h"
#include "support/memory.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

enum { COLUMNS = 92, ROWS_MOST = 60, MARK = 8, PAIRS_SHOWN = 2 };
static const double letters_high = 2.1; /* a letter of a terminal is about so many times as high as wide */

typedef struct Sheet {
    char (*rows)[COLUMNS + 1];
    int height;
    double across; /* columns a metre */
    double depth;  /* of the top line, in metres from the podium */
} Sheet;

static const char *short_name(spz_section section)
{
    static const char *const names[] = {
        [SPZ_VN1] = "I", [SPZ_VN2] = "II", [SPZ_VN3] = "III", [SPZ_VA] = "Va", [SPZ_VC] = "Vc", [SPZ_DB] = "Db"};
    return section >= SPZ_VN1 && section <= SPZ_DB ? names[section] : "";
}

static void mark(Sheet *sheet, double x, double y, const char *what)
{
    int length = (int)strlen(what);
    int column = (int)lround(COLUMNS / 2.0 + x * sheet->across - length / 2.0);
    int row = (int)lround((sheet->depth - y) * sheet->across / letters_high);
    row = row < 0 ? 0 : row >= sheet->height ? sheet->height - 1 : row;
    column = column < 0 ? 0 : column > COLUMNS - length ? COLUMNS - length : column;
    memcpy(sheet->rows[row] + column, what, (size_t)length);
}

static void trim(char *row)
{
    size_t length = strlen(row);
    while (length && row[length - 1] == ' ')
        row[--length] = '\0';
}

static void fill(Sheet *sheet, const spz_plan *plan)
{
    char what[2 * MARK + 16];
    for (size_t i = 0; i < spz_plan_desks(plan); i++) {
        const spz_stage_desk *desk = spz_plan_desk(plan, i);
        snprintf(what, sizeof what, "%s.%d", short_name(desk->section), desk->number);
        mark(sheet, desk->x, desk->y, what);
    }
    mark(sheet, 0, 0, "podium");
}

static void print(const Sheet *sheet, Buffer *out)
{
    for (int row = 0; row < sheet->height; row++) {
        trim(sheet->rows[row]);
        buffer_printf(out, "%s\n", sheet->rows[row]);
    }
}

static spz_status draw(const spz_plan *plan, Buffer *out)
{
    Sheet sheet = {0};
    double wide = spz_plan_used_width(plan), deep = spz_plan_used_depth(plan) - spz_plan_front(plan);
    sheet.across = fmin((COLUMNS - 2) / wide, ROWS_MOST * letters_high / (deep + 1));
    sheet.depth = deep;
    sheet.height = (int)ceil((deep + 0.6) * sheet.across / letters_high) + 1;
    sheet.rows = memory_resize(NULL, (size_t)sheet.height, sizeof *sheet.rows);
    if (!sheet.rows)
        return SPZ_NO_MEMORY;
    for (int row = 0; row < sheet.height; row++) {
        memset(sheet.rows[row], ' ', COLUMNS);
        sheet.rows[row][COLUMNS] = '\0';
    }
    fill(&sheet, plan);
    print(&sheet, out);
    int bar = (int)lround(5 * sheet.across);
    buffer_printf(out, "%.*s\n", COLUMNS,
                  "--------------------------------------------------------------------------------------------------------");
    buffer_printf(out, "house left%*s%*s\n\n", COLUMNS / 2 - 6, "audience", COLUMNS - 10 - (COLUMNS / 2 - 6), "house right");
    buffer_puts(out, "|");
    for (int i = 1; i < bar; i++)
        buffer_putc(out, '-');
    buffer_puts(out, "| 5 m\n\n");
    memory_free(sheet.rows);
    return SPZ_OK;
}

static void say_distances(const spz_plan *plan, StagePairs pairs, size_t count, Buffer *out)
{
    Buffer text;
    buffer_init(&text);
    for (size_t i = 0; i < count; i++) {
        stage_facts_distance(plan, pairs[i], &text);
        if (text.length)
            layout_flow(out, 0, "- ", &text, COLUMNS);
    }
    out->failed = out->failed || buffer_failed(&text);
    buffer_free(&text);
}

/* One row a place of the audience, one column a pair. */
static void say_hearing(const spz_plan *plan, StagePairs pairs, size_t count, Buffer *out)
{
    static const int most[] = {16, 30, 30};
    char names[PAIRS_SHOWN][40];
    const char *heads[PAIRS_SHOWN + 1] = {"As heard from"};
    Buffer text[PAIRS_SHOWN] = {{0}};
    Table table;
    for (size_t i = 0; i < count; i++) {
        bool across = pairs[i][0] == pairs[i][1];
        snprintf(names[i], sizeof names[i], "%s%s - %s%s", spz_section_name(pairs[i][0]), across ? " (1)" : "",
                 spz_section_name(pairs[i][1]), across ? " (2)" : "");
        heads[i + 1] = names[i];
    }
    table_begin(&table, (int)count + 1, heads, most);
    for (size_t place = 0; place < spz_plan_places(plan); place++) {
        const char *cells[PAIRS_SHOWN + 1] = {""};
        for (size_t i = 0; i < count; i++) {
            buffer_clear(&text[i]);
            stage_facts_heard(plan, pairs[i], place, &cells[0], &text[i]);
            cells[i + 1] = text[i].text;
        }
        table_row(&table, cells);
    }
    table_end(&table, out, 0, COLUMNS);
    for (size_t i = 0; i < count; i++) {
        out->failed = out->failed || buffer_failed(&text[i]);
        buffer_free(&text[i]);
    }
    layout_paragraph(
        out, 0, "",
        "deg: degrees between their centres; us: microseconds, the difference between the two ears; last: how many times what "
        "can be told apart in this hall (under 1 they sound from one place).",
        COLUMNS);
}

spz_status stage_text(const spz_plan *plan, StagePairs pairs, size_t count, spz_document **out)
{
    Buffer page, text;
    buffer_init(&page);
    buffer_init(&text);
    char title[200];
    const char *name = spz_plan_arrangement(plan);
    snprintf(title, sizeof title, "%c%s", name[0] >= 'a' && name[0] <= 'z' ? name[0] - 'a' + 'A' : name[0],
             name + (name[0] != '\0'));
    layout_heading(&page, title, '=', COLUMNS);
    buffer_puts(&page, "\n");
    stage_facts_size(plan, &text);
    layout_flow(&page, 0, "", &text, COLUMNS);
    stage_facts_players(plan, &text);
    layout_flow(&page, 0, "", &text, COLUMNS);
    buffer_puts(&page, "\n");
    spz_status status = draw(plan, &page);
    if (status == SPZ_OK) {
        say_distances(plan, pairs, count, &page);
        buffer_puts(&page, "\n");
        say_hearing(plan, pairs, count, &page);
        buffer_puts(&page, "\n");
        layout_paragraph(&page, 0, "", report_cautions(SPZ_ENGLISH), COLUMNS);
        page.failed = page.failed || buffer_failed(&text);
        status = document_take(&page, out);
    }
    buffer_free(&page);
    buffer_free(&text);
    return status;
}

spz_status spz_report_stage(const spz_plan *plan, const spz_section (*pairs)[2], size_t count, spz_format format,
                            spz_document **out)
{
    static const spz_section usual[2][2] = {{SPZ_VN1, SPZ_VN2}, {SPZ_VN1, SPZ_VC}};
    *out = NULL;
    if (!pairs || count == 0) {
        pairs = usual;
        count = 2;
    }
    count = count > PAIRS_SHOWN ? PAIRS_SHOWN : count;
    switch (format) {
    case SPZ_AS_TEXT: return stage_text(plan, pairs, count, out);
    case SPZ_AS_SVG: return stage_svg(plan, pairs, count, out);
    case SPZ_AS_JSON:
    case SPZ_AS_CSV:
    case SPZ_AS_HTML:
    case SPZ_AS_MARKDOWN: break;
    }
    return SPZ_BAD_ARGUMENT;
}
