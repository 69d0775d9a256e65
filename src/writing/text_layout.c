#include "writing/text_layout.h"
#include "support/text/utf8.h"
#include "spezzato/report.h"
#include <string.h>

static void blanks(Buffer *out, size_t count)
{
    for (size_t i = 0; i < count; i++)
        buffer_putc(out, ' ');
}

/* Length in bytes of the piece of `text` that goes on a line of `room` columns: whole words, or as many characters as fit when
 * even the first word is too long. */
static size_t piece_length(const char *text, size_t room)
{
    size_t fits = 0, words = 0, columns = 0;
    const char *at = text;
    while (*at) {
        const char *next = at;
        columns += (size_t)utf8_width(utf8_next(&next));
        if (*at == ' ')
            words = (size_t)(at - text);
        if (columns > room)
            break;
        fits = (size_t)(next - text);
        at = next;
    }
    if (!*at)
        return fits;
    if (words > 0)
        return words;
    const char *one = text;
    utf8_next(&one);
    return fits ? fits : (size_t)(one - text);
}

static const char *skip_blanks(const char *text)
{
    while (*text == ' ')
        text++;
    return text;
}

void layout_words(Buffer *out, const char *text)
{
    while (*text) {
        char bytes[UTF8_LONGEST];
        uint32_t character = utf8_safe(utf8_next(&text));
        if (character)
            buffer_add(out, bytes, utf8_write(character, bytes));
    }
}

static char *cleaned(const char *text)
{
    size_t size = text ? strlen(text) * 3 + 1 : 1; /* a wrong byte becomes three */
    char *copy = memory_get(size);
    return copy ? spz_text_clean(text, copy, size) : NULL;
}

/* `text` is clean. */
static void wrap(Buffer *out, size_t first_indent, const char *lead, size_t indent, const char *text, size_t room)
{
    blanks(out, first_indent);
    buffer_puts(out, lead);
    text = skip_blanks(text);
    for (bool first = true; *text || first; first = false) {
        size_t length = piece_length(text, room);
        if (!first)
            blanks(out, indent);
        buffer_add(out, text, length);
        buffer_putc(out, '\n');
        text = skip_blanks(text + length);
    }
}

void layout_paragraph(Buffer *out, int indent, const char *lead, const char *text, int width)
{
    size_t before = (size_t)indent + utf8_columns(lead, strlen(lead));
    char *copy = cleaned(text);
    if (!copy) {
        out->failed = true;
        return;
    }
    wrap(out, (size_t)indent, lead, before, copy, (size_t)width > before ? (size_t)width - before : 1);
    memory_free(copy);
}

void layout_flow(Buffer *out, int indent, const char *lead, Buffer *line, int width)
{
    layout_paragraph(out, indent, lead, buffer_text(line), width);
    buffer_let_go(out, line);
}

void layout_heading(Buffer *out, const char *text, char mark, int width)
{
    char *copy = cleaned(text);
    if (!copy) {
        out->failed = true;
        return;
    }
    size_t columns = utf8_columns(copy, strlen(copy));
    wrap(out, 0, "", 0, copy, (size_t)width);
    for (size_t i = 0; i < columns && i < (size_t)width; i++)
        buffer_putc(out, mark);
    buffer_putc(out, '\n');
    memory_free(copy);
}

void table_begin(Table *table, int columns, const char *const *heads, const int *most)
{
    *table = (Table){.columns = columns};
    arena_init(&table->arena);
    for (int i = 0; i < columns; i++) {
        table->heads[i] = heads ? heads[i] : NULL;
        table->most[i] = most[i];
    }
}

void table_align_right(Table *table, int column)
{
    table->right[column] = true;
}

static const char *keep(Table *table, const char *text)
{
    size_t size = text ? strlen(text) * 3 + 1 : 1;
    char *copy = arena_take(&table->arena, size, 1);
    if (copy)
        spz_text_clean(text, copy, size);
    else
        table->failed = true;
    return copy ? copy : "";
}

void table_row(Table *table, const char *const *cells)
{
    TableRow row = {{0}, NULL};
    for (int i = 0; i < table->columns; i++)
        row.cells[i] = keep(table, cells[i]);
    if (!array_push(&table->rows, row))
        table->failed = true;
}

void table_note(Table *table, const char *note)
{
    if (table->rows.count && note && *note)
        table->rows.at[table->rows.count - 1].note = keep(table, note);
}

static const size_t gap = 2;         /* blanks between columns */
static const size_t least_width = 10; /* a column that must give way stays this wide */
static const size_t word_most = 24;   /* a longer word may be broken */

static bool is_empty(const Table *table, int column)
{
    for (size_t r = 0; r < table->rows.count; r++)
        if (*table->rows.at[r].cells[column])
            return false;
    return column > 0 && !table->fixed;
}

/* Columns of the longest word that should not be broken. */
static size_t longest_word(const Table *table, int column)
{
    size_t longest = least_width;
    for (size_t r = 0; r < table->rows.count; r++)
        for (const char *at = table->rows.at[r].cells[column]; *at;) {
            size_t length = strcspn(at, " "), columns = utf8_columns(at, length);
            longest = columns > longest && columns <= word_most ? columns : longest;
            at += length + (at[length] == ' ');
        }
    return longest;
}

/* Takes from the widest column that is wider than its `least`, until the line is short enough. Returns what is left of the excess. */
static size_t narrow(const Table *table, size_t *widths, const size_t *least, size_t excess)
{
    for (; excess; excess--) {
        int widest = -1;
        for (int c = 0; c < table->columns; c++)
            if (widths[c] > least[c] && (widest < 0 || widths[c] > widths[widest]))
                widest = c;
        if (widest < 0)
            return excess;
        widths[widest]--;
    }
    return 0;
}

/* Widths that the contents ask for; a column without a limit takes what is left of the line, if it needs that much. An empty column
 * has none. */
static void find_widths(const Table *table, size_t room, size_t widths[TABLE_COLUMNS_MOST])
{
    int flexible = -1;
    size_t taken = 0, words[TABLE_COLUMNS_MOST], least[TABLE_COLUMNS_MOST];
    for (int c = 0; c < table->columns; c++) {
        words[c] = longest_word(table, c);
        least[c] = least_width;
        if (is_empty(table, c))
            continue;
        size_t widest = table->heads[c] ? utf8_columns(table->heads[c], strlen(table->heads[c])) : 0;
        for (size_t r = 0; r < table->rows.count; r++) {
            const char *cell = table->rows.at[r].cells[c];
            size_t columns = utf8_columns(cell, strlen(cell));
            widest = columns > widest ? columns : widest;
        }
        if (table->most[c] && widest > (size_t)table->most[c])
            widest = words[c] > least_width && words[c] > (size_t)table->most[c] ? words[c] : (size_t)table->most[c];
        if (table->fixed)
            widest = (size_t)table->most[c];
        if (!table->most[c])
            flexible = c;
        widths[c] = widest;
        taken += widest + (c ? gap : 0);
    }
    if (flexible >= 0 && taken > room) {
        size_t others = taken - widths[flexible];
        widths[flexible] = room > others + least_width ? room - others : least_width;
        taken = others + widths[flexible];
    }
    size_t excess = taken > room ? taken - room : 0;
    excess = narrow(table, widths, words, excess); /* first what no word needs */
    narrow(table, widths, least, excess);
}

static void print_cell(Buffer *out, const char *piece, size_t length, size_t width, bool right, bool last)
{
    size_t columns = utf8_columns(piece, length);
    size_t missing = width > columns ? width - columns : 0;
    if (right)
        blanks(out, missing);
    buffer_add(out, piece, length);
    if (!right && !last)
        blanks(out, missing);
}

/* No line ends in blanks. */
static void end_line(Buffer *out)
{
    while (out->length && out->text[out->length - 1] == ' ')
        out->text[--out->length] = '\0';
    buffer_putc(out, '\n');
}

static void print_row(const Table *table, Buffer *out, size_t indent, const size_t *widths, const char *const *cells)
{
    const char *rest[TABLE_COLUMNS_MOST];
    bool more = true;
    for (int c = 0; c < table->columns; c++)
        rest[c] = skip_blanks(cells[c] ? cells[c] : "");
    while (more) {
        more = false;
        blanks(out, indent);
        for (int c = 0; c < table->columns; c++) {
            if (c && !widths[c])
                continue;
            size_t length = *rest[c] ? piece_length(rest[c], widths[c]) : 0;
            if (c)
                blanks(out, gap);
            print_cell(out, rest[c], length, widths[c], table->right[c], c + 1 == table->columns);
            rest[c] = skip_blanks(rest[c] + length);
            more = more || *rest[c];
        }
        end_line(out);
    }
}

void table_end(Table *table, Buffer *out, int indent, int width)
{
    size_t widths[TABLE_COLUMNS_MOST] = {0};
    size_t room = width > indent ? (size_t)(width - indent) : 1;
    find_widths(table, room, widths);
    if (table->heads[0])
        print_row(table, out, (size_t)indent, widths, table->heads);
    for (size_t r = 0; r < table->rows.count; r++) {
        const TableRow *row = &table->rows.at[r];
        size_t note_indent = (size_t)indent + widths[0] + gap;
        print_row(table, out, (size_t)indent, widths, row->cells);
        if (row->note)
            wrap(out, note_indent, "", note_indent, row->note, (size_t)width > note_indent ? (size_t)width - note_indent : 1);
    }
    if (table->failed)
        out->failed = true;
    array_free(&table->rows);
    arena_release(&table->arena);
}

char *spz_text_clean(const char *text, char *out, size_t size)
{
    size_t used = 0;
    if (size == 0)
        return out;
    while (text && *text) {
        char bytes[UTF8_LONGEST];
        uint32_t character = utf8_safe(utf8_next(&text));
        if (!character)
            continue;
        size_t length = utf8_write(character, bytes);
        if (used + length >= size)
            break;
        for (size_t i = 0; i < length; i++)
            out[used++] = bytes[i];
    }
    out[used] = '\0';
    return out;
}
