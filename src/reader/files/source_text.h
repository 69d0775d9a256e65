/* source_text.h - the bytes of a file on their way to the parser: blanks before the XML declaration are dropped, and in UTF-8 each byte that is
 * none becomes a '?', so that one letter of another encoding does not cost the score. */
#ifndef READER_SOURCE_TEXT_H
#define READER_SOURCE_TEXT_H
#include <stdbool.h>
#include <stddef.h>

typedef struct SourceText { /* all zero at first */
    bool begun;
    bool utf8;      /* by its declaration, or for want of one */
    bool mended;    /* a byte was replaced */
    unsigned char held[4]; /* the beginning of a letter whose end is to come */
    size_t held_count;
} SourceText;

/* Puts what was held back to the front of the buffer, which has room for four bytes and more; gives how many bytes that are. New ones follow them. */
size_t source_text_begin(SourceText *source, char *buffer);
/* Looks through the `count` bytes that now stand in the buffer; gives how many of them are to be parsed, the rest is held back. `last`: nothing
 * follows. */
size_t source_text_pass(SourceText *source, char *buffer, size_t count, bool last);
#endif
