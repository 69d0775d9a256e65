#include "season/table/spreadsheets/spreadsheet.h"
#include "season/table/spreadsheets/sheet_rows.h"
#include <string.h>

enum { MEMBER_MOST = 1 << 28 };

bool spreadsheet_is(const char *bytes, size_t length)
{
    return archive_looks_like(bytes, length);
}

void sheet_cell(SheetRows *rows, long column, const char *text)
{
    if (!text || !*text || column >= SHEET_COLUMNS_MOST)
        return;
    for (; rows->column < column; rows->column++)
        buffer_puts(&rows->row, ",");
    buffer_puts(&rows->row, "\"");
    for (; *text; text++) {
        bool end = *text == '\n' || *text == '\r';
        buffer_putc(&rows->row, end ? ' ' : *text);
        if (*text == '"')
            buffer_putc(&rows->row, '"');
    }
    buffer_puts(&rows->row, "\"");
}

void sheet_row_end(SheetRows *rows, long line, long times)
{
    if (!rows->row.length || line >= SHEET_ROWS_MOST)
        times = 0;
    for (; times > 0 && rows->written < line; rows->written++)
        buffer_puts(rows->csv, "\n");
    for (long i = 0; i < times && rows->written < SHEET_ROWS_MOST; i++, rows->written++)
        buffer_printf(rows->csv, "%s\n", rows->row.text);
    rows->csv->failed = rows->csv->failed || buffer_failed(&rows->row);
    buffer_clear(&rows->row);
    rows->column = 0;
}

spz_status sheet_member(const Archive *archive, const char *name, Buffer *text)
{
    return archive_text(archive, name, MEMBER_MOST, text);
}

spz_status sheet_missing(const char *sheet, const Buffer *names, Buffer *fault)
{
    buffer_printf(fault, sheet ? "it has no sheet '%s'" : "it has no sheet", sheet);
    for (const char *at = buffer_text(names); *at; at += strcspn(at, "\n") + 1)
        buffer_printf(fault, "%s'%.*s'", at == names->text ? "; there are " : ", ", (int)strcspn(at, "\n"), at);
    return SPZ_BAD_SETTINGS;
}

spz_status spreadsheet_text(const char *bytes, size_t length, const char *sheet, Buffer *csv, Buffer *fault)
{
    Archive archive;
    SheetRows rows = {.csv = csv};
    spz_status status = archive_open(&archive, bytes, length);
    buffer_init(&rows.row);
    if (status == SPZ_OK && archive_find(&archive, "content.xml"))
        status = sheet_of_opendocument(&archive, sheet, &rows, fault);
    else if (status == SPZ_OK && archive_find(&archive, "xl/workbook.xml"))
        status = sheet_of_office_xml(&archive, sheet, &rows, fault);
    else if (status == SPZ_OK) {
        buffer_puts(fault, "it is a compressed file, but no spreadsheet (.ods or .xlsx)");
        status = SPZ_BAD_SETTINGS;
    }
    if (status && !fault->length)
        buffer_puts(fault, archive.fault ? archive.fault : spz_status_text(status));
    buffer_free(&rows.row);
    archive_close(&archive);
    return status ? status : buffer_failed(csv) ? SPZ_NO_MEMORY : SPZ_OK;
}
