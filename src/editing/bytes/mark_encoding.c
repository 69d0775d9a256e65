/* Unicode Standard, chapter 3.9: UTF-8 and UTF-16. */
#include "editing/bytes/mark_encoding.h"
#include "support/text/utf8.h"
#include "support/text/ascii.h"
#include <stdint.h>
#include <string.h>

/* The name that the XML declaration gives, in capitals; "" when it gives none. */
static void declared(const char *bytes, size_t length, char name[32])
{
    char head[256];
    size_t taken = length < sizeof head - 1 ? length : sizeof head - 1, count = 0;
    memcpy(head, bytes, taken);
    head[taken] = '\0';
    name[0] = '\0';
    char *start = strstr(head, "<?xml"), *end = start ? strstr(start, "?>") : NULL, *found;
    if (!end)
        return;
    *end = '\0';
    if ((found = strstr(start, "encoding")) == NULL || (found = strpbrk(found, "\"'")) == NULL)
        return;
    for (char quote = *found++; *found && *found != quote && count < 31; found++)
        name[count++] = (char)ascii_upper((unsigned char)*found);
    name[count] = '\0';
}

static bool ascii_like(const char *name)
{
    static const char *const whole[] = {"", "UTF-8", "UTF8", "US-ASCII", "ASCII", "LATIN1", "MACINTOSH"};
    static const char *const families[] = {"ISO-8859-", "ISO_8859-", "WINDOWS-125", "CP125", "KOI8-"};
    for (size_t i = 0; i < sizeof whole / sizeof whole[0]; i++)
        if (strcmp(name, whole[i]) == 0)
            return true;
    for (size_t i = 0; i < sizeof families / sizeof families[0]; i++)
        if (strncmp(name, families[i], strlen(families[i])) == 0)
            return true;
    return false;
}

Encoding encoding_of(const char *bytes, size_t length)
{
    char name[32];
    unsigned char start[4] = {0};
    memcpy(start, bytes, length < 4 ? length : 4);
    if ((start[2] == 0 && start[3] == 0) || (start[0] == 0 && start[1] == 0)) /* UTF-32, or nothing at all */
        return ENCODING_OTHER;
    if ((start[0] == 0xFF && start[1] == 0xFE) || (start[0] == '<' && start[1] == 0))
        return length % 2 == 0 ? ENCODING_UTF16_LITTLE : ENCODING_OTHER;
    if ((start[0] == 0xFE && start[1] == 0xFF) || (start[0] == 0 && start[1] == '<'))
        return length % 2 == 0 ? ENCODING_UTF16_BIG : ENCODING_OTHER;
    declared(bytes, length, name);
    return ascii_like(name) ? ENCODING_ASCII_LIKE : ENCODING_OTHER;
}

static uint32_t unit_at(Encoding encoding, const char *bytes)
{
    unsigned a = (unsigned char)bytes[0], b = (unsigned char)bytes[1];
    return encoding == ENCODING_UTF16_BIG ? a << 8 | b : b << 8 | a;
}

/* Halves of a pair are written like characters of their own. */
static void add_utf8(Buffer *text, uint32_t c)
{
    char bytes[UTF8_LONGEST];
    buffer_add(text, bytes, utf8_write(c, bytes));
}

void encoding_open(Encoding encoding, const char *bytes, size_t length, Buffer *text)
{
    if (encoding == ENCODING_ASCII_LIKE) {
        buffer_add(text, bytes, length);
        return;
    }
    for (size_t at = 0; at + 2 <= length; at += 2) {
        uint32_t c = unit_at(encoding, bytes + at);
        uint32_t low = at + 4 <= length ? unit_at(encoding, bytes + at + 2) : 0;
        if (c >= 0xD800 && c < 0xDC00 && low >= 0xDC00 && low < 0xE000) {
            c = 0x10000 + ((c - 0xD800) << 10) + (low - 0xDC00);
            at += 2;
        }
        add_utf8(text, c);
    }
}

static void add_unit(Encoding encoding, Buffer *bytes, uint32_t unit)
{
    char high = (char)(unit >> 8 & 0xFF), low = (char)(unit & 0xFF);
    char pair[2] = {encoding == ENCODING_UTF16_BIG ? high : low, encoding == ENCODING_UTF16_BIG ? low : high};
    buffer_add(bytes, pair, 2);
}

/* Takes one character of what encoding_open wrote. */
static uint32_t take_utf8(const char *text, size_t length, size_t *at)
{
    uint32_t c = (unsigned char)text[(*at)++];
    int more = c < 0xC0 ? 0 : c < 0xE0 ? 1 : c < 0xF0 ? 2 : 3;
    c &= more == 0 ? 0x7Fu : 0x3Fu >> more;
    while (more-- > 0 && *at < length)
        c = c << 6 | ((unsigned char)text[(*at)++] & 0x3Fu);
    return c;
}

void encoding_close(Encoding encoding, const char *text, size_t length, Buffer *bytes)
{
    if (encoding == ENCODING_ASCII_LIKE) {
        buffer_add(bytes, text, length);
        return;
    }
    for (size_t at = 0; at < length;) {
        uint32_t c = take_utf8(text, length, &at);
        if (c >= 0x10000) {
            add_unit(encoding, bytes, 0xD800 + ((c - 0x10000) >> 10));
            c = 0xDC00 + ((c - 0x10000) & 0x3FF);
        }
        add_unit(encoding, bytes, c);
    }
}
