/* ECMA-376 part 1: 18.2 (workbook), 18.3.1.4 (cells), 18.4 (shared strings), 18.8.30 (formats of numbers), 18.17.4.1 (dates). */
#include "season/dates/dates.h"
#include "season/table/spreadsheets/sheet_rows.h"
#include "season/table/spreadsheets/sheet_xml.h"
#include "support/arena.h"
#include "support/array.h"
#include "support/numbers.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { DAY_MINUTES = 24 * 60, FROM_1904 = 1462, FORMATS_MOST = 512 };

typedef struct Xlsx {
    const Archive *archive;
    SheetRows *rows;
    Arena arena;
    ARRAY(const char *) strings;
    ARRAY(bool) dated;          /* styles of cells: it shows a date or a time */
    long formats[FORMATS_MOST]; /* numbers of the file's own formats that do */
    size_t format_count;
    bool since_1904;
    Buffer text;                /* of the cell under way */
    spz_status status;
} Xlsx;

/* Whether a format shows a day or a time: a letter for it outside quotation marks and brackets. */
static bool is_dated(const char *code)
{
    bool quoted = false, bracketed = false;
    for (; *code; code++) {
        quoted = quoted != (*code == '"');
        bracketed = (bracketed || *code == '[') && *code != ']';
        if (*code == '\\' && code[1])
            code++;
        else if (!quoted && !bracketed && strchr("yYdDhH", *code))
            return true;
    }
    return false;
}

/* Formats that the standard numbers itself: 14 to 22 are days and times, 45 to 47 times, 27 to 36 and 50 to 58 those of East Asia. */
static bool shows_date(const Xlsx *xlsx, long format)
{
    if ((format >= 14 && format <= 22) || (format >= 45 && format <= 47) || (format >= 27 && format <= 36) || (format >= 50 && format <= 58))
        return true;
    for (size_t i = 0; i < xlsx->format_count; i++)
        if (xlsx->formats[i] == format)
            return true;
    return false;
}

static void read_style(Xlsx *xlsx, SheetXml *xml, bool *cells)
{
    if (sheet_xml_is(xml, "numFmt")) {
        long number = sheet_xml_number(xml, "numFmtId", -1);
        const char *code = sheet_xml_attribute(xml, "formatCode");
        if (code && is_dated(code) && xlsx->format_count < FORMATS_MOST)
            xlsx->formats[xlsx->format_count++] = number;
    } else if (sheet_xml_is(xml, "cellXfs"))
        *cells = true;
    else if (*cells && sheet_xml_is(xml, "xf") && !array_push(&xlsx->dated, shows_date(xlsx, sheet_xml_number(xml, "numFmtId", 0))))
        xlsx->status = SPZ_NO_MEMORY;
}

static void keep_string(Xlsx *xlsx)
{
    const char *kept = arena_string(&xlsx->arena, buffer_text(&xlsx->text));
    if (!kept || !array_push(&xlsx->strings, kept))
        xlsx->status = SPZ_NO_MEMORY;
    buffer_clear(&xlsx->text);
}

static void end_member(Xlsx *xlsx, const SheetXml *xml)
{
    if (xlsx->status == SPZ_OK)
        xlsx->status = buffer_failed(&xlsx->text) ? SPZ_NO_MEMORY : sheet_xml_status(xml);
}

/* Members that need not be there. */
static void read_about(Xlsx *xlsx, const char *member, bool strings)
{
    SheetXml xml;
    Buffer content = {0};
    bool cells = false, worded = false;
    if (archive_find(xlsx->archive, member))
        xlsx->status = sheet_member(xlsx->archive, member, &content);
    sheet_xml_open(&xml, &content);
    for (SheetPiece piece; content.length && xlsx->status == SPZ_OK && (piece = sheet_xml_next(&xml)) != SHEET_XML_OVER;) {
        bool t = sheet_xml_is(&xml, "t");
        if (piece == SHEET_XML_START && !strings)
            read_style(xlsx, &xml, &cells);
        else if (piece == SHEET_XML_END && sheet_xml_is(&xml, "cellXfs"))
            cells = false;
        else if (strings && piece == SHEET_XML_START && sheet_xml_is(&xml, "rPh")) /* how it is spoken */
            sheet_xml_skip(&xml);
        else if (strings && (piece == SHEET_XML_END || sheet_xml_empty(&xml)) && sheet_xml_is(&xml, "si"))
            keep_string(xlsx);
        else if (strings && piece == SHEET_XML_TEXT && worded)
            buffer_puts(&xlsx->text, sheet_xml_text(&xml));
        worded = piece == SHEET_XML_TEXT ? worded : piece == SHEET_XML_START && t && !sheet_xml_empty(&xml);
    }
    if (content.length)
        end_member(xlsx, &xml);
    sheet_xml_close(&xml);
    buffer_free(&content);
}

static void put_date(Xlsx *xlsx, double days)
{
    long whole = (long)floor(days), minutes = lround((days - floor(days)) * DAY_MINUTES);
    if (minutes == DAY_MINUTES) {
        whole++;
        minutes = 0;
    }
    if (whole > 0) {
        Date date = date_after((Date){1899, 12, 30}, whole + (xlsx->since_1904 ? FROM_1904 : 0));
        buffer_printf(&xlsx->text, "%04d-%02d-%02d", date.year, date.month, date.day);
    }
    if (minutes || whole == 0)
        buffer_printf(&xlsx->text, "%s%02ld:%02ld", whole > 0 ? " " : "", minutes / 60, minutes % 60);
}

/* What stands in the cell, by its kind (s: a shared text, b: true or false) and style. */
static void put_value(Xlsx *xlsx, const char *value, char kind, long style)
{
    double number;
    if (kind == 's') {
        long index = strtol(value, NULL, 10);
        buffer_puts(&xlsx->text, index >= 0 && (size_t)index < xlsx->strings.count ? xlsx->strings.at[index] : "");
    } else if (kind == 'b')
        buffer_puts(&xlsx->text, *value == '1' ? "true" : "false");
    else if (kind == 'n' && style >= 0 && (size_t)style < xlsx->dated.count && xlsx->dated.at[style] && number_of(value, &number) && number < 200000)
        put_date(xlsx, number);
    else
        buffer_puts(&xlsx->text, value);
}

/* 'C12' is column 2, from 0; -1 for what names none. */
static long column_named(const char *place)
{
    long column = 0;
    for (; *place >= 'A' && *place <= 'Z' && column < SHEET_COLUMNS_MOST * 26; place++)
        column = column * 26 + (*place - 'A' + 1);
    return column - 1;
}

static long take_cell(Xlsx *xlsx, SheetXml *xml, long usual)
{
    const char *place = sheet_xml_attribute(xml, "r");
    long column = place ? column_named(place) : usual, style = sheet_xml_number(xml, "s", 0);
    const char *type = sheet_xml_attribute(xml, "t");
    char kind = !type ? 'n' : strcmp(type, "str") == 0 || strcmp(type, "inlineStr") == 0 ? 't' : *type;
    bool worded = false, empty = sheet_xml_empty(xml);
    Buffer value = {0};
    for (SheetPiece piece; !empty && (piece = sheet_xml_next(xml)) != SHEET_XML_OVER && !(piece == SHEET_XML_END && sheet_xml_is(xml, "c"));) {
        if (piece == SHEET_XML_START && sheet_xml_is(xml, "rPh"))
            sheet_xml_skip(xml);
        else if (piece == SHEET_XML_TEXT && worded)
            buffer_puts(&value, sheet_xml_text(xml));
        else if (piece != SHEET_XML_TEXT)
            worded = piece == SHEET_XML_START && !sheet_xml_empty(xml) && (sheet_xml_is(xml, "v") || sheet_xml_is(xml, "t"));
    }
    buffer_clear(&xlsx->text);
    if (value.length)
        put_value(xlsx, value.text, kind, style);
    sheet_cell(xlsx->rows, column, buffer_text(&xlsx->text));
    buffer_let_go(xlsx->rows->csv, &value);
    return column + 1;
}

static void read_sheet(Xlsx *xlsx, const char *member)
{
    SheetXml xml;
    Buffer content = {0};
    long line = -1, column = 0;
    xlsx->status = sheet_member(xlsx->archive, member, &content);
    sheet_xml_open(&xml, &content);
    for (SheetPiece piece; xlsx->status == SPZ_OK && (piece = sheet_xml_next(&xml)) != SHEET_XML_OVER;) {
        bool row = sheet_xml_is(&xml, "row");
        if (piece == SHEET_XML_START && row) {
            line = sheet_xml_number(&xml, "r", line + 2) - 1;
            column = 0;
        } else if (piece == SHEET_XML_START && sheet_xml_is(&xml, "c"))
            column = take_cell(xlsx, &xml, column);
        if (row && (piece == SHEET_XML_END || sheet_xml_empty(&xml)))
            sheet_row_end(xlsx->rows, line, 1);
    }
    end_member(xlsx, &xml);
    sheet_xml_close(&xml);
    buffer_free(&content);
}

/* The relation of the sheet (NULL: the first) in the workbook; "" where there is none. */
static void find_relation(Xlsx *xlsx, const char *sheet, Buffer *relation, Buffer *names)
{
    SheetXml xml;
    Buffer content = {0};
    xlsx->status = sheet_member(xlsx->archive, "xl/workbook.xml", &content);
    sheet_xml_open(&xml, &content);
    for (SheetPiece piece; xlsx->status == SPZ_OK && (piece = sheet_xml_next(&xml)) != SHEET_XML_OVER;) {
        if (piece == SHEET_XML_START && sheet_xml_is(&xml, "workbookPr")) {
            const char *since = sheet_xml_attribute(&xml, "date1904");
            xlsx->since_1904 = since && (*since == '1' || *since == 't');
        }
        if (piece != SHEET_XML_START || !sheet_xml_is(&xml, "sheet"))
            continue;
        const char *name = sheet_xml_attribute(&xml, "name");
        bool wanted = !relation->length && (!sheet || (name && strcmp(name, sheet) == 0));
        buffer_printf(names, "%s\n", name ? name : "");
        const char *id = wanted ? sheet_xml_attribute(&xml, "id") : NULL;
        buffer_puts(relation, id ? id : "");
    }
    end_member(xlsx, &xml);
    sheet_xml_close(&xml);
    buffer_free(&content);
}

/* The member that the relation leads to. */
static void find_target(Xlsx *xlsx, const char *relation, Buffer *member)
{
    SheetXml xml;
    Buffer content = {0};
    xlsx->status = sheet_member(xlsx->archive, "xl/_rels/workbook.xml.rels", &content);
    sheet_xml_open(&xml, &content);
    for (SheetPiece piece; xlsx->status == SPZ_OK && !member->length && (piece = sheet_xml_next(&xml)) != SHEET_XML_OVER;) {
        const char *id = piece == SHEET_XML_START && sheet_xml_is(&xml, "Relationship") ? sheet_xml_attribute(&xml, "Id") : NULL;
        if (!id || strcmp(id, relation) != 0)
            continue;
        const char *target = sheet_xml_attribute(&xml, "Target");
        if (target)
            buffer_printf(member, "%s%s", *target == '/' ? "" : "xl/", target + (*target == '/'));
    }
    end_member(xlsx, &xml);
    sheet_xml_close(&xml);
    buffer_free(&content);
}

static void release(Xlsx *xlsx)
{
    array_free(&xlsx->strings);
    array_free(&xlsx->dated);
    buffer_free(&xlsx->text);
    arena_release(&xlsx->arena);
}

spz_status sheet_of_office_xml(const Archive *archive, const char *sheet, SheetRows *rows, Buffer *fault)
{
    Xlsx xlsx = {.archive = archive, .rows = rows};
    Buffer relation = {0}, names = {0}, member = {0};
    arena_init(&xlsx.arena);
    buffer_init(&xlsx.text);
    find_relation(&xlsx, sheet, &relation, &names);
    if (xlsx.status == SPZ_OK && (buffer_failed(&relation) || buffer_failed(&names)))
        xlsx.status = SPZ_NO_MEMORY;
    if (xlsx.status == SPZ_OK && !relation.length)
        xlsx.status = sheet_missing(sheet, &names, fault);
    if (xlsx.status == SPZ_OK)
        find_target(&xlsx, relation.text, &member);
    if (xlsx.status == SPZ_OK && buffer_failed(&member))
        xlsx.status = SPZ_NO_MEMORY;
    if (xlsx.status == SPZ_OK)
        read_about(&xlsx, "xl/sharedStrings.xml", true);
    if (xlsx.status == SPZ_OK)
        read_about(&xlsx, "xl/styles.xml", false);
    if (xlsx.status == SPZ_OK)
        read_sheet(&xlsx, buffer_text(&member));
    buffer_free(&member);
    buffer_free(&names);
    buffer_free(&relation);
    release(&xlsx);
    return xlsx.status;
}
