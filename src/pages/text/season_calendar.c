/* The season by dates: a leaf for each month with a line for each concert, or a table for a calendar program. */
#include "writing/csv_text.h"
#include "writing/text_layout.h"
#include "pages/season_forms.h"
#include "wording/season_words.h"
#include <stdio.h>
#include <string.h>

static void month_heading(const spz_planned_concert *concert, int width, Buffer *out)
{
    char text[48];
    if (concert->year)
        snprintf(text, sizeof text, "%s %d", season_month(concert->month), concert->year);
    else
        snprintf(text, sizeof text, "Without a date");
    buffer_puts(out, out->length ? "\n" : "");
    layout_heading(out, text, '-', width);
}

static bool same_month(const spz_planned_concert *a, const spz_planned_concert *b)
{
    return a->year == b->year && a->month == b->month;
}

/* 'Serenade: violins opposed, ...' where the seating is new, else the title alone. */
static void list_works(const spz_planned_concert *concert, Buffer *text)
{
    const char *before = "";
    for (size_t i = 0; i < concert->work_count; i++) {
        const spz_planned_work *work = &concert->works[i];
        buffer_puts(text, i ? "; " : "");
        if (strcmp(before, work->seating) != 0)
            buffer_printf(text, "%s: ", work->seating);
        buffer_puts(text, work->title);
        before = work->movement_count ? work->movements[work->movement_count - 1].seating : work->seating;
    }
}

static void sum_changes(const spz_planned_concert *concert, Buffer *text)
{
    buffer_puts(text, concert->setup ? "Set up afresh" : "House's usual seating");
    if (concert->change_count == 0)
        buffer_puts(text, "; no change.");
    else {
        buffer_puts(text, "; ");
        season_count(text, (long long)concert->change_count, "change", "changes");
        buffer_puts(text, ", ");
        season_minutes(text, concert->minutes);
        buffer_puts(text, ".");
    }
}

static void say_concert(const spz_planned_concert *concert, int width, Buffer *out)
{
    Buffer text;
    char lead[24] = "- ";
    buffer_init(&text);
    if (concert->year)
        snprintf(lead, sizeof lead, "%.3s %2d  ", season_weekday(concert->weekday), concert->day);
    buffer_printf(&text, "%s%s%s", concert->name, *concert->hall ? ", " : "", concert->hall);
    layout_flow(out, 0, lead, &text, width);
    int indent = (int)strlen(lead);
    if (concert->problem) {
        buffer_printf(&text, "Not planned: %s.", concert->problem);
        layout_flow(out, indent, "", &text, width);
    } else {
        list_works(concert, &text);
        layout_flow(out, indent, "", &text, width);
        sum_changes(concert, &text);
        layout_flow(out, indent, "", &text, width);
    }
    out->failed = out->failed || buffer_failed(&text);
    buffer_free(&text);
}

void calendar_text(const spz_season *season, int width, Buffer *out)
{
    const spz_planned_concert *before = NULL;
    for (size_t i = 0; i < spz_season_concerts(season); i++) {
        const spz_planned_concert *concert = spz_season_concert(season, i);
        if (!before || !same_month(before, concert))
            month_heading(concert, width, out);
        say_concert(concert, width, out);
        before = concert;
    }
}

void calendar_csv(const spz_season *season, int width, Buffer *out)
{
    CsvRow row;
    Buffer date;
    (void)width;
    buffer_init(&date);
    csv_header(out, "date,weekday,concert,hall,first seating,set up,changes,minutes,problem");
    csv_begin(&row, out);
    for (size_t i = 0; i < spz_season_concerts(season); i++) {
        const spz_planned_concert *concert = spz_season_concert(season, i);
        season_iso_date(&date, concert);
        csv_text(&row, date.length ? date.text : "");
        csv_text(&row, concert->year ? season_weekday(concert->weekday) : "");
        csv_text(&row, concert->name);
        csv_text(&row, concert->hall);
        csv_text(&row, concert->work_count ? concert->works[0].seating : "");
        csv_text(&row, concert->setup ? "yes" : "no");
        csv_integer(&row, (long long)concert->change_count);
        csv_number(&row, concert->minutes, 1);
        csv_text(&row, concert->problem);
        csv_end(&row);
        buffer_clear(&date);
    }
    out->failed = out->failed || buffer_failed(&date);
    buffer_free(&date);
}
