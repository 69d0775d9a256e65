/* Unicode Standard, chapter 3.9 (UTF-16); the WHATWG Encoding Standard, index windows-1252. */
#include "season/table/table_text.h"
#include "support/memory.h"
#include "support/text/utf8.h"
#include <string.h>

typedef enum Units { UNITS_BYTES, UNITS_LITTLE, UNITS_BIG } Units;

static Units units_of(const char *bytes, size_t length)
{
    if (length < 4 || length % 2)
        return UNITS_BYTES;
    if (memcmp(bytes, "\xFF\xFE", 2) == 0 || (bytes[0] && !bytes[1] && bytes[2] && !bytes[3]))
        return UNITS_LITTLE;
    return memcmp(bytes, "\xFE\xFF", 2) == 0 || (!bytes[0] && bytes[1] && !bytes[2] && bytes[3]) ? UNITS_BIG : UNITS_BYTES;
}

static uint32_t unit_at(Units units, const char *bytes)
{
    uint32_t first = (unsigned char)bytes[0], second = (unsigned char)bytes[1];
    return units == UNITS_BIG ? first << 8 | second : second << 8 | first;
}

static void put(Buffer *text, uint32_t character)
{
    char bytes[UTF8_LONGEST];
    buffer_add(text, bytes, utf8_write(character, bytes));
}

static void open_utf16(Units units, const char *bytes, size_t length, Buffer *text)
{
    for (size_t at = 0; at + 2 <= length; at += 2) {
        uint32_t unit = unit_at(units, bytes + at), low = at + 4 <= length ? unit_at(units, bytes + at + 2) : 0;
        bool pair = unit >= 0xD800 && unit < 0xDC00 && low >= 0xDC00 && low < 0xE000;
        if (at == 0 && unit == 0xFEFF)
            continue;
        if (pair)
            at += 2;
        put(text, pair ? 0x10000 + ((unit - 0xD800) << 10) + (low - 0xDC00) : unit >= 0xD800 && unit < 0xE000 ? 0xFFFD : unit);
    }
}

const char *table_text_open(const char *bytes, size_t *length, Buffer *room)
{
    Units units = units_of(bytes, *length);
    size_t mark = *length >= 3 && memcmp(bytes, "\xEF\xBB\xBF", 3) == 0 ? 3 : 0;
    if (units) {
        open_utf16(units, bytes, *length, room);
        *length = room->length;
        return buffer_text(room);
    }
    *length -= mark;
    return bytes + mark;
}

static uint32_t windows_1252(unsigned char byte)
{
    static const uint16_t upper[32] = {0x20AC, 0x81,   0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
                                       0x2039, 0x0152, 0x8D,   0x017D, 0x8F,   0x90,   0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
                                       0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x9D,   0x017E, 0x0178};
    return byte >= 0x80 && byte < 0xA0 ? upper[byte - 0x80] : byte;
}

char *table_text_utf8(const void *cell, size_t length)
{
    const char *bytes = cell;
    const char *zero = memchr(bytes, '\0', length);
    size_t used = 0;
    if (zero)
        length = (size_t)(zero - bytes);
    char *copy = memory_get(length * UTF8_LONGEST + 1);
    if (!copy)
        return NULL;
    memcpy(copy, bytes, length);
    copy[length] = '\0';
    if (utf8_is_valid(copy, length))
        return copy;
    for (size_t i = 0; i < length; i++)
        used += utf8_write(windows_1252((unsigned char)bytes[i]), copy + used);
    copy[used] = '\0';
    return copy;
}
