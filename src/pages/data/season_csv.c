/* The stage manager's table: one row for everything that happens on the stage, in order: set-ups, works, changes, intervals. */
#include "pages/data/fields.h"
#include "pages/season_forms.h"
#include "wording/phrase.h"
#include "wording/seasons/season_words.h"
#include <math.h>

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

/* A row: what happens, and the record that tells of it. */
typedef struct Event {
    const char *what;
    const spz_planned_concert *concert; /* NULL where it belongs to none */
    const spz_changeover *change;
    const spz_planned_work *work;
    const spz_table_note *note;
} Event;

static void say_which(Buffer *words, const Event *event)
{
    if (event->change)
        say_change_place(words, SPZ_ENGLISH, event->change);
    else if (event->work)
        buffer_puts(words, event->work->title);
    else if (event->note)
        SAY(words, SPZ_ENGLISH, PHRASE_SEASON_NOTE_LINE, slot_number("line", event->note->line));
}

static void say_note(Buffer *words, const Event *event)
{
    if (event->change)
        say_change_remark(words, SPZ_ENGLISH, event->change);
    else if (event->work)
        buffer_puts(words, event->work->note);
    else if (event->note)
        say_table_note(words, SPZ_ENGLISH, event->note);
    else if (event->concert->problem)
        say_concert_problem(words, SPZ_ENGLISH, event->concert);
}

static void give_concert(Facts *row, const spz_planned_concert *concert)
{
    Buffer *words = &row->out->words;
    if (concert)
        say_iso_date(words, concert);
    fact_said(row, "date", "");
    if (concert && concert->time >= 0)
        buffer_printf(words, "%02d:%02d", concert->time / 60, concert->time % 60);
    fact_said(row, "time", "");
    fact_text(row, "concert", concert ? concert->name : "");
    fact_text(row, "hall", concert ? concert->hall : "");
}

static void give_change(Facts *row, const spz_changeover *change)
{
    fact_number(row, "minutes", change ? change->minutes : NAN, 1);
    fact_some(row, "chairs", change, change ? change->chairs : 0);
    fact_some(row, "stands", change, change ? change->stands : 0);
    if (change)
        say_moves(&row->out->words, SPZ_ENGLISH, change);
    fact_said(row, "moves", "");
}

static void put_event(FactsOut *facts, const Event *event)
{
    Facts row = facts_of(facts, &event_fields);
    give_concert(&row, event->concert);
    fact_text(&row, "what", event->what);
    say_which(&facts->words, event);
    fact_said(&row, "which", "");
    fact_text(&row, "seating", event->change ? event->change->to : event->work ? event->work->seating : "");
    if (event->work)
        say_seated_order(&facts->words, SPZ_ENGLISH, event->work);
    fact_said(&row, "house left to house right", "");
    give_change(&row, event->change);
    say_note(&facts->words, event);
    fact_said(&row, "note", "");
    facts_done(&row);
    facts_end_row(facts);
}

static void put_change(FactsOut *facts, const spz_planned_concert *concert, const spz_changeover *change)
{
    put_event(facts, &(Event){change->gap == SPZ_BEFORE_CONCERT ? "set-up" : "change", concert, .change = change});
}

static void put_changes_before(FactsOut *facts, const spz_planned_concert *concert, size_t work, size_t movement)
{
    for (size_t i = 0; i < concert->change_count; i++)
        if (concert->changes[i].work == work && concert->changes[i].movement == movement)
            put_change(facts, concert, &concert->changes[i]);
}

static void put_work(FactsOut *facts, const spz_planned_concert *concert, size_t place)
{
    const spz_planned_work *work = &concert->works[place];
    put_changes_before(facts, concert, place, 0);
    put_event(facts, &(Event){"work", concert, .work = work});
    for (size_t movement = 1; movement < work->movement_count; movement++)
        put_changes_before(facts, concert, place, movement);
    if (work->interval_after)
        put_event(facts, &(Event){.what = "interval", .concert = concert});
}

static void put_concert(FactsOut *facts, const spz_planned_concert *concert)
{
    if (concert->problem) {
        put_event(facts, &(Event){.what = "not planned", .concert = concert});
        return;
    }
    if (concert->setup)
        put_change(facts, concert, concert->setup);
    for (size_t i = 0; i < concert->work_count; i++)
        put_work(facts, concert, i);
}

void season_csv(const spz_season *season, const spz_season_look *look, Buffer *out)
{
    FactsOut facts;
    (void)look;
    facts_begin(&facts, out);
    facts_columns(&facts, &season_columns);
    for (size_t i = 0; i < spz_season_concerts(season); i++)
        put_concert(&facts, spz_season_concert(season, i));
    /* What could not be used of the table, or is doubtful in it, is no row of the stage: it stands below all others. */
    for (size_t i = 0; i < spz_season_notes(season); i++) {
        const spz_table_note *note = spz_season_note(season, i);
        put_event(&facts, &(Event){note->doubt ? "to be looked at" : "not used", .note = note});
    }
    facts_finish(&facts);
}
