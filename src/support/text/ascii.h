/* ascii.h - letters, digits and blanks of ASCII, the same whatever language the host program has chosen; bytes of other characters are none of
 * them. */
#ifndef SUPPORT_ASCII_H
#define SUPPORT_ASCII_H
#include <stdbool.h>
#include <stddef.h>

static inline bool ascii_is_digit(int c)
{
    return c >= '0' && c <= '9';
}

static inline bool ascii_is_letter(int c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

static inline bool ascii_is_blank(int c) /* as isspace */
{
    return c == ' ' || (c >= '\t' && c <= '\r');
}

static inline int ascii_lower(int c)
{
    return c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c;
}

static inline int ascii_upper(int c)
{
    return c >= 'a' && c <= 'z' ? c - 'a' + 'A' : c;
}

/* Whether both are the same but for capitals. */
static inline bool ascii_same(const char *one, const char *other)
{
    size_t i = 0;
    while (one[i] && ascii_lower(one[i]) == ascii_lower(other[i]))
        i++;
    return one[i] == other[i];
}
#endif
