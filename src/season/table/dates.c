#include "season/table/dates.h"
#include "support/ascii.h"
#include <stddef.h>

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

static bool exists(Date date)
{
    return date.year >= FIRST_YEAR && date.year <= LAST_YEAR && date.month >= 1 && date.month <= 12 && date.day >= 1 &&
           date.day <= date_days_of_month(date.year, date.month);
}

/* Up to four digits; -1 when there is none. */
static int take_number(const char **text)
{
    int number = 0, digits = 0;
    for (; ascii_is_digit((unsigned char)**text) && digits < 5; digits++)
        number = number * 10 + (*(*text)++ - '0');
    return digits > 0 && digits < 5 ? number : -1;
}

bool date_read(const char *text, Date *out)
{
    int parts[3];
    char between = '\0';
    *out = (Date){0, 0, 0};
    for (int i = 0; i < 3; i++) {
        while (i > 0 && *text == ' ')
            text++;
        parts[i] = take_number(&text);
        if (parts[i] < 0 || (i == 2 && *text))
            return false;
        if (i == 0)
            between = *text;
        if (!between)
            return false;
        if (i < 2 && *text++ != between)
            return false;
    }
    bool year_first = parts[0] > 31;
    if (between != '.' && !(year_first && (between == '-' || between == '/')))
        return false;
    Date date = year_first ? (Date){parts[0], parts[1], parts[2]} : (Date){parts[2], parts[1], parts[0]};
    if (!exists(date))
        return false;
    *out = date;
    return true;
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
