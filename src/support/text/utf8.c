#include "support/text/utf8.h"
#include <string.h>

static const uint32_t replacement = 0xFFFD;

typedef struct Range {
    uint32_t first, last;
} Range;

/* Unicode 15 blocks; ordered. */
static const Range combining[] = {{0x0300, 0x036F}, {0x0483, 0x0489}, {0x0591, 0x05BD}, {0x064B, 0x065F}, {0x1AB0, 0x1AFF},
                                  {0x1DC0, 0x1DFF}, {0x200B, 0x200D}, {0x20D0, 0x20FF}, {0xFE00, 0xFE0F}, {0xFE20, 0xFE2F}, {0xFEFF, 0xFEFF}};
static const Range wide[] = {{0x1100, 0x115F}, {0x2E80, 0x303E}, {0x3041, 0x33FF}, {0x3400, 0x4DBF}, {0x4E00, 0x9FFF}, {0xA000, 0xA4CF},
                             {0xAC00, 0xD7A3}, {0xF900, 0xFAFF}, {0xFE30, 0xFE6F}, {0xFF00, 0xFF60}, {0xFFE0, 0xFFE6}, {0x1F300, 0x1F64F},
                             {0x1F900, 0x1F9FF}, {0x20000, 0x3FFFD}};

static bool within(uint32_t character, const Range *ranges, size_t count)
{
    for (size_t i = 0; i < count; i++)
        if (character >= ranges[i].first && character <= ranges[i].last)
            return true;
    return false;
}

static int following_bytes(unsigned char lead)
{
    if (lead >= 0xC2 && lead <= 0xDF)
        return 1;
    if (lead >= 0xE0 && lead <= 0xEF)
        return 2;
    if (lead >= 0xF0 && lead <= 0xF4)
        return 3;
    return -1;
}

uint32_t utf8_next(const char **text)
{
    static const uint32_t smallest[] = {0, 0x80, 0x800, 0x10000};
    const unsigned char *at = (const unsigned char *)*text;
    *text += 1;
    if (at[0] < 0x80)
        return at[0];
    int more = following_bytes(at[0]);
    if (more < 0)
        return replacement;
    uint32_t character = at[0] & (0x3Fu >> more);
    for (int i = 1; i <= more; i++) {
        if ((at[i] & 0xC0) != 0x80)
            return replacement;
        character = character << 6 | (at[i] & 0x3Fu);
    }
    if (character < smallest[more] || character > 0x10FFFF || (character >= 0xD800 && character <= 0xDFFF))
        return replacement;
    *text += more;
    return character;
}

bool utf8_is_valid(const char *text, size_t length)
{
    const char *end = text + length, *before = text;
    for (; text < end; before = text) {
        utf8_next(&text);
        if (!*before || (text == before + 1 && (*before & 0x80)))
            return false;
    }
    return text == end;
}

size_t utf8_write(uint32_t character, char out[UTF8_LONGEST])
{
    if (character < 0x80) {
        out[0] = (char)character;
        return 1;
    }
    size_t length = character < 0x800 ? 2 : character < 0x10000 ? 3 : 4;
    static const unsigned lead[] = {0, 0, 0xC0, 0xE0, 0xF0};
    for (size_t i = length - 1; i > 0; i--) {
        out[i] = (char)(0x80u | (character & 0x3Fu));
        character >>= 6;
    }
    out[0] = (char)(lead[length] | character);
    return length;
}

char *utf8_mend(const char *text, char *out, size_t size)
{
    size_t used = 0;
    while (*text) {
        char bytes[UTF8_LONGEST];
        size_t length = utf8_write(utf8_next(&text), bytes);
        if (used + length >= size)
            break;
        memcpy(out + used, bytes, length);
        used += length;
    }
    out[used] = '\0';
    return out;
}

bool utf8_is_unsafe(uint32_t character)
{
    return character < 0x20 || character == 0x061C || (character >= 0x7F && character <= 0x9F) || (character >= 0x200E && character <= 0x200F) ||
           (character >= 0x2028 && character <= 0x202E) || (character >= 0x2066 && character <= 0x2069);
}

uint32_t utf8_safe(uint32_t character)
{
    switch (character) {
    case '\n':
    case '\r':
    case '\t':
    case 0x85:
    case 0x2028:
    case 0x2029: return ' ';
    default: return utf8_is_unsafe(character) ? 0 : character;
    }
}

int utf8_width(uint32_t character)
{
    if (character < 0x300)
        return 1;
    if (within(character, combining, sizeof combining / sizeof combining[0]))
        return 0;
    return within(character, wide, sizeof wide / sizeof wide[0]) ? 2 : 1;
}

size_t utf8_columns(const char *text, size_t length)
{
    size_t columns = 0;
    for (const char *end = text + length; text < end && *text;)
        columns += (size_t)utf8_width(utf8_next(&text));
    return columns;
}
