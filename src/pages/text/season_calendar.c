/* The season by dates: a leaf for each month with a line for each concert, or a table for a calendar program. */
#include "writing/facts.h"
#include "writing/text_layout.h"
#include "pages/season_forms.h"
#include "wording/phrase.h"
#include "wording/seatings/seating_words.h"
#include "wording/seasons/season_words.h"
#include <stdio.h>
#include <string.h>

static void month_heading(const spz_planned_concert *concert, const spz_season_look *look, Buffer *out)
{
    Buffer text = {0};
    say_month(&text, look->language, concert);
    buffer_puts(out, out->length ? "\n" : "");
    layout_heading(out, buffer_text(&text), '-', look->width);
    buffer_let_go(out, &text);
}

static bool same_month(const spz_planned_concert *a, const spz_planned_concert *b)
{
    return a->year == b->year && a->month == b->month;
}

/* 'Serenade: violins opposed, ...' where the seating is new, else the title alone. */
static void list_works(const spz_planned_concert *concert, spz_language language, Buffer *text)
{
    const char *before = "";
    for (size_t i = 0; i < concert->work_count; i++) {
        const spz_planned_work *work = &concert->works[i];
        buffer_puts(text, i ? phrase_text(language, PHRASE_SEASON_OTHER_NEXT) : "");
        if (strcmp(before, work->seating) != 0)
            SAY(text, language, PHRASE_SEASON_CALENDAR_WORK, slot_text("seating", words_arrangement(language, work->seating)), slot_text("title", work->title));
        else
            buffer_puts(text, work->title);
        before = work->movement_count ? work->movements[work->movement_count - 1].seating : work->seating;
    }
}

static void put_concert(const spz_planned_concert *concert, const spz_season_look *look, Buffer *out)
{
    Buffer text = {0};
    char lead[24] = "- ";
    if (concert->year)
        snprintf(lead, sizeof lead, "%s %2d  ", words_weekday_short(look->language, concert), concert->day);
    buffer_printf(&text, "%s%s%s", concert->name, *concert->hall ? ", " : "", concert->hall);
    layout_flow(out, 0, lead, &text, look->width);
    int indent = (int)strlen(lead);
    if (concert->problem) {
        say_not_planned(&text, look->language, concert);
        layout_flow(out, indent, "", &text, look->width);
    } else {
        list_works(concert, look->language, &text);
        layout_flow(out, indent, "", &text, look->width);
        say_changes_sum(&text, look->language, concert);
        layout_flow(out, indent, "", &text, look->width);
    }
    buffer_let_go(out, &text);
}

void calendar_text(const spz_season *season, const spz_season_look *look, Buffer *out)
{
    const spz_planned_concert *before = NULL;
    for (size_t i = 0; i < spz_season_concerts(season); i++) {
        const spz_planned_concert *concert = spz_season_concert(season, i);
        if (!before || !same_month(before, concert))
            month_heading(concert, look, out);
        put_concert(concert, look, out);
        before = concert;
    }
}

static const Field of_calendar[] = {
    {"date", IN_CSV, "'2027-05-31'; empty"},
    {"time", IN_CSV, "'19:30'; empty"},
    {"weekday", IN_CSV, "of that date"},
    {"concert", IN_CSV, "its name"},
    {"hall", IN_CSV, "as the table has it"},
    {"first seating", IN_CSV, "of its first work"},
    {"set up", IN_CSV, "whether the stage is changed before it: yes, no"},
    {"changes", IN_CSV, "how many in the concert"},
    {"minutes", IN_CSV, "of all changes"},
    {"problem", IN_CSV, "why it was not planned"},
};
const FieldTable calendar_fields = FIELD_TABLE("calendar", of_calendar);
const Columns calendar_columns = {"calendar", IN_CSV, {&calendar_fields}};

static void put_row(FactsOut *facts, const spz_planned_concert *concert)
{
    Facts row = facts_of(facts, &calendar_fields);
    say_iso_date(&facts->words, concert);
    fact_said(&row, "date", "");
    if (concert->time >= 0)
        buffer_printf(&facts->words, "%02d:%02d", concert->time / 60, concert->time % 60);
    fact_said(&row, "time", "");
    fact_text(&row, "weekday", words_weekday(SPZ_ENGLISH, concert));
    fact_text(&row, "concert", concert->name);
    fact_text(&row, "hall", concert->hall);
    fact_text(&row, "first seating", concert->work_count ? concert->works[0].seating : "");
    fact_text(&row, "set up", concert->setup ? "yes" : "no");
    fact_integer(&row, "changes", (long long)concert->change_count);
    fact_number(&row, "minutes", concert->minutes, 1);
    say_concert_problem(&facts->words, SPZ_ENGLISH, concert);
    fact_said(&row, "problem", "");
    facts_done(&row);
    facts_end_row(facts);
}

void calendar_csv(const spz_season *season, const spz_season_look *look, Buffer *out)
{
    FactsOut facts;
    (void)look;
    facts_begin(&facts, out);
    facts_columns(&facts, &calendar_columns);
    for (size_t i = 0; i < spz_season_concerts(season); i++)
        put_row(&facts, spz_season_concert(season, i));
    facts_finish(&facts);
}
