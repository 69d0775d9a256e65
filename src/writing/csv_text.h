/* csv_text.h - rows of comma-separated values (RFC 4180), safe to open in a spreadsheet. */
#ifndef WRITING_CSV_TEXT_H
#define WRITING_CSV_TEXT_H
#include "support/buffer.h"

typedef struct CsvRow {
    Buffer *out;
    bool filled;
} CsvRow;

void csv_begin(CsvRow *row, Buffer *out);
/* Text from a score: control characters dropped, and a leading '=', '+', '@' (or '-' before anything but a digit) is kept
 * from being taken for a formula by an apostrophe before it. NULL is an empty field. */
void csv_text(CsvRow *row, const char *text);
void csv_integer(CsvRow *row, long long value);
void csv_number(CsvRow *row, double value, int decimals); /* empty where not finite */
void csv_end(CsvRow *row);
/* A whole line of plain names: "a,b,c". */
void csv_header(Buffer *out, const char *names);
#endif
