#include "reader/files/source_text.h"
#include "support/text/ascii.h"
#include <stdint.h>
#include <string.h>

/* Whether a declaration at the beginning names another encoding, or the bytes are those of UTF-16 or UTF-32. */
static bool is_utf8(const char *text, size_t count)
{
    size_t length = 0;
    if (count >= 2 && (!text[0] || !text[1] || ((unsigned char)text[0] >= 0xFE && (unsigned char)text[1] >= 0xFE)))
        return false;
    while (length < count && length < 200 && text[length] != '>')
        length++;
    for (size_t i = 0; i + 9 <= length; i++) {
        if (memcmp(text + i, "encoding", 8) != 0)
            continue;
        for (i += 8; i < length && (text[i] == '=' || text[i] == '"' || text[i] == '\'' || ascii_is_blank((unsigned char)text[i])); i++)
            ;
        static const char wanted[] = "utf-8";
        size_t same = 0;
        while (same < 5 && i + same < length && ascii_lower((unsigned char)text[i + same]) == wanted[same])
            same++;
        return same == 5;
    }
    return true;
}

/* Bytes of the letter that begins here, by RFC 3629; 0 where none can begin, or the bytes behind it are not its own. `missing`: the buffer ends within it. */
static size_t letter(const unsigned char *at, size_t left, bool *missing)
{
    unsigned first = at[0];
    size_t length = first < 0x80 ? 1 : first >= 0xC2 && first < 0xE0 ? 2 : (first & 0xF0) == 0xE0 ? 3 : first >= 0xF0 && first < 0xF5 ? 4 : 0;
    *missing = false;
    for (size_t i = 1; i < length; i++) {
        if (i == left) {
            *missing = true;
            return 0;
        }
        unsigned least = i > 1 ? 0x80 : first == 0xE0 ? 0xA0 : first == 0xF0 ? 0x90 : 0x80, most = i > 1 ? 0xBF : first == 0xED ? 0x9F : first == 0xF4 ? 0x8F : 0xBF;
        if (at[i] < least || at[i] > most)
            return 0;
    }
    return length;
}

/* The first byte from `at` on that is not ASCII; nearly all are. */
static size_t skip_plain(const unsigned char *text, size_t at, size_t count)
{
    uint64_t piece[4];
    for (; at + sizeof piece <= count; at += sizeof piece) {
        memcpy(piece, text + at, sizeof piece);
        if ((piece[0] | piece[1] | piece[2] | piece[3]) & UINT64_C(0x8080808080808080))
            break;
    }
    while (at < count && text[at] < 0x80)
        at++;
    return at;
}

static size_t mend(SourceText *source, unsigned char *text, size_t count, bool last)
{
    for (size_t at = skip_plain(text, 0, count); at < count; at = skip_plain(text, at, count)) {
        bool missing;
        size_t length = letter(text + at, count - at, &missing);
        if (missing && !last) {
            source->held_count = count - at;
            memcpy(source->held, text + at, source->held_count);
            return at;
        }
        if (length == 0) {
            text[at] = '?';
            source->mended = true;
            length = 1;
        }
        at += length;
    }
    return count;
}

size_t source_text_begin(SourceText *source, char *buffer)
{
    size_t held = source->held_count;
    memcpy(buffer, source->held, held);
    source->held_count = 0;
    return held;
}

size_t source_text_pass(SourceText *source, char *buffer, size_t count, bool last)
{
    if (!source->begun) {
        size_t blanks = 0;
        while (blanks < count && ascii_is_blank((unsigned char)buffer[blanks]))
            blanks++;
        count -= blanks;
        memmove(buffer, buffer + blanks, count);
        source->begun = count > 0;
        source->utf8 = is_utf8(buffer, count);
    }
    return source->utf8 ? mend(source, (unsigned char *)buffer, count, last) : count;
}
