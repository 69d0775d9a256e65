/* The stage manager's table: one row for everything that happens on the stage, in order: set-ups, works, changes, intervals. */
#include "pages/data/fields.h"
#include "pages/season_forms.h"
#include "wording/phrase.h"
#include "wording/seasons/season_words.h"
#include <math.h>
#include <stdio.h>

static const Field of_event[] = {
    {"date", IN_CSV, "'2027-05-31'; empty"},
    {"time", IN_CSV, "'19:30'; empty"},
    {"concert", IN_CSV, "its name"},
    {"hall", IN_CSV, "as the table has it"},
    {"what", IN_CSV, "set-up, change, work, interval, not planned, or what a line of the table could not be used for"},
    {"which", IN_CSV, "the work, or the place of the change"},
    {"seating", IN_CSV, "the arrangement from there on"},
    {"house left to house right", IN_CSV, "its order"},
    {"minutes", IN_CSV, "that the change takes"},
    {"chairs", IN_CSV, "to be carried"},
    {"stands", IN_CSV, "to be carried"},
    {"moves", IN_CSV, "section by section"},
    {"note", IN_CSV, "of the table, of the change, or why it is not planned"},
};
const FieldTable event_fields = FIELD_TABLE("event", of_event);
const Columns season_columns = {"season", IN_CSV, {&event_fields}};

typedef struct Rows {
    CsvRow row;
    const spz_planned_concert *concert;
    Buffer text; /* a cell under way */
} Rows;

static void put_cell(Rows *rows)
{
    csv_text(&rows->row, rows->text.length ? rows->text.text : "");
    rows->row.out->failed = rows->row.out->failed || buffer_failed(&rows->text);
    buffer_clear(&rows->text);
}

static void begin_row(Rows *rows, const char *what)
{
    say_iso_date(&rows->text, rows->concert);
    put_cell(rows);
    if (rows->concert->time >= 0)
        buffer_printf(&rows->text, "%02d:%02d", rows->concert->time / 60, rows->concert->time % 60);
    put_cell(rows);
    csv_text(&rows->row, rows->concert->name);
    csv_text(&rows->row, rows->concert->hall);
    csv_text(&rows->row, what);
}

static void empty_cells(Rows *rows, int count)
{
    while (count-- > 0)
        csv_text(&rows->row, "");
}

static void put_change(Rows *rows, const spz_changeover *change)
{
    begin_row(rows, change->gap == SPZ_BEFORE_CONCERT ? "set-up" : "change");
    say_change_place(&rows->text, SPZ_ENGLISH, change);
    put_cell(rows);
    csv_text(&rows->row, change->to);
    csv_text(&rows->row, "");
    csv_number(&rows->row, change->minutes, 1);
    csv_integer(&rows->row, change->chairs);
    csv_integer(&rows->row, change->stands);
    say_moves(&rows->text, SPZ_ENGLISH, change);
    put_cell(rows);
    say_change_remark(&rows->text, SPZ_ENGLISH, change);
    put_cell(rows);
    csv_end(&rows->row);
}

static void put_changes_before(Rows *rows, size_t work, size_t movement)
{
    for (size_t i = 0; i < rows->concert->change_count; i++)
        if (rows->concert->changes[i].work == work && rows->concert->changes[i].movement == movement)
            put_change(rows, &rows->concert->changes[i]);
}

static void put_work(Rows *rows, size_t place)
{
    const spz_planned_work *work = &rows->concert->works[place];
    put_changes_before(rows, place, 0);
    begin_row(rows, "work");
    csv_text(&rows->row, work->title);
    csv_text(&rows->row, work->seating);
    say_seated_order(&rows->text, SPZ_ENGLISH, work);
    put_cell(rows);
    empty_cells(rows, 4);
    csv_text(&rows->row, work->note);
    csv_end(&rows->row);
    for (size_t movement = 1; movement < work->movement_count; movement++)
        put_changes_before(rows, place, movement);
    if (!work->interval_after)
        return;
    begin_row(rows, "interval");
    empty_cells(rows, 8);
    csv_end(&rows->row);
}

static void put_concert(Rows *rows)
{
    if (rows->concert->problem) {
        begin_row(rows, "not planned");
        empty_cells(rows, 7);
        say_concert_problem(&rows->text, SPZ_ENGLISH, rows->concert);
        put_cell(rows);
        csv_end(&rows->row);
        return;
    }
    if (rows->concert->setup)
        put_change(rows, rows->concert->setup);
    for (size_t i = 0; i < rows->concert->work_count; i++)
        put_work(rows, i);
}

/* What could not be used of the table, or is doubtful in it: no row of the stage, so it stands below all others. */
static void put_note(Rows *rows, const spz_table_note *note)
{
    empty_cells(rows, 4);
    csv_text(&rows->row, note->doubt ? "to be looked at" : "not used");
    SAY(&rows->text, SPZ_ENGLISH, PHRASE_SEASON_NOTE_LINE, slot_number("line", note->line));
    put_cell(rows);
    empty_cells(rows, 6);
    say_table_note(&rows->text, SPZ_ENGLISH, note);
    put_cell(rows);
    csv_end(&rows->row);
}

void season_csv(const spz_season *season, const spz_season_look *look, Buffer *out)
{
    Rows rows;
    (void)look;
    csv_begin(&rows.row, out);
    facts_heads(&rows.row, &season_columns);
    buffer_init(&rows.text);
    for (size_t i = 0; i < spz_season_concerts(season); i++) {
        rows.concert = spz_season_concert(season, i);
        put_concert(&rows);
    }
    for (size_t i = 0; i < spz_season_notes(season); i++)
        put_note(&rows, spz_season_note(season, i));
    out->failed = out->failed || buffer_failed(&rows.text);
    buffer_free(&rows.text);
}
