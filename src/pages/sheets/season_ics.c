/* The plan where people live: one event for each concert and rehearsal, with the seating of each work and the changes in its text. A concert without a day is
 * something to be done. */
#include "pages/growing_report.h"
#include "pages/season_forms.h"
#include "support/sha256.h"
#include "wording/phrase.h"
#include "wording/seasons/season_words.h"
#include "writing/calendar.h"
#include <stdio.h>
#include <string.h>

enum { EVENT_MINUTES = 120 /* a concert of unknown length with its interval, a call; common practice */, ROUNDED = 5 /* minutes */ };

/* Up to the next five minutes. */
static int event_minutes(const spz_planned_concert *concert, bool rehearsal)
{
    int minutes = (int)concert->lasts;
    return rehearsal || minutes <= 0 ? EVENT_MINUTES : (minutes + ROUNDED) / ROUNDED * ROUNDED;
}

typedef struct Diary {
    Calendar calendar;
    spz_language language;
    Buffer text; /* a description under way */
} Diary;

static void put_changes(Diary *diary, const spz_planned_concert *concert, size_t work)
{
    for (size_t i = 0; i < concert->change_count; i++)
        if (concert->changes[i].work == work) {
            say_whole_change(&diary->text, diary->language, &concert->changes[i]);
            buffer_puts(&diary->text, "\n");
        }
}

static void put_works(Diary *diary, const spz_planned_concert *concert)
{
    if (concert->setup) {
        say_whole_change(&diary->text, diary->language, concert->setup);
        buffer_puts(&diary->text, "\n");
    }
    for (size_t i = 0; i < concert->work_count; i++) {
        const spz_planned_work *work = &concert->works[i];
        put_changes(diary, concert, i);
        buffer_printf(&diary->text, "%zu. %s%s%s\n", i + 1, work->title, *work->note ? " - " : "", work->note);
        say_seated(&diary->text, diary->language, work);
        buffer_puts(&diary->text, "\n");
        if (work->interval_after)
            buffer_printf(&diary->text, "%s\n", phrase_text(diary->language, PHRASE_SEASON_INTERVAL));
    }
}

static void put_description(Diary *diary, const spz_planned_concert *concert)
{
    if (concert->problem)
        say_not_planned(&diary->text, diary->language, concert);
    else
        put_works(diary, concert);
    buffer_printf(&diary->text, "\n%s", report_cautions(diary->language));
    calendar_property(&diary->calendar, "DESCRIPTION", diary->text.text);
    buffer_clear(&diary->text);
}

/* Of an event: its concert's name, hall and place among those of the name, and which of its rehearsals; the same each time that the plan is written, so that a
 * calendar program takes the new one for the old. */
static const char *make_uid(const spz_planned_concert *concert, const spz_moment *when, const char *kind, char uid[SHA256_TEXT + 16])
{
    Sha256 sum;
    char text[SHA256_TEXT], day[64];
    snprintf(day, sizeof day, "%d-%d-%d %d", when->year, when->month, when->day, when->time);
    sha256_begin(&sum);
    sha256_add_text(&sum, concert->name);
    sha256_add_text(&sum, when->year ? day : concert->hall);
    sha256_add_text(&sum, kind);
    sha256_end(&sum, text);
    snprintf(uid, SHA256_TEXT + 16, "%.32s@spezzato", text);
    return uid;
}

static void put_event(Diary *diary, const spz_planned_concert *concert, const spz_moment *when, bool rehearsal)
{
    char uid[SHA256_TEXT + 16];
    Buffer title = {0};
    const char *name = *concert->name ? concert->name : phrase_text(diary->language, PHRASE_SEASON_UNNAMED);
    make_uid(concert, when, rehearsal ? "rehearsal" : "concert", uid);
    if (when->year)
        calendar_event(&diary->calendar, uid, (CalendarTime){when->year, when->month, when->day, when->time}, event_minutes(concert, rehearsal));
    else
        calendar_undated(&diary->calendar, uid);
    SAY(&title, diary->language, !when->year ? PHRASE_SEASON_EVENT_UNDATED : rehearsal ? PHRASE_SEASON_EVENT_REHEARSAL : PHRASE_SEASON_EVENT, slot_text("concert", name));
    calendar_property(&diary->calendar, "SUMMARY", title.text);
    calendar_property(&diary->calendar, "LOCATION", concert->hall);
    calendar_property(&diary->calendar, "CATEGORIES", rehearsal ? "REHEARSAL" : "CONCERT");
    put_description(diary, concert);
    calendar_close(&diary->calendar);
    buffer_let_go(diary->calendar.out, &title);
}

void calendar_ics(const spz_season *season, const spz_season_look *look, Buffer *out)
{
    Diary diary = {.language = look->language};
    buffer_init(&diary.text);
    calendar_begin(&diary.calendar, out, "-//spezzato//season//EN", look->stamp);
    for (size_t i = 0; i < spz_season_concerts(season); i++) {
        const spz_planned_concert *concert = spz_season_concert(season, i);
        for (size_t r = 0; r < concert->rehearsal_count; r++)
            put_event(&diary, concert, &concert->rehearsals[r], true);
        put_event(&diary, concert, &(spz_moment){concert->year, concert->month, concert->day, concert->time}, false);
    }
    calendar_end(&diary.calendar);
    buffer_let_go(out, &diary.text);
}
