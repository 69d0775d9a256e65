/* csv_text.h - the one door for rows of comma-separated values (RFC 4180), safe to open in a spreadsheet. */
#ifndef WRITING_CSV_TEXT_H
#define WRITING_CSV_TEXT_H
#include "support/buffer.h"

typedef struct CsvRow {
    Buffer *out;
    size_t cells;   /* in the row under way */
    size_t columns; /* of the table; 0 before its header: any number */
} CsvRow;

void csv_begin(CsvRow *row, Buffer *out);
/* The names of the columns, one by one. Every row has as many cells from the end of them on. */
void csv_head(CsvRow *row, const char *name);
void csv_end_heads(CsvRow *row);
/* Text from a score, made safe as for a terminal (spz_text_clean); NULL is an empty field. What a spreadsheet could take for a formula has an
 * apostrophe before it: '=', '+', '-', '@' and their full-width forms, whatever blank, invisible or quoting characters come first, at the
 * beginning and behind each comma or semicolon, at which a spreadsheet of another country would cut. A number stays a number. */
void csv_text(CsvRow *row, const char *text);
void csv_integer(CsvRow *row, long long value);
void csv_number(CsvRow *row, double value, int decimals); /* empty where not finite */
/* Marks the buffer as failed where the row has more or fewer cells than the header. */
void csv_end(CsvRow *row);
#endif
