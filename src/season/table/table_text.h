/* table_text.h - the bytes of a table as UTF-8, whatever program wrote them. */
#ifndef SEASON_TABLE_TABLE_TEXT_H
#define SEASON_TABLE_TABLE_TEXT_H
#include "support/buffer.h"

/* The text without a byte order mark, and its length. UTF-16 (by its mark, or by the zero bytes that its letters have) becomes UTF-8 in `room`; all else is a
 * view of `bytes`. A shortage of memory is remembered in `room`. */
const char *table_text_open(const char *bytes, size_t *length, Buffer *room);
/* A cell in memory of its own: UTF-8 as it is, all else taken as Windows-1252, of which Latin-1 is the larger part; zero bytes end it. NULL: no memory. */
char *table_text_utf8(const void *cell, size_t length);
#endif
