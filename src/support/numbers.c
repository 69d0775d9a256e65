#include "support/numbers.h"
#include "support/plain_locale.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { LONGEST = 64 }; /* a number to be read, with its closing zero */
static const char digits[] = "0123456789";

static int format(char *out, size_t size, const char *pattern, ...) __attribute__((format(printf, 3, 4)));
static int format(char *out, size_t size, const char *pattern, ...)
{
    va_list list;
    va_start(list, pattern);
    int length = number_format(out, size, pattern, list);
    va_end(list);
    return length;
}

int number_format(char *out, size_t size, const char *pattern, va_list list)
{
    locale_t before = plain_locale_enter();
    int length = vsnprintf(out, size, pattern, list);
    plain_locale_leave(before);
    return length;
}

static const double tens[] = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6};
enum { FEW_DECIMALS = sizeof tens / sizeof *tens - 1 };

/* What "%.*f" writes, by whole numbers: a drawing has tens of thousands of them. false where the number is large, or so near the middle between two
 * that only its exact binary value tells where it goes. (Below 1e9 the product is right to 1e-6.) */
static bool write_small(double value, int decimals, char text[NUMBER_TEXT])
{
    double scaled = fabs(value) * tens[decimals];
    if (scaled >= 1e9)
        return false;
    unsigned long number = (unsigned long)scaled;
    double rest = scaled - (double)number;
    if (fabs(rest - 0.5) < 1e-5)
        return false;
    number += rest > 0.5;
    char reversed[24], *to = text;
    int length = 0;
    for (int digit = 0; number || digit <= decimals; digit++, number /= 10) {
        if (digit == decimals && digit > 0)
            reversed[length++] = '.';
        reversed[length++] = (char)('0' + number % 10);
    }
    if (value < 0)
        *to++ = '-';
    while (length)
        *to++ = reversed[--length];
    *to = '\0';
    return true;
}

char *number_text(double value, int decimals, char text[NUMBER_TEXT])
{
    text[0] = '\0';
    if (!isfinite(value) || fabs(value) > 1e15)
        return text;
    bool few = decimals >= 0 && decimals <= FEW_DECIMALS;
    double unit = few ? 1 / tens[decimals] : pow(10, -decimals);
    if (fabs(value) < unit / 2)
        value = 0; /* no '-0.00' */
    if (!few || !write_small(value, decimals, text))
        format(text, NUMBER_TEXT, "%.*f", decimals, value);
    return text;
}

char *number_text_short(double value, int decimals, char text[NUMBER_TEXT])
{
    number_text(value, decimals, text);
    size_t length = strchr(text, '.') ? strlen(text) : 0;
    while (length > 0 && text[length - 1] == '0')
        text[--length] = '\0';
    if (length > 0 && text[length - 1] == '.')
        text[length - 1] = '\0';
    return text;
}

/* Adds `length` characters as far as there is room. */
static void add(char number[LONGEST], const char *text, size_t length)
{
    size_t used = strlen(number), room = LONGEST - 1 - used;
    if (length > room)
        length = room;
    memcpy(number + used, text, length);
    number[used + length] = '\0';
}

/* Digits and decimals behind one of `points`, into `number` with a point; how much of the text they take, 0 where there are none. Decimals that no
 * double can tell apart are cut. */
static size_t take_decimal(const char *text, const char *points, char number[LONGEST])
{
    size_t whole = strspn(text, digits), length = whole;
    if (whole > LONGEST / 2)
        return 0;
    add(number, text, whole);
    if (text[whole] && strchr(points, text[whole])) {
        size_t decimals = strspn(text + whole + 1, digits);
        if (whole == 0 && decimals == 0)
            return 0;
        length += 1 + decimals;
        add(number, ".", 1);
        add(number, text + whole + 1, decimals < LONGEST / 3 ? decimals : LONGEST / 3);
    }
    return length;
}

/* 'e5', 'E+05'. */
static size_t take_exponent(const char *text, char number[LONGEST])
{
    if (*text != 'e' && *text != 'E')
        return 0;
    size_t sign = text[1] == '+' || text[1] == '-', count = strspn(text + 1 + sign, digits);
    if (count == 0 || count > 4)
        return 0;
    add(number, text, 1 + sign + count);
    return 1 + sign + count;
}

static double value_of(const char number[LONGEST])
{
    locale_t before = plain_locale_enter();
    double value = strtod(number, NULL);
    plain_locale_leave(before);
    return value;
}

double number_read(const char *text, const char **end)
{
    char number[LONGEST] = "";
    const char *at = text + (*text == '-');
    add(number, text, (size_t)(at - text));
    size_t length = take_decimal(at, ".", number);
    *end = text;
    if (length == 0)
        return 0;
    *end = at + length + take_exponent(at + length, number);
    return value_of(number);
}

bool number_of(const char *text, double *out)
{
    char number[LONGEST] = "";
    bool negative = *text == '-';
    text += negative || *text == '+';
    size_t length = take_decimal(text, ".,", number);
    if (length == 0 || text[length])
        return false;
    *out = negative ? -value_of(number) : value_of(number);
    return true;
}

double number_first(const char *text)
{
    char number[LONGEST] = "";
    text += strcspn(text, digits);
    return take_decimal(text, ".,", number) ? value_of(number) : 0;
}

double shown_strength(double strength)
{
    return floor(strength * 100 + 1e-9) / 100;
}
