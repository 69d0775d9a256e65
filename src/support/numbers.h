/* numbers.h - numbers as text, both ways: always with a point, whatever language the host program has chosen (setlocale). The only place where
 * numbers with decimals are printed or read. */
#ifndef SUPPORT_NUMBERS_H
#define SUPPORT_NUMBERS_H
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>

enum { NUMBER_TEXT = 48 };
char *number_text(double value, int decimals, char text[NUMBER_TEXT]); /* "" where the value is not finite or beyond 1e15 */
char *number_text_short(double value, int decimals, char text[NUMBER_TEXT]); /* '12' for 12.00 */

/* vsnprintf (C11, 7.21.6.12) with a point in its numbers. */
int number_format(char *out, size_t size, const char *format, va_list list) __attribute__((format(printf, 3, 0)));

/* The number that the text begins with, as JSON writes it (RFC 8259: '-12.5', '3', '1.5e3'), correctly rounded; `*end` is behind it, or `text`
 * itself where there is none. */
double number_read(const char *text, const char **end);
/* What people write: the whole text is a number with or without sign and decimals, behind a point or a comma. */
bool number_of(const char *text, double *out);
/* The first number within the text, of the same kind without a sign; 0 where there is none. */
double number_first(const char *text);

/* A strength cut, not rounded, to two decimals: what is shown never belongs to a higher word than the strength itself. */
double shown_strength(double strength);
#endif
