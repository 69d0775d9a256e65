/* dates.h - days of the Gregorian calendar as people write them in tables. */
#ifndef SEASON_TABLE_DATES_H
#define SEASON_TABLE_DATES_H
#include <stdbool.h>

typedef struct Date {
    int year, month, day; /* 0 0 0: none */
} Date;

/* '2027-03-14' (ISO 8601), '2027/3/14', '14.3.2027'. False for anything else: with two slashes nobody knows which is the month. */
bool date_read(const char *text, Date *out);
bool date_is_set(Date date);
int date_compare(Date a, Date b); /* days without a date come last */
int date_weekday(Date date);      /* 0 Monday .. 6 Sunday */
int date_days_of_month(int year, int month);
#endif
