#include "season/table/rows.h"
#include <stdlib.h>
#include <string.h>

enum { COMPARED_MOST = 100 /* a concert; a list of all scores is never planned */, INTERVALS_DOUBTED = 3 };

static void note(Rows *rows, spz_severity severity, long line, spz_fault fault, const char *name)
{
    table_tell(rows->table, rows->sink, &(spz_table_note){.line = line, .fault = fault, .name = name, .doubt = severity == SPZ_DOUBT});
}

/* When the row's concert is. */
typedef struct When {
    Date date;
    int time;
    const char *said; /* a date that could not be read; "" */
} When;

/* The date can be read in two ways: asked once, at the end. */
static void ask_for_month(Rows *rows, const Row *row)
{
    const char *said = row->cells[COLUMN_DATE];
    if (!rows->two_ways++) {
        rows->two_ways_line = row->line;
        rows->two_ways_date = arena_string(&rows->table->arena, said);
        return; /* noted with the question */
    }
    table_tell(rows->table, NULL, &(spz_table_note){.line = row->line, .fault = SPZ_FAULT_DATE_LIKE_THAT, .name = said});
}

static When read_when(Rows *rows, const Row *row)
{
    DateReading reading;
    const char *day = row->cells[COLUMN_DATE], *clock = row->cells[COLUMN_TIME];
    When when = {{0, 0, 0}, NO_TIME, ""};
    DateAnswer answer = *day ? date_read(day, rows->dates, &reading) : DATE_NONE;
    if (answer == DATE_READ) {
        when = (When){reading.date, reading.time, ""};
        if (reading.other_weekday)
            note(rows, SPZ_DOUBT, row->line, SPZ_FAULT_WEEKDAY, day);
    } else if (*day) {
        when.said = day;
        when.time = answer == DATE_TWO_WAYS ? reading.time : NO_TIME;
        if (answer == DATE_TWO_WAYS)
            ask_for_month(rows, row);
        else
            note(rows, SPZ_ERROR, row->line, SPZ_FAULT_NO_DATE, day);
    }
    if (*clock && time_read(clock) == NO_TIME)
        note(rows, SPZ_ERROR, row->line, SPZ_FAULT_NO_TIME, clock);
    else if (*clock)
        when.time = time_read(clock);
    return when;
}

/* The key under which a concert is found: its name and when it is. NULL: no memory. */
static const char *concert_key(Rows *rows, const char *name, const When *when)
{
    const Date *date = &when->date;
    return arena_format(&rows->table->arena, "%s\n%d-%d-%d %d %s", name, date->year, date->month, date->day, when->time, when->said);
}

static spz_status new_concert(Rows *rows, const char *key, const char *name, const When *when, const Row *row)
{
    SeasonTable *table = rows->table;
    TableConcert concert = {arena_string(&table->arena, name), arena_string(&table->arena, row->cells[COLUMN_HALL]), when->date, when->time, row->line, row->line, {0}, {0}};
    if (!concert.name || !concert.hall || !array_reserve(&table->concerts) || !index_add(&table->names, key, table->concerts.count))
        return SPZ_NO_MEMORY;
    rows->concert = (long)table->concerts.count;
    rows->order = 0;
    table->concerts.at[table->concerts.count++] = concert;
    return SPZ_OK;
}

/* Whether the row goes on with the concert above it: it names no other, and no other time. */
static bool goes_on(const Row *row, const char *name, const When *when, const TableConcert *above)
{
    if (!above || strcmp(name, above->name) != 0)
        return false;
    if (*when->said || (when->time != NO_TIME && when->time != above->time))
        return false;
    return !*row->cells[COLUMN_DATE] || date_compare(when->date, above->date) == 0;
}

/* The concert of the row: the one above it, another one already named, or a new one. */
static spz_status find_concert(Rows *rows, const Row *row)
{
    SeasonTable *table = rows->table;
    When when = read_when(rows, row);
    const TableConcert *above = rows->concert >= 0 ? &table->concerts.at[rows->concert] : NULL;
    const char *name = *row->cells[COLUMN_CONCERT] ? row->cells[COLUMN_CONCERT] : above ? above->name : "";
    if (goes_on(row, name, &when, above))
        return SPZ_OK;
    const char *key = concert_key(rows, name, &when);
    if (!key)
        return SPZ_NO_MEMORY;
    long long found = index_find(&table->names, key);
    if (found < 0)
        return new_concert(rows, key, name, &when, row);
    if (rows->concert != found) {
        rows->concert = (long)found;
        size_t works = table->concerts.at[found].works.count;
        rows->order = works ? table->concerts.at[found].works.at[works - 1].order : 0;
    }
    return SPZ_OK;
}

/* A hall that is named only now is the concert's; a second one is not used. */
static spz_status check_hall(Rows *rows, const Row *row)
{
    TableConcert *concert = &rows->table->concerts.at[rows->concert];
    const char *hall = row->cells[COLUMN_HALL];
    if (*hall && *concert->hall && !cell_same(hall, concert->hall))
        table_tell(rows->table, rows->sink, &(spz_table_note){.line = row->line, .fault = SPZ_FAULT_OTHER_HALL, .name = hall, .other = concert->hall,
                                                             .count = concert->hall_line});
    if (!*hall || *concert->hall)
        return SPZ_OK;
    concert->hall_line = row->line;
    const char *copy = arena_string(&rows->table->arena, hall);
    if (!copy)
        return SPZ_NO_MEMORY;
    concert->hall = copy;
    return SPZ_OK;
}

/* Rehearsals, with '|' or ';' between. */
static spz_status take_rehearsals(Rows *rows, const Row *row)
{
    TableConcert *concert = &rows->table->concerts.at[rows->concert];
    for (char *at = row->cells[COLUMN_REHEARSALS]; *at;) {
        size_t length = strcspn(at, "|;");
        char *next = at + length + (at[length] != '\0');
        DateReading reading;
        at[length] = '\0';
        at = cell_trim(at);
        if (*at && date_read(at, rows->dates, &reading) != DATE_READ)
            note(rows, SPZ_ERROR, row->line, SPZ_FAULT_REHEARSAL, at);
        else if (*at && !array_push(&concert->rehearsals, ((spz_moment){reading.date.year, reading.date.month, reading.date.day, reading.time})))
            return SPZ_NO_MEMORY;
        at = next;
    }
    return SPZ_OK;
}

/* What stands on the stage for a work besides the desks: 'no' is nothing, 'yes' needs no more words. */
static const char *piece_text(Arena *arena, const char *cell)
{
    bool yes;
    return arena_string(arena, !cell_yes(cell, &yes) ? cell : yes ? "x" : "");
}

static spz_status keep_texts(Rows *rows, const Row *row, TableWork *work)
{
    Arena *arena = &rows->table->arena;
    work->title = arena_string(arena, *row->cells[COLUMN_WORK] ? row->cells[COLUMN_WORK] : row->cells[COLUMN_SCORE]);
    work->scores = arena_string(arena, row->cells[COLUMN_SCORE]);
    work->fixed = arena_string(arena, row->cells[COLUMN_FIXED]);
    work->note = arena_string(arena, row->cells[COLUMN_NOTE]);
    work->soloist = piece_text(arena, row->cells[COLUMN_SOLOIST]);
    work->piano = piece_text(arena, row->cells[COLUMN_PIANO]);
    work->podium = piece_text(arena, row->cells[COLUMN_PODIUM]);
    return work->soloist && work->piano && work->podium && work->title && work->scores && work->fixed && work->note ? SPZ_OK : SPZ_NO_MEMORY;
}

static void read_cells(Rows *rows, const Row *row, TableWork *work)
{
    const char *order = row->cells[COLUMN_ORDER], *interval = row->cells[COLUMN_INTERVAL], *year = row->cells[COLUMN_COMPOSED];
    work->ordered = *order && cell_order(order, &work->order);
    if (*order && !work->ordered)
        note(rows, SPZ_ERROR, row->line, SPZ_FAULT_NO_ORDER, order);
    if (!work->ordered)
        work->order = rows->order;
    if (!cell_yes(interval, &work->interval_after))
        note(rows, SPZ_ERROR, row->line, SPZ_FAULT_NO_INTERVAL, interval);
    if (*year && !cell_year(year, &work->year))
        note(rows, SPZ_ERROR, row->line, SPZ_FAULT_NO_YEAR, year);
}

static void compare(Rows *rows, const Row *row, const TableConcert *concert, const TableWork *work)
{
    bool same_order = false;
    for (size_t i = 0; i < concert->works.count && i < COMPARED_MOST; i++) {
        const TableWork *other = &concert->works.at[i];
        same_order = same_order || (work->ordered && other->ordered && !(other->order < work->order) && !(other->order > work->order));
        if (cell_same(other->title, work->title) && strcmp(other->scores, work->scores) == 0) {
            table_tell(rows->table, rows->sink, &(spz_table_note){.line = row->line, .fault = SPZ_FAULT_ROW_TWICE, .name = work->title,
                                                                 .count = other->line, .doubt = true});
            return;
        }
    }
    if (same_order)
        note(rows, SPZ_DOUBT, row->line, SPZ_FAULT_ORDER_TWICE, row->cells[COLUMN_ORDER]);
}

static spz_status add_work(Rows *rows, const Row *row)
{
    TableWork work = {.line = row->line};
    TableConcert *concert = &rows->table->concerts.at[rows->concert];
    if (keep_texts(rows, row, &work) != SPZ_OK)
        return SPZ_NO_MEMORY;
    read_cells(rows, row, &work);
    compare(rows, row, concert, &work);
    rows->order = work.order;
    return array_push(&concert->works, work) ? SPZ_OK : SPZ_NO_MEMORY;
}

/* A row that is an interval: it comes after the work above it. */
static bool take_interval(Rows *rows, const Row *row)
{
    TableConcert *concert = &rows->table->concerts.at[rows->concert];
    bool is = !*row->cells[COLUMN_SCORE] && cell_interval_word(row->cells[COLUMN_WORK]) && concert->works.count;
    if (is)
        concert->works.at[concert->works.count - 1].interval_after = true;
    return is;
}

/* A row that only says which concert follows, when and where. */
static bool only_opens(const Row *row)
{
    static const Column of_works[] = {COLUMN_ORDER, COLUMN_COMPOSED, COLUMN_INTERVAL, COLUMN_FIXED};
    for (size_t i = 0; i < sizeof of_works / sizeof of_works[0]; i++)
        if (*row->cells[of_works[i]])
            return false;
    return *row->cells[COLUMN_CONCERT] || *row->cells[COLUMN_DATE];
}

spz_status rows_add(Rows *rows, const Row *row)
{
    bool nothing = !*row->cells[COLUMN_WORK] && !*row->cells[COLUMN_SCORE];
    if (nothing && !only_opens(row)) {
        note(rows, SPZ_ERROR, row->line, SPZ_FAULT_ROW_WITHOUT_WORK, NULL);
        return SPZ_OK;
    }
    spz_status status = find_concert(rows, row);
    if (status == SPZ_OK)
        status = check_hall(rows, row);
    if (status == SPZ_OK)
        status = take_rehearsals(rows, row);
    if (status != SPZ_OK || nothing || take_interval(rows, row))
        return status;
    return add_work(rows, row);
}

/* Lines settle equal orders, so that the sorting is the same everywhere. */
static int by_order(const void *a, const void *b)
{
    const TableWork *left = a, *right = b;
    if (left->order < right->order || left->order > right->order)
        return left->order < right->order ? -1 : 1;
    return left->line < right->line ? -1 : left->line > right->line;
}

static void finish_concert(Rows *rows, TableConcert *concert)
{
    long intervals = 0;
    qsort(concert->works.at, concert->works.count, sizeof *concert->works.at, by_order);
    for (size_t i = 0; i < concert->works.count; i++)
        intervals += concert->works.at[i].interval_after;
    if (intervals >= INTERVALS_DOUBTED)
        table_tell(rows->table, rows->sink, &(spz_table_note){.line = concert->line, .fault = SPZ_FAULT_INTERVALS, .name = concert->name, .count = intervals,
                                                             .doubt = true});
}

void rows_finish(Rows *rows)
{
    SeasonTable *table = rows->table;
    size_t kept = 0;
    if (rows->two_ways)
        table_tell(table, rows->sink, &(spz_table_note){.line = rows->two_ways_line, .fault = SPZ_FAULT_DATE_TWO_WAYS, .name = rows->two_ways_date,
                                                        .count = (long)rows->two_ways});
    for (size_t i = 0; i < table->concerts.count; i++) {
        TableConcert *concert = &table->concerts.at[i];
        if (concert->works.count == 0) {
            note(rows, SPZ_ERROR, concert->line, SPZ_FAULT_CONCERT_EMPTY, concert->name);
            array_free(&concert->rehearsals);
            continue;
        }
        finish_concert(rows, concert);
        table->concerts.at[kept++] = *concert;
    }
    table->concerts.count = kept;
}
