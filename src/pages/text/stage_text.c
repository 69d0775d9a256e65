/* The stage in letters, for the terminal: each desk as section and number, as the audience sees the stage. */
#include "writing/document.h"
#include "writing/text_layout.h"
#include "pages/drawings/stage/stage_svg.h"
#include "pages/growing_report.h"
#include "support/memory.h"
#include "support/text/utf8.h"
#include "wording/seatings/seating_words.h"
#include "wording/seatings/stage_words.h"
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

static void fill(Sheet *sheet, spz_language language, const spz_plan *plan)
{
    char what[2 * MARK + 16];
    for (size_t i = 0; i < spz_plan_desks(plan); i++) {
        const spz_stage_desk *desk = spz_plan_desk(plan, i);
        snprintf(what, sizeof what, "%s.%d", words_desk_mark(language, desk->section), desk->number);
        mark(sheet, desk->x, desk->y, what);
    }
    if (!spz_plan_is_single(plan))
        mark(sheet, 0, 0, phrase_text(language, PHRASE_STAGE_PODIUM));
}

static void print(const Sheet *sheet, Buffer *out)
{
    for (int row = 0; row < sheet->height; row++) {
        trim(sheet->rows[row]);
        buffer_printf(out, "%s\n", sheet->rows[row]);
    }
}

/* The words under the stage edge: at both ends and in the middle of the line. */
static void name_edge(spz_language language, Buffer *out)
{
    const char *left = phrase_text(language, PHRASE_STAGE_HOUSE_LEFT), *right = phrase_text(language, PHRASE_STAGE_HOUSE_RIGHT),
               *middle = phrase_text(language, PHRASE_STAGE_AUDIENCE);
    size_t at = utf8_columns(left, strlen(left)), wide = utf8_columns(middle, strlen(middle)), end = utf8_columns(right, strlen(right));
    size_t start = (COLUMNS - wide) / 2;
    buffer_puts(out, left);
    for (; at < start; at++)
        buffer_putc(out, ' ');
    buffer_puts(out, middle);
    for (at = start + wide; at < COLUMNS - end; at++)
        buffer_putc(out, ' ');
    buffer_printf(out, "%s\n\n", right);
}

static spz_status draw(const spz_plan *plan, spz_language language, Buffer *out)
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
    fill(&sheet, language, plan);
    print(&sheet, out);
    int bar = (int)lround(5 * sheet.across);
    buffer_printf(out, "%.*s\n", COLUMNS,
                  "--------------------------------------------------------------------------------------------------------");
    name_edge(language, out);
    buffer_puts(out, "|");
    for (int i = 1; i < bar; i++)
        buffer_putc(out, '-');
    buffer_puts(out, "| 5 m\n\n");
    memory_free(sheet.rows);
    return SPZ_OK;
}

static void show_distances(const spz_plan *plan, spz_language language, StagePairs pairs, size_t count, Buffer *out)
{
    Buffer text = {0};
    for (size_t i = 0; i < count; i++) {
        say_stage_distance(&text, language, plan, pairs[i]);
        if (text.length)
            layout_flow(out, 0, "- ", &text, COLUMNS);
    }
    buffer_let_go(out, &text);
}

/* One row a place of the audience, one column a pair. */
static void show_hearing(const spz_plan *plan, spz_language language, StagePairs pairs, size_t count, Buffer *out)
{
    static const int most[] = {20, 30, 30};
    const char *heads[PAIRS_SHOWN + 1] = {phrase_text(language, PHRASE_STAGE_HEARD_HEAD)};
    Buffer names[PAIRS_SHOWN] = {{0}}, text[PAIRS_SHOWN] = {{0}};
    Table table;
    for (size_t i = 0; i < count; i++) {
        say_stage_pair(&names[i], language, pairs[i]);
        heads[i + 1] = names[i].text;
    }
    table_begin(&table, (int)count + 1, heads, most);
    for (size_t place = 0; place < spz_plan_places(plan); place++) {
        const char *cells[PAIRS_SHOWN + 1] = {words_listener(language, place)};
        for (size_t i = 0; i < count; i++) {
            buffer_clear(&text[i]);
            say_stage_heard(&text[i], language, plan, pairs[i], place);
            cells[i + 1] = text[i].text;
        }
        table_row(&table, cells);
    }
    table_end(&table, out, 0, COLUMNS);
    for (size_t i = 0; i < count; i++)
        buffers_let_go(out, &text[i], &names[i]);
    layout_paragraph(out, 0, "", phrase_text(language, PHRASE_STAGE_HEARD_ABOUT), COLUMNS);
}

static spz_status stage_text(const spz_plan *plan, StagePairs pairs, size_t count, spz_language language, spz_document **out)
{
    Buffer page, text;
    buffer_init(&page);
    buffer_init(&text);
    SAY(&text, language, PHRASE_ARRANGEMENT_TITLE, slot_text("arrangement", words_arrangement(language, spz_plan_arrangement(plan))));
    layout_heading(&page, buffer_text(&text), '=', COLUMNS);
    buffer_clear(&text);
    buffer_puts(&page, "\n");
    say_stage_size(&text, language, plan);
    layout_flow(&page, 0, "", &text, COLUMNS);
    say_stage_room(&text, language, plan);
    layout_flow(&page, 0, "", &text, COLUMNS);
    say_stage_players(&text, language, plan);
    layout_flow(&page, 0, "", &text, COLUMNS);
    buffer_puts(&page, "\n");
    spz_status status = draw(plan, language, &page);
    if (status == SPZ_OK) {
        show_distances(plan, language, pairs, count, &page);
        buffer_puts(&page, "\n");
        show_hearing(plan, language, pairs, count, &page);
        buffer_puts(&page, "\n");
        layout_paragraph(&page, 0, "", report_cautions(language), COLUMNS);
        page.failed = page.failed || buffer_failed(&text);
        status = document_take(&page, out);
    }
    buffer_free(&page);
    buffer_free(&text);
    return status;
}

spz_status spz_report_stage(const spz_plan *plan, const spz_section (*pairs)[2], size_t count, spz_format format,
                            spz_language language, spz_document **out)
{
    static const spz_section usual[2][2] = {{SPZ_VN1, SPZ_VN2}, {SPZ_VN1, SPZ_VC}};
    *out = NULL;
    if (!pairs || count == 0) {
        pairs = usual;
        count = 2;
    }
    count = count > PAIRS_SHOWN ? PAIRS_SHOWN : count;
    switch (format) {
    case SPZ_AS_TEXT: return stage_text(plan, pairs, count, language, out);
    case SPZ_AS_SVG: return stage_svg(plan, pairs, count, language, out);
    case SPZ_AS_JSON:
    case SPZ_AS_CSV:
    case SPZ_AS_HTML:
    case SPZ_AS_MARKDOWN:
    case SPZ_AS_ODT:
    case SPZ_AS_ICS: break;
    }
    return SPZ_BAD_ARGUMENT;
}
