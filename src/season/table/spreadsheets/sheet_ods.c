/* OpenDocument 1.3 part 3: 9.1 (tables, rows and cells), 19.385 and 19.386 (what a cell's value is), 6.1 (text). */
#include "season/table/spreadsheets/sheet_rows.h"
#include "season/table/spreadsheets/sheet_xml.h"
#include <stdlib.h>
#include <string.h>

typedef struct Ods {
    SheetXml xml;
    SheetRows *rows;
    Buffer text; /* of the cell under way */
} Ods;

/* 'PT19H30M00S' (ISO 8601, a duration) as a time of the day. */
static void put_time(Buffer *out, const char *duration)
{
    const char *hours = strstr(duration, "PT"), *h = hours ? strchr(hours, 'H') : NULL;
    if (h)
        buffer_printf(out, "%02d:%02d", atoi(hours + 2) % 24, atoi(h + 1) % 60);
}

/* The cell's value where it isn't its text; "" then. */
static void put_value(Ods *ods)
{
    const char *kind = sheet_xml_attribute(&ods->xml, "value-type"), *value = NULL;
    char name[16];
    strncpy(name, kind ? kind : "", sizeof name - 1);
    name[sizeof name - 1] = '\0';
    if (strcmp(name, "date") == 0)
        value = sheet_xml_attribute(&ods->xml, "date-value");
    else if (strcmp(name, "float") == 0)
        value = sheet_xml_attribute(&ods->xml, "value");
    else if (strcmp(name, "boolean") == 0)
        value = sheet_xml_attribute(&ods->xml, "boolean-value");
    else if (strcmp(name, "string") == 0)
        value = sheet_xml_attribute(&ods->xml, "string-value");
    else if (strcmp(name, "time") == 0 && (value = sheet_xml_attribute(&ods->xml, "time-value")) != NULL) {
        put_time(&ods->text, value);
        return;
    }
    buffer_puts(&ods->text, value ? value : "");
}

static void take_inside(Ods *ods, SheetPiece piece, bool worded)
{
    SheetXml *xml = &ods->xml;
    if (piece == SHEET_XML_TEXT && worded)
        buffer_puts(&ods->text, sheet_xml_text(xml));
    else if (piece == SHEET_XML_START && sheet_xml_is(xml, "annotation"))
        sheet_xml_skip(xml);
    else if (piece == SHEET_XML_START && worded && (sheet_xml_is(xml, "line-break") || sheet_xml_is(xml, "tab") || (sheet_xml_is(xml, "p") && ods->text.length)))
        buffer_putc(&ods->text, ' ');
    else if (piece == SHEET_XML_START && worded && sheet_xml_is(xml, "s"))
        for (long blanks = sheet_xml_number(xml, "c", 1); blanks > 0 && blanks < 100; blanks--)
            buffer_putc(&ods->text, ' ');
}

static long take_cell(Ods *ods, long column)
{
    long times = sheet_xml_number(&ods->xml, "number-columns-repeated", 1);
    bool empty = sheet_xml_empty(&ods->xml), inside = false;
    buffer_clear(&ods->text);
    put_value(ods);
    bool worded = !ods->text.length;
    for (SheetPiece piece; !empty && (piece = sheet_xml_next(&ods->xml)) != SHEET_XML_OVER;) {
        if (piece == SHEET_XML_END && (sheet_xml_is(&ods->xml, "table-cell") || sheet_xml_is(&ods->xml, "covered-table-cell")))
            break;
        inside = piece == SHEET_XML_START ? inside || sheet_xml_is(&ods->xml, "p") : inside;
        take_inside(ods, piece, worded && inside);
    }
    for (long i = 0; i < times && column + i < SHEET_COLUMNS_MOST; i++)
        sheet_cell(ods->rows, column + i, buffer_text(&ods->text));
    return column + times;
}

static void take_table(Ods *ods)
{
    long line = 0, column = 0, times = 1;
    for (SheetPiece piece; (piece = sheet_xml_next(&ods->xml)) != SHEET_XML_OVER;) {
        bool row = sheet_xml_is(&ods->xml, "table-row");
        if (piece == SHEET_XML_END && sheet_xml_is(&ods->xml, "table"))
            return;
        if (piece == SHEET_XML_START && row) {
            column = 0;
            times = sheet_xml_number(&ods->xml, "number-rows-repeated", 1);
        } else if (piece == SHEET_XML_START && (sheet_xml_is(&ods->xml, "table-cell") || sheet_xml_is(&ods->xml, "covered-table-cell")))
            column = take_cell(ods, column);
        if (row && (piece == SHEET_XML_END || sheet_xml_empty(&ods->xml))) {
            sheet_row_end(ods->rows, line, times);
            line += times;
        }
    }
}

spz_status sheet_of_opendocument(const Archive *archive, const char *sheet, SheetRows *rows, Buffer *fault)
{
    Buffer content = {0}, names = {0};
    Ods ods = {.rows = rows};
    bool found = false;
    buffer_init(&ods.text);
    spz_status status = sheet_member(archive, "content.xml", &content);
    sheet_xml_open(&ods.xml, &content);
    for (SheetPiece piece; status == SPZ_OK && !found && (piece = sheet_xml_next(&ods.xml)) != SHEET_XML_OVER;) {
        if (piece != SHEET_XML_START || !sheet_xml_is(&ods.xml, "table"))
            continue;
        const char *name = sheet_xml_attribute(&ods.xml, "name");
        found = !sheet || (name && strcmp(name, sheet) == 0);
        buffer_printf(&names, "%s\n", name ? name : "");
        if (found)
            take_table(&ods);
        else
            sheet_xml_skip(&ods.xml);
    }
    if (status == SPZ_OK)
        status = buffer_failed(&ods.text) || buffer_failed(&names) ? SPZ_NO_MEMORY : sheet_xml_status(&ods.xml);
    if (status == SPZ_OK && !found)
        status = sheet_missing(sheet, &names, fault);
    sheet_xml_close(&ods.xml);
    buffer_free(&ods.text);
    buffer_free(&names);
    buffer_free(&content);
    return status;
}
