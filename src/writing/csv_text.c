#include "writing/csv_text.h"
#include "support/numbers.h"
#include "support/text/utf8.h"
#include <string.h>

void csv_begin(CsvRow *row, Buffer *out)
{
    *row = (CsvRow){.out = out};
}

static void separate(CsvRow *row)
{
    if (row->cells++)
        buffer_putc(row->out, ',');
}

void csv_head(CsvRow *row, const char *name)
{
    separate(row);
    buffer_puts(row->out, name);
}

void csv_end_heads(CsvRow *row)
{
    buffer_putc(row->out, '\n');
    row->columns = row->cells;
    row->cells = 0;
}

static bool is_separator(uint32_t character)
{
    return character == ',' || character == ';';
}

/* Blank, invisible or a quotation mark: a spreadsheet may pass over it. */
static bool is_faint(uint32_t character)
{
    return character == ' ' || character == '"' || character == '\'' || character == 0xA0 || character == 0xAD || character == 0x1680 ||
           character == 0x180E || (character >= 0x2000 && character <= 0x200F) || character == 0x202F ||
           (character >= 0x205F && character <= 0x2064) || character == 0x3000 || utf8_width(character) == 0;
}

static bool begins_formula(uint32_t character)
{
    return character == '=' || character == '+' || character == '-' || character == '@' || character == 0xFF1D || character == 0xFF0B ||
           character == 0xFF0D || character == 0xFF20;
}

/* '-12.5' or a dash alone, up to the end or a separator. */
static bool is_harmless(const char *text)
{
    static const char digits[] = "0123456789";
    text += strspn(text, " ");
    bool dash = *text == '-';
    text += dash || *text == '+';
    size_t whole = strspn(text, digits);
    text += whole;
    if (*text == '.' && text[1])
        text += 1 + strspn(text + 1, digits);
    return (whole > 0 || dash) && (!*text || is_separator((unsigned char)*text));
}

static bool needs_guard(const char *text)
{
    for (const char *at = text; *at;) {
        uint32_t character = utf8_safe(utf8_next(&at));
        if (character && !is_faint(character))
            return begins_formula(character) && !is_harmless(text);
    }
    return false;
}

void csv_text(CsvRow *row, const char *text)
{
    bool quoted = text && strpbrk(text, ",\"") != NULL, cut = true;
    separate(row);
    if (quoted)
        buffer_putc(row->out, '"');
    while (text && *text) {
        char bytes[UTF8_LONGEST];
        if (cut && needs_guard(text))
            buffer_putc(row->out, '\'');
        uint32_t character = utf8_safe(utf8_next(&text));
        cut = is_separator(character);
        if (character == '"')
            buffer_putc(row->out, '"');
        if (character)
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
    if (row->columns && row->cells != row->columns)
        row->out->failed = true;
    row->cells = 0;
}
