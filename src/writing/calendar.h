/* calendar.h - the one door for calendars that other programs take in: RFC 5545 (iCalendar). Lines are folded at 75 bytes between characters (3.1), texts
 * escaped (3.3.11). */
#ifndef WRITING_CALENDAR_H
#define WRITING_CALENDAR_H
#include "support/buffer.h"

typedef struct Calendar {
    Buffer *out;
    const char *component; /* open: an event or something to be done; NULL */
    char stamp[17];        /* '20261128T083000Z' */
} Calendar;

typedef struct CalendarTime {
    int year, month, day;
    int time; /* minutes after midnight, wherever the hall is; below 0: the whole day */
} CalendarTime;

/* `product` names the program, `stamp` is seconds from 1970: when the calendar was made. */
void calendar_begin(Calendar *calendar, Buffer *out, const char *product, long long stamp);
void calendar_event(Calendar *calendar, const char *uid, CalendarTime start, int minutes); /* of a whole day `minutes` count for nothing */
/* What has no day yet. */
void calendar_undated(Calendar *calendar, const char *uid);
/* SUMMARY, LOCATION, DESCRIPTION, CATEGORIES: nothing for an empty text. */
void calendar_property(Calendar *calendar, const char *property, const char *text);
void calendar_close(Calendar *calendar); /* the component */
void calendar_end(Calendar *calendar);
#endif
