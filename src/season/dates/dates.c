#include "season/dates/dates.h"
#include "support/text/ascii.h"

enum { FIRST_YEAR = 1583, LAST_YEAR = 9999 }; /* whole years of the Gregorian calendar, four digits */

static bool is_leap(int year)
{
    return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
}

int date_days_of_month(int year, int month)
{
    static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    return month == 2 && is_leap(year) ? 29 : days[month - 1];
}

bool date_exists(Date date)
{
    return date.year >= FIRST_YEAR && date.year <= LAST_YEAR && date.month >= 1 && date.month <= 12 && date.day >= 1 &&
           date.day <= date_days_of_month(date.year, date.month);
}

bool date_is_set(Date date)
{
    return date.year != 0;
}

int date_compare(Date a, Date b)
{
    if (date_is_set(a) != date_is_set(b))
        return date_is_set(a) ? -1 : 1;
    if (a.year != b.year)
        return a.year - b.year;
    return a.month != b.month ? a.month - b.month : a.day - b.day;
}

/* Zeller 1883, for Monday first: the year begins in March. */
int date_weekday(Date date)
{
    int month = date.month < 3 ? date.month + 12 : date.month, year = date.month < 3 ? date.year - 1 : date.year;
    int saturday_first = (date.day + 13 * (month + 1) / 5 + year + year / 4 - year / 100 + year / 400) % 7;
    return (saturday_first + 5) % 7;
}

/* Days from 1 March of the year 0, by the calendar's cycle of 400 years; the year begins in March. */
static long day_number(Date date)
{
    long year = date.month < 3 ? date.year - 1 : date.year;
    int month = (date.month + 9) % 12;
    return year * 365 + year / 4 - year / 100 + year / 400 + (153 * month + 2) / 5 + date.day - 1;
}

Date date_after(Date date, long days)
{
    Date next = date;
    long left = days;
    for (; left >= 366 && next.month > 2; left = days - (day_number(next) - day_number(date)))
        next.year++;
    while (left-- > 0) {
        if (++next.day <= date_days_of_month(next.year, next.month))
            continue;
        next.day = 1;
        next.month = next.month % 12 + 1;
        next.year += next.month == 1;
    }
    return next;
}
