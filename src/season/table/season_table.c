/* The file of the table: its bytes, its separator, its header; rows are handed on one by one. libcsv sees one line of the file at a
 * time, so that every row knows the line on which it begins, also where a cell holds line ends. */
#include "season/table/season_table.h"
#include "season/table/rows.h"
#include "support/memory.h"
#include "support/message.h"
#include "support/utf8.h"
#include <csv.h>
#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

#define TABLE_BYTES_MOST ((size_t)1 << 30) /* a row for each of five million scores */
enum { CELLS_MOST = 64, HEADER_ROWS = 10 /* people put a title above the header */, RESTARTS_MOST = 20 };

typedef struct Parsing {
    Rows rows;
    Row row;
    char *raw[CELLS_MOST]; /* cells of the row under way; memory of their own until it ends */
    size_t cell_count;
    bool bad_text;         /* some cell is no UTF-8 */
    Column columns[CELLS_MOST];
    size_t column_count;   /* 0: no header yet */
    long tried;            /* rows above the header */
    long line, row_line;   /* of the file; where the row under way began */
    bool in_row;
    spz_status status;
} Parsing;

static spz_message place_of(const Parsing *parsing, spz_severity severity)
{
    return (spz_message){.severity = severity, .file = parsing->rows.table->path, .line = parsing->row_line};
}

static void forget_row(Parsing *parsing)
{
    for (size_t i = 0; i < parsing->cell_count && i < CELLS_MOST; i++)
        memory_free(parsing->raw[i]);
    parsing->cell_count = 0;
    parsing->bad_text = false;
    parsing->in_row = false;
}

static void take_cell(void *cell, size_t length, void *context)
{
    Parsing *parsing = context;
    if (parsing->cell_count >= CELLS_MOST)
        return;
    char *copy = memory_get(length + 1);
    if (!copy) {
        parsing->status = SPZ_NO_MEMORY;
        return;
    }
    memcpy(copy, cell, length);
    copy[length] = '\0';
    parsing->bad_text = parsing->bad_text || !utf8_is_valid(copy, length);
    parsing->raw[parsing->cell_count++] = copy;
}

/* True when the row names the columns that a season can't do without. */
static bool take_header(Parsing *parsing)
{
    unsigned seen = 0;
    for (size_t i = 0; i < parsing->cell_count; i++) {
        parsing->columns[i] = column_of(parsing->raw[i]);
        if (parsing->columns[i] < COLUMN_COUNT && seen >> parsing->columns[i] & 1u)
            parsing->columns[i] = COLUMN_COUNT; /* the first of two columns of a name counts */
        if (parsing->columns[i] < COLUMN_COUNT)
            seen |= 1u << parsing->columns[i];
    }
    unsigned needed = 1u << COLUMN_CONCERT | 1u << COLUMN_SCORE;
    if ((seen & needed) != needed)
        return false;
    parsing->column_count = parsing->cell_count;
    return true;
}

static void say_unused(Parsing *parsing)
{
    spz_message place = place_of(parsing, SPZ_NOTE);
    for (size_t i = 0; i < parsing->column_count; i++)
        if (parsing->columns[i] == COLUMN_COUNT && *cell_trim(parsing->raw[i]))
            message_send(parsing->rows.sink, &place, "the column '%s' is not used", cell_trim(parsing->raw[i]));
}

static bool row_is_blank(const Parsing *parsing)
{
    for (size_t i = 0; i < parsing->cell_count; i++)
        if (*cell_trim(parsing->raw[i]))
            return false;
    return true;
}

/* Text of the row under way in that column; "" where it has none. */
static const char *text_in(const Parsing *parsing, Column column)
{
    for (size_t i = 0; i < parsing->cell_count && i < parsing->column_count; i++)
        if (parsing->columns[i] == column)
            return cell_trim(parsing->raw[i]);
    return "";
}

static void row_fault(Parsing *parsing, const char *what)
{
    spz_message place = place_of(parsing, SPZ_ERROR);
    message_send(parsing->rows.sink, &place, "%s", what);
    parsing->rows.table->faults++;
    rows_lose(&parsing->rows, text_in(parsing, COLUMN_CONCERT), text_in(parsing, COLUMN_DATE));
}

static void take_work(Parsing *parsing)
{
    static char nothing[] = "";
    Row row = {.line = parsing->row_line};
    for (int column = 0; column < COLUMN_COUNT; column++)
        row.cells[column] = nothing;
    for (size_t i = 0; i < parsing->cell_count; i++) {
        char *cell = cell_trim(parsing->raw[i]);
        if (i >= parsing->column_count && *cell) {
            row_fault(parsing, "the row has more cells than the header; a cell with the separator in it needs quotation marks");
            return;
        }
        if (i < parsing->column_count && parsing->columns[i] < COLUMN_COUNT)
            row.cells[parsing->columns[i]] = cell;
    }
    spz_status status = rows_add(&parsing->rows, &row);
    if (status != SPZ_OK)
        parsing->status = status;
}

static void take_row(int end, void *context)
{
    Parsing *parsing = context;
    (void)end;
    if (parsing->status == SPZ_OK && !row_is_blank(parsing)) {
        if (parsing->column_count == 0 && parsing->tried++ < HEADER_ROWS) {
            if (take_header(parsing))
                say_unused(parsing);
        } else if (parsing->column_count && parsing->bad_text)
            row_fault(parsing, "the row is not written in UTF-8; save the table as 'CSV UTF-8'");
        else if (parsing->column_count)
            take_work(parsing);
    }
    forget_row(parsing);
}

/* The separator that stands most often in the first lines, outside quotation marks. */
static unsigned char find_separator(const char *text, size_t length)
{
    size_t commas = 0, semicolons = 0, lines = 0;
    bool quoted = false;
    for (size_t i = 0; i < length && lines < HEADER_ROWS; i++) {
        quoted = quoted != (text[i] == '"');
        commas += !quoted && text[i] == ',';
        semicolons += !quoted && text[i] == ';';
        lines += text[i] == '\n';
    }
    return semicolons > commas ? ';' : CSV_COMMA;
}

/* Length of the line that begins at `text`, its end included: LF, CR LF or a lone CR. */
static size_t line_length(const char *text, size_t left)
{
    for (size_t i = 0; i < left; i++)
        if (text[i] == '\n' || (text[i] == '\r' && !(i + 1 < left && text[i + 1] == '\n')))
            return i + 1;
    return left;
}

static bool line_is_blank(const char *text, size_t length)
{
    for (size_t i = 0; i < length; i++)
        if (!strchr(" \t\r\n", text[i]) || text[i] == '\0')
            return false;
    return true;
}

/* Feeds lines to the parser; `*resume` is where the line after the beginning of the row under way lies. */
static void feed(Parsing *parsing, struct csv_parser *parser, const char *text, const char *end, const char **resume)
{
    while (text < end && parsing->status == SPZ_OK) {
        size_t line = line_length(text, (size_t)(end - text));
        parsing->line++;
        if (!parsing->in_row) {
            parsing->row_line = parsing->line;
            *resume = text + line;
        }
        if (parsing->in_row || !line_is_blank(text, line)) {
            parsing->in_row = true; /* until a row ends within this line */
            if (csv_parse(parser, text, line, take_cell, take_row, parsing) != line)
                parsing->status = csv_error(parser) == CSV_ENOMEM ? SPZ_NO_MEMORY : SPZ_BAD_SETTINGS;
        }
        text += line;
    }
}

static spz_status complain(const char *path, const spz_sink *sink, spz_status status, const char *what)
{
    spz_message place = {.severity = SPZ_ERROR, .file = path};
    message_send(sink, &place, "%s", what);
    return status;
}

/* Reads from `text` to the end. NULL, or where to go on after a row whose quotation mark is never closed: such a row would swallow
 * all that follow. */
static const char *parse_rows(Parsing *parsing, const char *text, const char *end, unsigned char separator)
{
    struct csv_parser parser;
    const char *resume = end;
    if (csv_init(&parser, 0) != 0) {
        parsing->status = SPZ_NO_MEMORY;
        return NULL;
    }
    csv_set_delim(&parser, separator);
    feed(parsing, &parser, text, end, &resume);
    if (parsing->in_row && parsing->status == SPZ_OK)
        csv_parse(&parser, "\n", 1, take_cell, take_row, parsing);
    bool open = parsing->in_row && parsing->status == SPZ_OK; /* a line end doesn't end it */
    csv_free(&parser);
    forget_row(parsing);
    if (!open)
        return NULL;
    row_fault(parsing, "a quotation mark that opens here is never closed");
    parsing->rows.lost = true; /* what its cells held is gone */
    parsing->line = parsing->row_line;
    return resume;
}

static spz_status parse(SeasonTable *table, const spz_sink *sink, const char *text, size_t length)
{
    Parsing parsing = {.rows = {.table = table, .sink = sink, .concert = -1}};
    unsigned char separator = find_separator(text, length);
    const char *end = text + length;
    for (int restarts = 0; text && restarts < RESTARTS_MOST; restarts++)
        text = parse_rows(&parsing, text, end, separator);
    if (parsing.status == SPZ_OK && parsing.column_count == 0)
        return complain(table->path, sink, SPZ_BAD_SETTINGS,
                        "no header was found: the first row has to name the columns, 'concert' and 'score' at least");
    rows_finish(&parsing.rows);
    return parsing.status;
}

/* The whole file in memory of its own. */
static spz_status load(const char *path, char **text, size_t *length)
{
    struct stat about;
    FILE *file = fopen(path, "rb");
    *text = NULL;
    if (!file)
        return SPZ_CANNOT_OPEN;
    spz_status status = fstat(fileno(file), &about) != 0 || S_ISDIR(about.st_mode) ? SPZ_CANNOT_READ : SPZ_OK;
    size_t room = 0;
    *length = 0;
    while (status == SPZ_OK && !feof(file)) {
        if (*length == room) {
            char *larger = memory_resize(*text, room = room ? room * 2 : 65536, 1);
            if (!larger) {
                status = SPZ_NO_MEMORY;
                break;
            }
            *text = larger;
        }
        *length += fread(*text + *length, 1, room - *length, file);
        if (ferror(file))
            status = SPZ_CANNOT_READ;
        else if (*length > TABLE_BYTES_MOST)
            status = SPZ_OVER_LIMIT;
    }
    fclose(file);
    return status;
}

static bool is_utf16(const char *text, size_t length)
{
    return length >= 2 && (memcmp(text, "\xFF\xFE", 2) == 0 || memcmp(text, "\xFE\xFF", 2) == 0);
}

spz_status table_read(const char *path, const spz_sink *sink, SeasonTable *out)
{
    char *text;
    size_t length;
    *out = (SeasonTable){0};
    arena_init(&out->arena);
    out->path = arena_string(&out->arena, path);
    spz_status status = out->path ? load(path, &text, &length) : SPZ_NO_MEMORY;
    if (!out->path)
        return status;
    if (status == SPZ_CANNOT_OPEN || status == SPZ_CANNOT_READ)
        complain(path, sink, status, spz_status_text(status));
    else if (status == SPZ_OVER_LIMIT)
        complain(path, sink, status, "the table is larger than a gigabyte; divide it");
    else if (status == SPZ_OK && length == 0)
        status = complain(path, sink, SPZ_EMPTY, "the table is empty");
    else if (status == SPZ_OK && is_utf16(text, length))
        status = complain(path, sink, SPZ_BAD_SETTINGS, "the table is not written in UTF-8; save it as 'CSV UTF-8'");
    else if (status == SPZ_OK) {
        size_t mark = length >= 3 && memcmp(text, "\xEF\xBB\xBF", 3) == 0 ? 3 : 0;
        status = parse(out, sink, text + mark, length - mark);
    }
    memory_free(text);
    return status;
}

void table_free(SeasonTable *table)
{
    for (size_t i = 0; i < table->concerts.count; i++)
        array_free(&table->concerts.at[i].works);
    array_free(&table->concerts);
    index_free(&table->names);
    arena_release(&table->arena);
}
