#include "editing/bytes/mark_xml.h"
#include <stdlib.h>
#include <string.h>

static bool starts(const XmlScan *scan, size_t at, const char *with)
{
    size_t length = strlen(with);
    return length <= scan->length - at && memcmp(scan->text + at, with, length) == 0;
}

/* Place behind the next `mark` from `at` on; 0 when there is none. */
static size_t behind(const XmlScan *scan, size_t at, const char *mark)
{
    size_t length = strlen(mark);
    while (at + length <= scan->length) {
        const char *found = memchr(scan->text + at, mark[0], scan->length - at - length + 1);
        if (!found)
            return 0;
        at = (size_t)(found - scan->text);
        if (memcmp(found, mark, length) == 0)
            return at + length;
        at++;
    }
    return 0;
}

static bool is_blank(char c)
{
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

/* Behind the '>' that ends a tag; a '>' may stand inside quotes. */
static size_t behind_tag(const XmlScan *scan, size_t at)
{
    char quote = 0;
    for (; at < scan->length; at++) {
        char c = scan->text[at];
        if (quote)
            quote = c == quote ? 0 : quote;
        else if (c == '"' || c == '\'')
            quote = c;
        else if (c == '>')
            return at + 1;
    }
    return 0;
}

/* A DOCTYPE may hold declarations of its own between brackets, with quotes, comments and instructions. */
static size_t behind_doctype(const XmlScan *scan, size_t at)
{
    int depth = 0;
    while (at < scan->length) {
        char c = scan->text[at];
        if (starts(scan, at, "<!--")) {
            at = behind(scan, at + 4, "-->");
        } else if (starts(scan, at, "<?")) {
            at = behind(scan, at + 2, "?>");
        } else if (c == '"' || c == '\'') {
            at = behind(scan, at + 1, c == '"' ? "\"" : "'");
        } else {
            depth += c == '[' ? 1 : c == ']' ? -1 : 0;
            at++;
            if (c == '>' && depth <= 0)
                return at;
        }
        if (at == 0)
            return 0;
    }
    return 0;
}

static void read_tag(const XmlScan *scan, XmlPiece *piece)
{
    bool closing = starts(scan, piece->begin, "</");
    size_t name = piece->begin + (closing ? 2 : 1), end = name;
    piece->end = behind_tag(scan, name);
    if (piece->end == 0)
        return;
    while (end < piece->end - 1 && !is_blank(scan->text[end]) && scan->text[end] != '/')
        end++;
    piece->inside = scan->text + name;
    piece->inside_length = end - name;
    piece->kind = closing ? XML_END : scan->text[piece->end - 2] == '/' ? XML_EMPTY : XML_START;
}

static void read_text(const XmlScan *scan, XmlPiece *piece)
{
    const char *from = scan->text + piece->begin;
    const char *next = memchr(from, '<', scan->length - piece->begin);
    piece->kind = XML_TEXT;
    piece->inside = from;
    piece->inside_length = next ? (size_t)(next - from) : scan->length - piece->begin;
    piece->end = piece->begin + piece->inside_length;
}

static void read_cdata(const XmlScan *scan, XmlPiece *piece)
{
    size_t from = piece->begin + 9;
    piece->end = behind(scan, from, "]]>");
    piece->kind = XML_TEXT;
    piece->inside = scan->text + from;
    piece->inside_length = piece->end ? piece->end - 3 - from : 0;
}

XmlPiece xml_next(XmlScan *scan)
{
    XmlPiece piece = {XML_OTHER, scan->at, 0, NULL, 0};
    if (scan->at >= scan->length) {
        piece.kind = XML_FINISHED;
        piece.end = scan->at;
        return piece;
    }
    if (scan->text[scan->at] != '<')
        read_text(scan, &piece);
    else if (starts(scan, scan->at, "<!--"))
        piece.end = behind(scan, scan->at + 4, "-->");
    else if (starts(scan, scan->at, "<![CDATA["))
        read_cdata(scan, &piece);
    else if (starts(scan, scan->at, "<!"))
        piece.end = behind_doctype(scan, scan->at + 2);
    else if (starts(scan, scan->at, "<?"))
        piece.end = behind(scan, scan->at + 2, "?>");
    else
        read_tag(scan, &piece);
    if (piece.end == 0)
        piece.kind = XML_BROKEN;
    else
        scan->at = piece.end;
    return piece;
}

bool xml_is(const XmlPiece *piece, const char *name)
{
    return piece->kind <= XML_END && piece->inside_length == strlen(name) && memcmp(piece->inside, name, piece->inside_length) == 0;
}

/* One character or reference of an attribute's value; returns how many bytes it took. */
static size_t plain_character(const char *from, size_t left, char *c)
{
    static const struct { const char *reference; char plain; } named[] = {
        {"&amp;", '&'}, {"&lt;", '<'}, {"&gt;", '>'}, {"&quot;", '"'}, {"&apos;", '\''}};
    *c = *from;
    if (*from != '&')
        return 1;
    for (size_t i = 0; i < sizeof named / sizeof named[0]; i++) {
        size_t length = strlen(named[i].reference);
        if (length <= left && memcmp(from, named[i].reference, length) == 0) {
            *c = named[i].plain;
            return length;
        }
    }
    const char *semicolon = memchr(from, ';', left);
    if (semicolon && left > 3 && from[1] == '#') {
        bool hex = from[2] == 'x';
        long code = strtol(from + (hex ? 3 : 2), NULL, hex ? 16 : 10);
        if (code > 0 && code < 128) {
            *c = (char)code;
            return (size_t)(semicolon - from) + 1;
        }
    }
    return 1;
}

static const char *copy_value(const char *from, const char *end, char *out, size_t size)
{
    size_t length = 0;
    while (from < end && length + 1 < size)
        from += plain_character(from, (size_t)(end - from), &out[length++]);
    out[length] = '\0';
    return out;
}

const char *xml_attribute(const XmlScan *scan, const XmlPiece *piece, const char *name, char *out, size_t size)
{
    const char *at = piece->inside + piece->inside_length;
    const char *end = scan->text + piece->end - 1;
    size_t length = strlen(name);
    while (at < end) {
        while (at < end && (is_blank(*at) || *at == '/'))
            at++;
        const char *key = at;
        while (at < end && *at != '=' && !is_blank(*at))
            at++;
        size_t key_length = (size_t)(at - key);
        while (at < end && *at != '"' && *at != '\'')
            at++;
        if (at >= end)
            return NULL;
        const char *value = at + 1;
        const char *close = memchr(value, *at, (size_t)(end - value));
        if (!close)
            return NULL;
        if (key_length == length && memcmp(key, name, length) == 0)
            return copy_value(value, close, out, size);
        at = close + 1;
    }
    return NULL;
}
