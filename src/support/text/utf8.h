/* utf8.h - text as it is seen: characters, their width in columns, and what must never reach a terminal. */
#ifndef SUPPORT_UTF8_H
#define SUPPORT_UTF8_H
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* Takes the next character off `*text` (not at the closing zero). Bytes that are no UTF-8 give U+FFFD, one byte at a time. */
uint32_t utf8_next(const char **text);

/* Whether all `length` bytes are well-formed UTF-8 (RFC 3629) without a zero; a zero byte has to follow them. */
bool utf8_is_valid(const char *text, size_t length);

/* Writes the character, at most 4 bytes and no zero; returns how many. */
enum { UTF8_LONGEST = 4 };
size_t utf8_write(uint32_t character, char out[UTF8_LONGEST]);

/* The text with U+FFFD for every byte that is no UTF-8, cut to whole characters that fit into `size`. Returns `out`. */
char *utf8_mend(const char *text, char *out, size_t size);

/* Control characters (C0, DEL, C1) and characters that turn the direction of writing (Unicode Standard Annex 9). */
bool utf8_is_unsafe(uint32_t character);

/* What is shown of a character of a score: a blank for whatever ends a line, 0 (nothing) for the other unsafe ones, else itself. */
uint32_t utf8_safe(uint32_t character);

/* Columns on a terminal: 0 for marks that sit on the character before, 2 for wide East Asian ones (Unicode Standard Annex 11, the
 * blocks that are wide throughout), 1 for all others. */
int utf8_width(uint32_t character);
size_t utf8_columns(const char *text, size_t length);
#endif
