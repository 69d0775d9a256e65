/* The file of the table: its bytes, its separator, its header; rows are handed on one by one. libcsv sees one line of the file at a
 * time, so that every row knows the line on which it begins, also where a cell holds line ends. */
#include "season/table/season_table.h"
#include "season/table/rows.h"
#include "season/table/score_cells.h"
#include "season/table/spreadsheets/spreadsheet.h"
#include "season/table/table_text.h"
#include "support/memory.h"
#include "support/message.h"
#include "support/buffer.h"
#include "support/path.h"
#include "support/text/ascii.h"
#include <csv.h>
#include <dirent.h>
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
    Column columns[CELLS_MOST];
    size_t column_count;   /* 0: no header yet */
    long tried;            /* rows above the header */
    long line, row_line;   /* of the file; where the row under way began */
    bool in_row;
    unsigned char separator;
    bool unquoted;         /* quotation marks are left out */
    spz_status status;
} Parsing;

static void note_row(Parsing *parsing, spz_fault fault, const char *name, bool doubt)
{
    table_tell(parsing->rows.table, parsing->rows.sink, &(spz_table_note){.line = parsing->row_line, .fault = fault, .name = name, .doubt = doubt});
}

static void forget_row(Parsing *parsing)
{
    for (size_t i = 0; i < parsing->cell_count && i < CELLS_MOST; i++)
        memory_free(parsing->raw[i]);
    parsing->cell_count = 0;
    parsing->in_row = false;
}

static void leave_out(char *text, char sign)
{
    char *out = text;
    for (; *text; text++)
        if (*text != sign)
            *out++ = *text;
    *out = '\0';
}

static void take_cell(void *cell, size_t length, void *context)
{
    Parsing *parsing = context;
    if (parsing->cell_count >= CELLS_MOST)
        return;
    char *copy = table_text_utf8(cell, length);
    if (copy && parsing->unquoted)
        leave_out(copy, '"');
    if (copy)
        parsing->raw[parsing->cell_count++] = copy;
    else
        parsing->status = SPZ_NO_MEMORY;
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

/* All columns that nothing is done with, in one note. */
static void note_columns(Parsing *parsing)
{
    Buffer names = {0};
    for (size_t i = 0; i < parsing->column_count; i++)
        if (parsing->columns[i] == COLUMN_COUNT && *cell_trim(parsing->raw[i]))
            buffer_printf(&names, "%s%s", names.length ? ", " : "", cell_trim(parsing->raw[i]));
    if (names.length)
        note_row(parsing, SPZ_FAULT_COLUMNS, names.text, true);
    if (buffer_failed(&names))
        parsing->status = SPZ_NO_MEMORY;
    buffer_free(&names);
}

static bool row_is_blank(const Parsing *parsing)
{
    for (size_t i = 0; i < parsing->cell_count; i++)
        if (*cell_trim(parsing->raw[i]))
            return false;
    return true;
}

static void take_work(Parsing *parsing)
{
    static char nothing[] = "";
    Row row = {.line = parsing->row_line};
    const char *beyond = NULL;
    for (int column = 0; column < COLUMN_COUNT; column++)
        row.cells[column] = nothing;
    for (size_t i = 0; i < parsing->cell_count; i++) {
        char *cell = cell_trim(parsing->raw[i]);
        if (i >= parsing->column_count && *cell && !beyond)
            beyond = cell;
        if (i < parsing->column_count && parsing->columns[i] < COLUMN_COUNT)
            row.cells[parsing->columns[i]] = cell;
    }
    if (beyond)
        note_row(parsing, SPZ_FAULT_ROW_TOO_LONG, beyond, false);
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
                note_columns(parsing);
        } else if (parsing->column_count)
            take_work(parsing);
    }
    forget_row(parsing);
}

/* The separator that stands most often in the first lines, outside quotation marks. */
static unsigned char find_separator(const char *text, size_t length)
{
    static const char separators[] = {CSV_COMMA, ';', '\t'};
    size_t counts[sizeof separators] = {0}, lines = 0, most = 0;
    bool quoted = false;
    for (size_t i = 0; i < length && lines < HEADER_ROWS; i++) {
        quoted = quoted != (text[i] == '"');
        for (size_t k = 0; k < sizeof separators && !quoted; k++)
            counts[k] += text[i] == separators[k];
        lines += text[i] == '\n' || (text[i] == '\r' && !(i + 1 < length && text[i + 1] == '\n'));
    }
    for (size_t k = 1; k < sizeof separators; k++)
        most = counts[k] > counts[most] ? k : most;
    return (unsigned char)separators[most];
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

/* Feeds lines to the parser; `*resume` is where the row under way begins. */
static void feed(Parsing *parsing, struct csv_parser *parser, const char *text, const char *end, const char **resume)
{
    while (text < end && parsing->status == SPZ_OK) {
        size_t line = line_length(text, (size_t)(end - text));
        parsing->line++;
        if (!parsing->in_row) {
            parsing->row_line = parsing->line;
            *resume = text;
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

enum { NEVER = 1 /* a byte that stands in no table */ };

/* Reads from `text` to the end, with `quote` as quotation mark. NULL, or where to go on at a row whose quotation mark is never closed: such a row would
 * swallow all that follow. */
static const char *parse_rows(Parsing *parsing, const char *text, const char *end, unsigned char quote)
{
    struct csv_parser parser;
    const char *resume = end;
    if (csv_init(&parser, 0) != 0) {
        parsing->status = SPZ_NO_MEMORY;
        return NULL;
    }
    csv_set_delim(&parser, parsing->separator);
    csv_set_quote(&parser, quote);
    parsing->unquoted = quote == NEVER;
    feed(parsing, &parser, text, end, &resume);
    if (parsing->in_row && parsing->status == SPZ_OK)
        csv_parse(&parser, "\n", 1, take_cell, take_row, parsing);
    bool open = parsing->in_row && parsing->status == SPZ_OK; /* a line end doesn't end it */
    csv_free(&parser);
    forget_row(parsing);
    if (!open)
        return NULL;
    parsing->line = parsing->row_line - 1;
    return resume;
}

/* The row at `text` once more, its quotation marks taken as signs like others; returns where the next one begins. */
static const char *parse_unquoted(Parsing *parsing, const char *text, const char *end)
{
    const char *next = text + line_length(text, (size_t)(end - text));
    parsing->row_line = parsing->line + 1;
    note_row(parsing, SPZ_FAULT_QUOTE_OPEN, NULL, false);
    parse_rows(parsing, text, next, NEVER);
    return next;
}

static spz_status parse(SeasonTable *table, const TableOptions *options, const spz_sink *sink, const char *text, size_t length)
{
    Parsing parsing = {.rows = {.table = table, .sink = sink, .concert = -1}, .separator = find_separator(text, length)};
    const char *end = text + length;
    parsing.rows.dates = options->dates ? options->dates : dates_order_in(text, length);
    for (int restarts = 0; text && restarts < RESTARTS_MOST && parsing.status == SPZ_OK; restarts++) {
        text = parse_rows(&parsing, text, end, CSV_QUOTE);
        if (text)
            text = parse_unquoted(&parsing, text, end);
    }
    if (text && text < end && parsing.status == SPZ_OK)
        parse_rows(&parsing, text, end, NEVER);
    if (parsing.status == SPZ_OK && parsing.column_count == 0)
        return complain(table->path, sink, SPZ_BAD_SETTINGS, scores_is_name(path_name(table->path)) ? "this is a score; a season is planned from a table (CSV, .ods or .xlsx) that names concerts and scores" :
                        "no header was found: one of the first rows has to name the columns, 'concert' and 'score' at least");
    rows_finish(&parsing.rows);
    if (parsing.status == SPZ_OK && table->concerts.count == 0 && table->faults == 0)
        return complain(table->path, sink, SPZ_EMPTY, "there is no concert in the table: no row follows its header");
    return table->starved ? SPZ_NO_MEMORY : parsing.status;
}

static bool is_table_name(const char *name)
{
    static const char *const endings[] = {".csv", ".ods", ".xlsx"};
    size_t length = strlen(name);
    for (size_t i = 0; i < sizeof endings / sizeof endings[0] && name[0] != '.'; i++)
        if (length > strlen(endings[i]) && ascii_same(name + length - strlen(endings[i]), endings[i]))
            return true;
    return false;
}

/* A folder is no table; the tables that lie in it may be meant. */
static spz_status complain_of_folder(SeasonTable *table, const spz_sink *sink)
{
    Buffer name = {0};
    size_t count = 0;
    DIR *folder = opendir(table->path);
    for (struct dirent *entry; folder && (entry = readdir(folder)) != NULL;)
        if (is_table_name(entry->d_name) && !count++)
            buffer_puts(&name, entry->d_name);
    if (folder)
        closedir(folder);
    const spz_message place = {.severity = SPZ_ERROR, .file = table->path};
    static const char what[] = "this is a folder; a season is planned from a table (CSV, .ods or .xlsx) that names concerts and scores";
    if (count == 1 && !buffer_failed(&name))
        message_send(sink, &place, "%s; in it lies '%s'", what, name.text);
    else if (count)
        message_send(sink, &place, "%s; %zu tables lie in it", what, count);
    else
        message_send(sink, &place, "%s", what);
    buffer_free(&name);
    return SPZ_CANNOT_READ;
}

/* The whole file in memory of its own, with a zero byte behind it. */
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
    if (status == SPZ_OK)
        (*text)[*length] = '\0'; /* there is room: the last reading got less than it asked for */
    return status;
}

/* What the bytes of the file say, as one text: a spreadsheet's sheet, or the file as it is. */
static spz_status parse_bytes(SeasonTable *table, const TableOptions *options, const spz_sink *sink, const char *bytes, size_t length)
{
    Buffer room = {0}, fault = {0};
    spz_status status = SPZ_OK;
    const char *text;
    if (spreadsheet_is(bytes, length)) {
        status = spreadsheet_text(bytes, length, options->sheet, &room, &fault);
        text = buffer_text(&room);
        length = room.length;
    } else {
        if (options->sheet)
            buffer_printf(&fault, "the file is one table without sheets; there is none called '%s'", options->sheet);
        status = options->sheet ? SPZ_BAD_SETTINGS : SPZ_OK;
        text = table_text_open(bytes, &length, &room);
    }
    if (fault.length)
        complain(table->path, sink, status, fault.text);
    else if (status == SPZ_OK)
        status = buffer_failed(&room) ? SPZ_NO_MEMORY : parse(table, options, sink, text, length);
    buffer_free(&fault);
    buffer_free(&room);
    return status;
}

spz_status table_read(const char *path, const TableOptions *options, const spz_sink *sink, SeasonTable *out)
{
    static const TableOptions none = {DATES_UNKNOWN, NULL};
    char *text;
    size_t length;
    struct stat about;
    *out = (SeasonTable){0};
    arena_init(&out->arena);
    out->path = arena_string(&out->arena, path);
    if (!out->path)
        return SPZ_NO_MEMORY;
    if (stat(path, &about) == 0 && S_ISDIR(about.st_mode))
        return complain_of_folder(out, sink);
    errno = 0;
    spz_status status = load(path, &text, &length);
    if (status == SPZ_CANNOT_OPEN && errno)
        message_send(sink, &(spz_message){.severity = SPZ_ERROR, .file = path}, "%s: %s", spz_status_text(status), message_cause(errno));
    else if (status == SPZ_CANNOT_OPEN || status == SPZ_CANNOT_READ)
        complain(path, sink, status, spz_status_text(status));
    else if (status == SPZ_OVER_LIMIT)
        complain(path, sink, status, "the table is larger than a gigabyte; divide it");
    else if (status == SPZ_OK && length == 0)
        status = complain(path, sink, SPZ_EMPTY, "the table is empty");
    else if (status == SPZ_OK)
        status = parse_bytes(out, options ? options : &none, sink, text, length);
    memory_free(text);
    return status;
}

static void free_concert(TableConcert *concert)
{
    array_free(&concert->works);
    array_free(&concert->rehearsals);
}

void table_free(SeasonTable *table)
{
    for (size_t i = 0; i < table->concerts.count; i++)
        free_concert(&table->concerts.at[i]);
    array_free(&table->concerts);
    array_free(&table->notes);
    index_free(&table->names);
    arena_release(&table->arena);
}
