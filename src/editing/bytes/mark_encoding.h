/* mark_encoding.h - the bytes of an XML file as text in which ASCII is ASCII, and back again to the very same bytes. */
#ifndef EDITING_BYTES_MARK_ENCODING_H
#define EDITING_BYTES_MARK_ENCODING_H
#include "spezzato/status.h"
#include "support/buffer.h"

typedef enum Encoding {
    ENCODING_ASCII_LIKE, /* UTF-8, the ISO 8859 family and their kind: nothing to change */
    ENCODING_UTF16_LITTLE,
    ENCODING_UTF16_BIG,
    ENCODING_OTHER       /* marks can't be put into it */
} Encoding;

Encoding encoding_of(const char *bytes, size_t length);
/* `text` gets the file in UTF-8 (UTF-16 converted), or as it is. Half pairs of UTF-16 are kept and come back as they were. */
void encoding_open(Encoding encoding, const char *bytes, size_t length, Buffer *text);
void encoding_close(Encoding encoding, const char *text, size_t length, Buffer *bytes);
#endif
