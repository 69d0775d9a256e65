#include "writing/csv_text.h"
#include "writing/number_text.h"
#include "support/utf8.h"
#include <ctype.h>
#include <string.h>

void csv_begin(CsvRow *row, Buffer *out)
{
    *row = (CsvRow){.out = out};
}

static void separate(CsvRow *row)
{
    if (row->filled)
        buffer_putc(row->out, ',');
    row->filled = true;
}

static bool looks_like_formula(const char *text)
{
    if (*text == '-')
        return text[1] != '\0' && !isdigit((unsigned char)text[1]);
    return *text == '=' || *text == '+' || *text == '@';
}

void csv_text(CsvRow *row, const char *text)
{
    separate(row);
    if (!text)
        return;
    bool quoted = strpbrk(text, ",\"") != NULL;
    if (quoted)
        buffer_putc(row->out, '"');
    if (looks_like_formula(text))
        buffer_putc(row->out, '\'');
    while (*text) {
        char bytes[UTF8_LONGEST];
        uint32_t character = utf8_next(&text);
        if (character == '\n' || character == '\r' || character == '\t')
            character = ' ';
        if (utf8_is_unsafe(character))
            continue;
        if (character == '"')
            buffer_putc(row->out, '"');
        buffer_add(row->out, bytes, utf8_write(character, bytes));
    }
    if (quoted)
        buffer_putc(row->out, '"');
}

void csv_integer(CsvRow *row, long long value)
{
    separate(row);
    buffer_printf(row->out, "%lld", value);
}

void csv_number(CsvRow *row, double value, int decimals)
{
    char text[NUMBER_TEXT];
    separate(row);
    buffer_puts(row->out, number_text(value, decimals, text));
}

void csv_end(CsvRow *row)
{
    buffer_putc(row->out, '\n');
    row->filled = false;
}

void csv_header(Buffer *out, const char *names)
{
    buffer_puts(out, names);
    buffer_putc(out, '\n');
}
