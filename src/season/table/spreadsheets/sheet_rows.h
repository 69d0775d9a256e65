/* sheet_rows.h - the cells of a sheet written as comma-separated values; the two kinds of spreadsheet file give them one by one. */
#ifndef SEASON_TABLE_SHEET_ROWS_H
#define SEASON_TABLE_SHEET_ROWS_H
#include "reader/files/archive.h"
#include "support/buffer.h"

enum { SHEET_COLUMNS_MOST = 64, SHEET_ROWS_MOST = 1 << 20 };

typedef struct SheetRows {
    Buffer *csv;
    Buffer row;        /* under way */
    long line, column; /* that the next row and cell have, from 0 */
    long written;      /* rows in `csv` */
} SheetRows;

/* A cell in the column (from 0); cells come in order. An empty one is nothing. */
void sheet_cell(SheetRows *rows, long column, const char *text);
/* The row is line `line` (from 0), `times` times over; empty ones before others only. */
void sheet_row_end(SheetRows *rows, long line, long times);

/* One of the two kinds. `archive` is open. */
spz_status sheet_of_opendocument(const Archive *archive, const char *sheet, SheetRows *rows, Buffer *fault);
spz_status sheet_of_office_xml(const Archive *archive, const char *sheet, SheetRows *rows, Buffer *fault);

/* What a member holds; SPZ_BAD_ARCHIVE where it isn't there or is damaged, SPZ_OVER_LIMIT. */
spz_status sheet_member(const Archive *archive, const char *name, Buffer *text);
/* 'there is no sheet ...'; the names are those that there are, each with a line end behind it. */
spz_status sheet_missing(const char *sheet, const Buffer *names, Buffer *fault);
#endif
