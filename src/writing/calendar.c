#include "writing/calendar.h"
#include "support/text/utf8.h"
#include <stdio.h>
#include <string.h>

enum { LINE_BYTES = 75, DAY_MINUTES = 24 * 60 };

/* Characters that don't fit on the line begin the next one, behind a blank. */
static void put_line(Calendar *calendar, const char *text)
{
    size_t used = 0;
    while (*text) {
        const char *next = text;
        utf8_next(&next);
        size_t length = (size_t)(next - text);
        if (used + length > LINE_BYTES) {
            buffer_puts(calendar->out, "\r\n ");
            used = 1;
        }
        buffer_add(calendar->out, text, length);
        used += length;
        text = next;
    }
    buffer_puts(calendar->out, "\r\n");
}

/* A text that may stand behind a colon; what could turn or end a line is left out. */
static void put_escaped(Buffer *line, const char *text)
{
    while (*text) {
        char bytes[UTF8_LONGEST];
        uint32_t character = utf8_next(&text);
        if (character == '\n')
            buffer_puts(line, "\\n");
        else if (character == '\\' || character == ';' || character == ',')
            buffer_printf(line, "\\%c", (int)character);
        else if ((character = utf8_safe(character)) != 0)
            buffer_add(line, bytes, utf8_write(character, bytes));
    }
}

void calendar_property(Calendar *calendar, const char *property, const char *text)
{
    Buffer line = {0};
    if (!text || !*text)
        return;
    buffer_printf(&line, "%s:", property);
    put_escaped(&line, text);
    put_line(calendar, buffer_text(&line));
    buffer_let_go(calendar->out, &line);
}

/* The day that is `days` after 1 January 1970, by the calendar's cycle of 400 years, which begins in March. */
static void civil_day(long long days, int *year, int *month, int *day)
{
    days += 719468; /* from 1 March of the year 0 */
    long long cycle = (days >= 0 ? days : days - 146096) / 146097;
    long long of_cycle = days - cycle * 146097;
    long long of_year = (of_cycle - of_cycle / 1460 + of_cycle / 36524 - of_cycle / 146096) / 365;
    long long since_march = of_cycle - (365 * of_year + of_year / 4 - of_year / 100);
    int from_march = (int)((5 * since_march + 2) / 153);
    *day = (int)(since_march - (153 * from_march + 2) / 5 + 1);
    *month = from_march < 10 ? from_march + 3 : from_march - 9;
    *year = (int)(of_year + cycle * 400) + (*month <= 2);
}

static void make_stamp(Calendar *calendar, long long seconds)
{
    int year, month, day;
    if (seconds < 0)
        seconds = 0;
    civil_day(seconds / 86400, &year, &month, &day);
    int rest = (int)(seconds % 86400);
    snprintf(calendar->stamp, sizeof calendar->stamp, "%04u%02u%02uT%02u%02u%02uZ", (unsigned)year % 10000, (unsigned)month % 100, (unsigned)day % 100,
             (unsigned)rest / 3600 % 24, (unsigned)rest / 60 % 60, (unsigned)rest % 60);
}

void calendar_begin(Calendar *calendar, Buffer *out, const char *product, long long stamp)
{
    *calendar = (Calendar){.out = out};
    make_stamp(calendar, stamp);
    put_line(calendar, "BEGIN:VCALENDAR");
    put_line(calendar, "VERSION:2.0");
    calendar_property(calendar, "PRODID", product);
    put_line(calendar, "CALSCALE:GREGORIAN");
}

static void open_component(Calendar *calendar, const char *component, const char *uid)
{
    calendar->component = component;
    buffer_printf(calendar->out, "BEGIN:%s\r\n", component);
    calendar_property(calendar, "UID", uid);
    calendar_property(calendar, "DTSTAMP", calendar->stamp);
}

void calendar_event(Calendar *calendar, const char *uid, CalendarTime start, int minutes)
{
    open_component(calendar, "VEVENT", uid);
    if (start.time < 0) {
        buffer_printf(calendar->out, "DTSTART;VALUE=DATE:%04d%02d%02d\r\n", start.year, start.month, start.day);
        return;
    }
    buffer_printf(calendar->out, "DTSTART:%04d%02d%02dT%02d%02d00\r\n", start.year, start.month, start.day, start.time % DAY_MINUTES / 60, start.time % 60);
    buffer_printf(calendar->out, "DURATION:PT%dM\r\n", minutes);
}

void calendar_undated(Calendar *calendar, const char *uid)
{
    open_component(calendar, "VTODO", uid);
}

void calendar_close(Calendar *calendar)
{
    buffer_printf(calendar->out, "END:%s\r\n", calendar->component);
    calendar->component = NULL;
}

void calendar_end(Calendar *calendar)
{
    put_line(calendar, "END:VCALENDAR");
}
