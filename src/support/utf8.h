/* utf8.h - text as it is seen: characters, their width in columns, and what must never reach a terminal. */
#ifndef WRITING_UTF8_H
#define WRITING_UTF8_H
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

/* Control characters (C0, DEL, C1) and characters that turn the direction of writing. */
bool utf8_is_unsafe(uint32_t character);

/* Columns on a terminal: 0 for marks that sit on the character before, 2 for wide East Asian ones (Unicode Standard Annex 11, the
 * blocks that are wide throughout), 1 for all others. */
int utf8_width(uint32_t character);
size_t utf8_columns(const char *text, size_t length);
#endif
