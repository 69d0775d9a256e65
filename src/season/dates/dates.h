/* dates.h - days of the Gregorian calendar, and times of the day, as people write them in tables. */
#ifndef SEASON_TABLE_DATES_H
#define SEASON_TABLE_DATES_H
#include <stdbool.h>
#include <stddef.h>

typedef struct Date {
    int year, month, day; /* 0 0 0: none */
} Date;

enum { NO_TIME = -1 };

/* Which number comes first where both could be the day: '3/4/2027'. */
typedef enum DateOrder { DATES_UNKNOWN, DATES_DAY_FIRST, DATES_MONTH_FIRST } DateOrder;

typedef enum DateAnswer {
    DATE_NONE,    /* it is no date */
    DATE_READ,
    DATE_TWO_WAYS /* two numbers, and nothing says which is the month */
} DateAnswer;

typedef struct DateReading {
    Date date;
    int time;             /* minutes after midnight; NO_TIME */
    bool other_weekday;   /* it names a day of the week that isn't that day's */
} DateReading;

/* '2027-03-14', '2027/3/14', '20270314', '14.3.2027', '14.03.27', '14 March 2027', 'Sunday, March 14th, 2027', '14. März 2027', '1er mars 2027', '14/3/2027',
 * the number of days that spreadsheets count (46460), each with a time behind it if they like ('19:30', '7:30 pm', '19h30', '19.30 Uhr'). Years of
 * two digits are 1969 to 2068 (POSIX, strptime %y). */
DateAnswer date_read(const char *text, DateOrder order, DateReading *out);
/* '19:30', '7.30 pm', '19h', '19 Uhr', 0.8125 (a spreadsheet's); NO_TIME for what is none. */
int time_read(const char *text);
/* Which number comes first in the dates of a whole text, where one of them can be read in one way only (31/5/2027); DATES_UNKNOWN where there is none, or
 * they don't agree. */
DateOrder dates_order_in(const char *text, size_t length);

bool date_exists(Date date);
bool date_is_set(Date date);
int date_compare(Date a, Date b); /* days without a date come last */
int date_weekday(Date date);      /* 0 Monday .. 6 Sunday */
int date_days_of_month(int year, int month);
Date date_after(Date date, long days);
#endif
