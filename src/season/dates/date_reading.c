/* A date is taken apart into numbers, the signs behind them, and words; what stands where then says which is the day. */
#include "season/dates/date_words.h"
#include "season/dates/dates.h"
#include "support/text/ascii.h"
#include "support/numbers.h"
#include <math.h>
#include <string.h>

enum { NUMBERS = 3, HOUR = 60, DAY = 24 * HOUR };

typedef struct Pieces {
    int numbers[NUMBERS], digits[NUMBERS];
    char behind[NUMBERS]; /* '-', '/', '.', or a blank */
    int count;
    int month;            /* by name; 0 */
    int weekday;          /* -1 */
    int time;
} Pieces;

static void skip_blanks(const char **text)
{
    while (**text == ' ' || **text == ',' || **text == '\t')
        ++*text;
}

/* `*digits`: how many there are; -1 where there are none, or more than nine. */
static int take_number(const char **text, int *digits)
{
    int number = 0;
    for (*digits = 0; ascii_is_digit((unsigned char)**text) && *digits < 9; ++*digits)
        number = number * 10 + (*(*text)++ - '0');
    return *digits > 0 && !ascii_is_digit((unsigned char)**text) ? number : -1;
}

/* 'am' and 'pm' behind a time, and the word for the hour. */
static int take_half(const char **text, int hour)
{
    char word[DATE_WORD_MOST];
    const char *after = *text;
    skip_blanks(&after);
    date_word_take(&after, word);
    bool before_noon = strcmp(word, "am") == 0 || (strcmp(word, "a") == 0 && strncmp(after, ".m.", 3) == 0);
    bool after_noon = strcmp(word, "pm") == 0 || (strcmp(word, "p") == 0 && strncmp(after, ".m.", 3) == 0);
    if (!before_noon && !after_noon && strcmp(word, "uhr") != 0)
        return hour;
    *text = after + (word[1] ? 0 : 3);
    return (before_noon || after_noon) && hour > 12 ? -1 : before_noon ? hour % 12 : after_noon ? hour % 12 + 12 : hour;
}

/* Seconds, and the zone of the world: they don't change what is printed. */
static void skip_seconds(const char **text)
{
    if (**text == ':')
        *text += 1 + strspn(*text + 1, "0123456789.");
    if (**text == 'Z' || **text == '+')
        *text += 1 + strspn(*text + 1, "0123456789:");
}

/* A time at `*text`: it begins with one or two digits and a sign of its own, or a word follows. NO_TIME, with `*text` where it was, when there is none. */
static int take_time(const char **text)
{
    const char *at = *text;
    int digits, hour = take_number(&at, &digits), minutes = 0;
    bool marked = *at == ':' || ((*at == 'h' || *at == 'H') && !ascii_is_letter((unsigned char)at[1]));
    if (hour < 0 || digits > 2)
        return NO_TIME;
    if (marked || (*at == '.' && ascii_is_digit((unsigned char)at[1]))) {
        at++;
        const char *before = at;
        minutes = take_number(&at, &digits);
        marked = marked || (hour > 0 && digits == 2);
        minutes = at == before ? 0 : digits == 2 ? minutes : -1;
        skip_seconds(&at);
    }
    const char *sign = at;
    hour = take_half(&at, hour);
    if (hour < 0 || hour > 24 || minutes < 0 || minutes > 59 || (!marked && at == sign))
        return NO_TIME;
    *text = at;
    return (hour * HOUR + minutes) % DAY;
}

static bool take_date_number(const char **text, Pieces *pieces)
{
    int at = pieces->count;
    if (at == NUMBERS)
        return false;
    pieces->numbers[at] = take_number(text, &pieces->digits[at]);
    pieces->behind[at] = strchr("-/.", **text) && **text ? **text : ' ';
    *text += pieces->behind[at] != ' ';
    pieces->count++;
    return pieces->numbers[at] >= 0;
}

static bool take_word(const char **text, Pieces *pieces)
{
    char word[DATE_WORD_MOST];
    date_word_take(text, word);
    int month = date_word_month(word), weekday = date_word_weekday(word);
    if (!*word)
        return false;
    if (month && pieces->month == 3 && pieces->weekday < 0 && pieces->count < 2) { /* 'mar. 4 mai': a Tuesday */
        pieces->weekday = 1;
        pieces->month = month;
    } else if (month && !pieces->month)
        pieces->month = month;
    else if (weekday >= 0 && pieces->weekday < 0)
        pieces->weekday = weekday;
    else if (!date_word_is_filler(word))
        return false;
    *text += **text == '.' || (**text == '-' && month);
    return true;
}

/* Whether the number at `text` has a sign behind it that only a time has. */
static bool is_clock(const char *text)
{
    char behind = text[strspn(text, "0123456789")];
    return behind == ':' || behind == 'h' || behind == 'H';
}

static bool take_apart(const char *text, Pieces *pieces)
{
    *pieces = (Pieces){.weekday = -1, .time = NO_TIME};
    for (skip_blanks(&text); *text; skip_blanks(&text)) {
        bool dated = pieces->count == NUMBERS || (pieces->month && pieces->count == 2) || (pieces->count == 1 && pieces->digits[0] == 8);
        bool digit = ascii_is_digit((unsigned char)*text);
        if (digit && (dated || is_clock(text)) && pieces->time == NO_TIME) {
            pieces->time = take_time(&text);
            if (pieces->time == NO_TIME)
                return false;
        } else if (digit ? !take_date_number(&text, pieces) : !take_word(&text, pieces))
            return false;
    }
    return true;
}

static int whole_year(int number, int digits)
{
    return digits == 4 ? number : digits != 2 ? 0 : number < 69 ? 2000 + number : 1900 + number;
}

/* '14 March 2027', 'March 14, 2027', '2027 March 14'. */
static Date with_month(const Pieces *pieces)
{
    int year = pieces->digits[0] == 4 ? 0 : 1, day = 1 - year;
    return (Date){whole_year(pieces->numbers[year], pieces->digits[year]), pieces->month, pieces->numbers[day]};
}

/* Days from 30 December 1899, as spreadsheets count them (ECMA-376 part 1, 18.17.4.1, the 1900 date base; OpenDocument 1.3 part 2, 4.3). */
static Date counted(int days)
{
    return days >= 20000 && days < 80000 ? date_after((Date){1899, 12, 30}, days) : (Date){0, 0, 0};
}

/* Three numbers with the year last. */
static DateAnswer two_numbers(const Pieces *pieces, DateOrder order, Date *date)
{
    int year = whole_year(pieces->numbers[2], pieces->digits[2]);
    Date day_first = {year, pieces->numbers[1], pieces->numbers[0]}, month_first = {year, pieces->numbers[0], pieces->numbers[1]};
    bool by_day = date_exists(day_first), by_month = date_exists(month_first) && pieces->behind[0] != '.';
    if (by_day && by_month && pieces->weekday >= 0 && (date_weekday(day_first) == pieces->weekday) != (date_weekday(month_first) == pieces->weekday))
        order = date_weekday(day_first) == pieces->weekday ? DATES_DAY_FIRST : DATES_MONTH_FIRST;
    *date = by_day && (!by_month || order == DATES_DAY_FIRST || day_first.day == day_first.month) ? day_first : month_first;
    if (by_day && by_month && order == DATES_UNKNOWN && day_first.day != day_first.month) {
        *date = (Date){0, 0, 0};
        return DATE_TWO_WAYS;
    }
    return by_day || by_month ? DATE_READ : DATE_NONE;
}

static DateAnswer put_together(const Pieces *pieces, DateOrder order, Date *date)
{
    int count = pieces->count;
    *date = (Date){0, 0, 0};
    if (pieces->month && count == 2)
        *date = with_month(pieces);
    else if (!pieces->month && count == 1 && pieces->digits[0] == 8)
        *date = (Date){pieces->numbers[0] / 10000, pieces->numbers[0] / 100 % 100, pieces->numbers[0] % 100};
    else if (!pieces->month && count == NUMBERS && pieces->behind[0] == pieces->behind[1] && pieces->behind[0] != ' ') {
        if (pieces->digits[0] != 4)
            return two_numbers(pieces, order, date);
        *date = (Date){pieces->numbers[0], pieces->numbers[1], pieces->numbers[2]};
    }
    return date_exists(*date) ? DATE_READ : DATE_NONE;
}

/* 46461, 46461.8125. */
static bool read_count(const char *text, DateReading *out)
{
    double days;
    if (strspn(text, "0123456789.") != strlen(text) || strspn(text, "0123456789") != 5 || !number_of(text, &days))
        return false;
    out->date = counted((int)days);
    double part = days - floor(days);
    out->time = part > 0 ? (int)lround(part * DAY) % DAY : NO_TIME;
    return date_is_set(out->date);
}

DateAnswer date_read(const char *text, DateOrder order, DateReading *out)
{
    Pieces pieces;
    *out = (DateReading){{0, 0, 0}, NO_TIME, false};
    if (read_count(text, out))
        return DATE_READ;
    DateAnswer answer = take_apart(text, &pieces) ? put_together(&pieces, order, &out->date) : DATE_NONE;
    if (answer == DATE_NONE)
        out->date = (Date){0, 0, 0};
    else
        out->time = pieces.time;
    out->other_weekday = answer == DATE_READ && pieces.weekday >= 0 && pieces.weekday != date_weekday(out->date);
    return answer;
}

int time_read(const char *text)
{
    double part;
    skip_blanks(&text);
    const char *at = text;
    int time = take_time(&at);
    skip_blanks(&at);
    if (time != NO_TIME && !*at)
        return time;
    if (strspn(text, "0123456789.") == strlen(text) && number_of(text, &part) && strchr(text, '.') && part < 1)
        return (int)lround(part * DAY) % DAY;
    return NO_TIME;
}

/* Three numbers with one sign between them at `*text`, as two of them and a year; steps past the first in any case. */
static DateOrder order_at(const char **text, const char *end)
{
    int numbers[NUMBERS], digits;
    const char *at = *text;
    char sign = '\0';
    while (*text < end && ascii_is_digit((unsigned char)**text))
        ++*text;
    for (int i = 0; i < NUMBERS; i++) {
        numbers[i] = take_number(&at, &digits);
        if (numbers[i] < 0 || (i < 2 ? digits > 2 : digits != 2 && digits != 4))
            return DATES_UNKNOWN;
        if (i == 0)
            sign = *at;
        if (i < 2 && ((sign != '/' && sign != '-') || *at++ != sign))
            return DATES_UNKNOWN;
    }
    *text = at;
    bool day = numbers[0] > 12 && numbers[0] <= 31 && numbers[1] >= 1 && numbers[1] <= 12;
    bool month = numbers[1] > 12 && numbers[1] <= 31 && numbers[0] >= 1 && numbers[0] <= 12;
    return day ? DATES_DAY_FIRST : month ? DATES_MONTH_FIRST : DATES_UNKNOWN;
}

DateOrder dates_order_in(const char *text, size_t length)
{
    const char *end = text + length;
    DateOrder found = DATES_UNKNOWN;
    while (text < end) {
        if (!ascii_is_digit((unsigned char)*text)) {
            text++;
            continue;
        }
        DateOrder order = order_at(&text, end);
        if (order && found && order != found)
            return DATES_UNKNOWN;
        found = order ? order : found;
    }
    return found;
}
