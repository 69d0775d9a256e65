#include "season/table/rows.h"
#include "support/message.h"
#include <stdlib.h>
#include <string.h>

static void fault(Rows *rows, long line, const char *what, const char *cell)
{
    spz_message place = {.severity = SPZ_ERROR, .file = rows->table->path, .line = line};
    message_send(rows->sink, &place, what, cell);
    rows->table->faults++;
}

static void doubt(Rows *rows, long line, const char *what, const char *cell)
{
    spz_message place = {.severity = SPZ_DOUBT, .file = rows->table->path, .line = line};
    message_send(rows->sink, &place, what, cell);
}

/* The key under which a concert is found: its name and day. NULL: no memory. */
static const char *concert_key(Rows *rows, const char *name, Date date)
{
    return arena_format(&rows->table->arena, "%s\n%d-%d-%d", name, date.year, date.month, date.day);
}

static spz_status new_concert(Rows *rows, const char *key, const char *name, Date date, const Row *row)
{
    SeasonTable *table = rows->table;
    TableConcert concert = {arena_string(&table->arena, name), arena_string(&table->arena, row->cells[COLUMN_HALL]), date, row->line, {0}};
    if (!concert.name || !concert.hall || !array_reserve(&table->concerts) || !index_add(&table->names, key, table->concerts.count))
        return SPZ_NO_MEMORY;
    rows->concert = (long)table->concerts.count;
    rows->order = 0;
    table->concerts.at[table->concerts.count++] = concert;
    return SPZ_OK;
}

/* The concert of the row: the one above it, another one already named, or a new one. */
static spz_status find_concert(Rows *rows, const Row *row, Date date)
{
    SeasonTable *table = rows->table;
    const TableConcert *above = rows->concert >= 0 ? &table->concerts.at[rows->concert] : NULL;
    const char *name = *row->cells[COLUMN_CONCERT] ? row->cells[COLUMN_CONCERT] : above ? above->name : "";
    if (!date_is_set(date) && above && strcmp(name, above->name) == 0)
        date = above->date;
    const char *key = concert_key(rows, name, date);
    if (!key)
        return SPZ_NO_MEMORY;
    long long found = index_find(&table->names, key);
    if (found < 0)
        return new_concert(rows, key, name, date, row);
    if (rows->concert != found) {
        rows->concert = (long)found;
        size_t works = table->concerts.at[found].works.count;
        rows->order = works ? table->concerts.at[found].works.at[works - 1].order : 0;
    }
    return SPZ_OK;
}

/* Everything that makes a row useless. */
static bool row_is_good(Rows *rows, const Row *row, Date *date, TableWork *work)
{
    *date = (Date){0, 0, 0};
    if (!*row->cells[COLUMN_CONCERT] && rows->lost)
        fault(rows, row->line, "the concert of this row is named in a row above that can't be used%s", "");
    else if (!*row->cells[COLUMN_CONCERT] && rows->concert < 0)
        fault(rows, row->line, "the row names no concert, and there is none above it%s", "");
    else if (!*row->cells[COLUMN_WORK] && !*row->cells[COLUMN_SCORE])
        fault(rows, row->line, "the row names neither a work nor a score%s", "");
    else if (*row->cells[COLUMN_DATE] && !date_read(row->cells[COLUMN_DATE], date))
        fault(rows, row->line, "'%s' is no date; write it as 2027-03-14", row->cells[COLUMN_DATE]);
    else if (*row->cells[COLUMN_ORDER] && !cell_order(row->cells[COLUMN_ORDER], &work->order))
        fault(rows, row->line, "the order '%s' is no number", row->cells[COLUMN_ORDER]);
    else if (!cell_yes(row->cells[COLUMN_INTERVAL], &work->interval_after))
        fault(rows, row->line, "'interval after' is yes or no, not '%s'", row->cells[COLUMN_INTERVAL]);
    else
        return true;
    return false;
}

/* A hall that is named only now is the concert's; `*agrees` is false for a second one. */
static spz_status check_hall(Rows *rows, const Row *row, bool *agrees)
{
    TableConcert *concert = &rows->table->concerts.at[rows->concert];
    const char *hall = row->cells[COLUMN_HALL];
    *agrees = !*hall || !*concert->hall || cell_same(hall, concert->hall);
    if (!*agrees)
        fault(rows, row->line, "this concert is in another hall above: '%s'", concert->hall);
    if (!*hall || *concert->hall)
        return SPZ_OK;
    const char *copy = arena_string(&rows->table->arena, hall);
    if (!copy)
        return SPZ_NO_MEMORY;
    concert->hall = copy;
    return SPZ_OK;
}

static spz_status keep_texts(Rows *rows, const Row *row, TableWork *work)
{
    Arena *arena = &rows->table->arena;
    work->title = arena_string(arena, *row->cells[COLUMN_WORK] ? row->cells[COLUMN_WORK] : row->cells[COLUMN_SCORE]);
    work->scores = arena_string(arena, row->cells[COLUMN_SCORE]);
    work->fixed = arena_string(arena, row->cells[COLUMN_FIXED]);
    work->note = arena_string(arena, row->cells[COLUMN_NOTE]);
    return work->title && work->scores && work->fixed && work->note ? SPZ_OK : SPZ_NO_MEMORY;
}

static void check_order(Rows *rows, const Row *row, const TableConcert *concert, TableWork *work)
{
    if (!*row->cells[COLUMN_ORDER]) {
        work->order = rows->order;
        return;
    }
    for (size_t i = 0; i < concert->works.count && i < 100; i++) /* a concert; a list of all scores is never planned */
        if (!(concert->works.at[i].order < work->order) && !(concert->works.at[i].order > work->order)) {
            doubt(rows, row->line, "the order '%s' stands twice in this concert; the rows are taken as they come", row->cells[COLUMN_ORDER]);
            break;
        }
}

void rows_lose(Rows *rows, const char *name, const char *day)
{
    Date date;
    bool dated = !*day || date_read(day, &date);
    if (*name)
        rows->lost = !dated || rows->concert < 0 || strcmp(name, rows->table->concerts.at[rows->concert].name) != 0;
}

spz_status rows_add(Rows *rows, const Row *row)
{
    TableWork work = {.line = row->line};
    Date date;
    if (!row_is_good(rows, row, &date, &work)) {
        rows_lose(rows, row->cells[COLUMN_CONCERT], row->cells[COLUMN_DATE]);
        return SPZ_OK;
    }
    rows->lost = false;
    bool agrees = false;
    spz_status status = find_concert(rows, row, date);
    if (status == SPZ_OK)
        status = check_hall(rows, row, &agrees);
    if (status != SPZ_OK || !agrees)
        return status;
    status = keep_texts(rows, row, &work);
    if (status != SPZ_OK)
        return status;
    TableConcert *concert = &rows->table->concerts.at[rows->concert];
    if (*row->cells[COLUMN_COMPOSED] && !cell_year(row->cells[COLUMN_COMPOSED], &work.year))
        doubt(rows, row->line, "'%s' is no year; the work is judged without one", row->cells[COLUMN_COMPOSED]);
    check_order(rows, row, concert, &work);
    rows->order = work.order;
    return array_push(&concert->works, work) ? SPZ_OK : SPZ_NO_MEMORY;
}

/* Lines settle equal orders, so that the sorting is the same everywhere. */
static int by_order(const void *a, const void *b)
{
    const TableWork *left = a, *right = b;
    if (left->order < right->order || left->order > right->order)
        return left->order < right->order ? -1 : 1;
    return left->line < right->line ? -1 : left->line > right->line;
}

void rows_finish(Rows *rows)
{
    for (size_t i = 0; i < rows->table->concerts.count; i++) {
        TableConcert *concert = &rows->table->concerts.at[i];
        if (concert->works.count)
            qsort(concert->works.at, concert->works.count, sizeof *concert->works.at, by_order);
    }
}
