#include "season/results/json_reader.h"
#include "support/text/utf8.h"
#include "support/numbers.h"
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

enum { DEPTH_MOST = 8 };

typedef struct Reading {
    const char *at, *end;
    Arena *arena;
    int depth;
} Reading;

static bool take_value(Reading *reading, JsonValue *value);

static void skip_blanks(Reading *reading)
{
    while (reading->at < reading->end && strchr(" \t\r\n", *reading->at) && *reading->at)
        reading->at++;
}

static bool take(Reading *reading, char c)
{
    skip_blanks(reading);
    if (reading->at >= reading->end || *reading->at != c)
        return false;
    reading->at++;
    return true;
}

static bool take_word(Reading *reading, const char *word)
{
    size_t length = strlen(word);
    if ((size_t)(reading->end - reading->at) < length || memcmp(reading->at, word, length) != 0)
        return false;
    reading->at += length;
    return true;
}

static int hexadecimal(char c)
{
    return c >= '0' && c <= '9' ? c - '0' : c >= 'a' && c <= 'f' ? c - 'a' + 10 : c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
}

/* Four hexadecimal digits; -1 where they are not there. */
static long take_code(Reading *reading)
{
    long code = 0;
    if (reading->end - reading->at < 4)
        return -1;
    for (int i = 0; i < 4; i++) {
        int digit = hexadecimal(*reading->at++);
        if (digit < 0)
            return -1;
        code = code * 16 + digit;
    }
    return code;
}

static char *put_character(char *out, uint32_t c)
{
    return out + utf8_write(c, out);
}

/* Behind '\u': the character, two codes for those past U+FFFF. 0 and halves alone are refused. */
static char *take_unicode(Reading *reading, char *out)
{
    long code = take_code(reading);
    if (code <= 0 || (code >= 0xDC00 && code <= 0xDFFF))
        return NULL;
    if (code < 0xD800 || code > 0xDFFF)
        return put_character(out, (uint32_t)code);
    if (!take_word(reading, "\\u"))
        return NULL;
    long low = take_code(reading);
    return low >= 0xDC00 && low <= 0xDFFF ? put_character(out, (uint32_t)(0x10000 + ((code - 0xD800) << 10) + low - 0xDC00)) : NULL;
}

static char *take_escape(Reading *reading, char *out)
{
    static const char names[] = "\"\\/bfnrt", meant[] = "\"\\/\b\f\n\r\t";
    char c = reading->at < reading->end ? *reading->at++ : '\0';
    if (c == 'u')
        return take_unicode(reading, out);
    const char *found = c ? strchr(names, c) : NULL;
    if (!found)
        return NULL;
    *out++ = meant[found - names];
    return out;
}

/* Behind the opening mark. What is read never needs more room than its spelling. */
static const char *take_text(Reading *reading)
{
    const char *close = reading->at;
    while (close < reading->end && *close != '"')
        close += *close == '\\' && close + 1 < reading->end ? 2 : 1;
    if (close >= reading->end)
        return NULL;
    char *text = arena_take(reading->arena, (size_t)(close - reading->at) + 1, 1), *out = text;
    while (out && *reading->at != '"') {
        unsigned char c = (unsigned char)*reading->at++;
        if (c < 0x20)
            return NULL;
        if (c == '\\')
            out = take_escape(reading, out);
        else
            *out++ = (char)c;
    }
    if (!out)
        return NULL;
    reading->at++;
    return text;
}

/* The text as a whole need not end with a zero: the number is looked at in a copy. */
static bool take_number(Reading *reading, double *number)
{
    char text[40];
    const char *end;
    size_t length = 0;
    while (reading->at < reading->end && strchr("+-.eE0123456789", *reading->at) && *reading->at) {
        if (length + 1 == sizeof text)
            return false;
        text[length++] = *reading->at++;
    }
    text[length] = '\0';
    *number = number_read(text, &end);
    return length > 0 && *end == '\0';
}

static bool add_member(Reading *reading, JsonValue ***tail, const char *key)
{
    JsonValue *member = arena_take(reading->arena, 1, sizeof *member);
    if (!member || !take_value(reading, member))
        return false;
    member->key = key;
    **tail = member;
    *tail = &member->next;
    return true;
}

static bool take_members(Reading *reading, JsonValue *value, char close)
{
    JsonValue **tail = &value->first;
    if (take(reading, close))
        return true;
    do {
        const char *key = NULL;
        if (close == '}') {
            if (!take(reading, '"') || !(key = take_text(reading)) || !take(reading, ':'))
                return false;
        }
        if (!add_member(reading, &tail, key))
            return false;
    } while (take(reading, ','));
    return take(reading, close);
}

static bool take_value(Reading *reading, JsonValue *value)
{
    skip_blanks(reading);
    char c = reading->at < reading->end ? *reading->at : '\0';
    if (c == '{' || c == '[') {
        value->kind = c == '{' ? JSON_OBJECT : JSON_LIST;
        reading->at++;
        bool good = ++reading->depth <= DEPTH_MOST && take_members(reading, value, c == '{' ? '}' : ']');
        reading->depth--;
        return good;
    }
    if (c == '"') {
        value->kind = JSON_TEXT;
        reading->at++;
        return (value->text = take_text(reading)) != NULL;
    }
    if (c == 't' || c == 'f') {
        value->kind = JSON_FLAG;
        value->number = c == 't';
        return take_word(reading, c == 't' ? "true" : "false");
    }
    if (c == 'n')
        return take_word(reading, "null");
    value->kind = JSON_NUMBER;
    return take_number(reading, &value->number);
}

const JsonValue *json_read(const char *text, size_t length, Arena *arena)
{
    Reading reading = {text, text + length, arena, 0};
    JsonValue *value = arena_take(arena, 1, sizeof *value);
    if (!value || !take_value(&reading, value))
        return NULL;
    skip_blanks(&reading);
    return reading.at == reading.end ? value : NULL;
}

const JsonValue *json_member(const JsonValue *object, const char *key, JsonKind kind)
{
    for (const JsonValue *member = object ? object->first : NULL; member; member = member->next)
        if (member->key && strcmp(member->key, key) == 0)
            return member->kind == kind ? member : NULL;
    return NULL;
}

const char *json_member_text(const JsonValue *object, const char *key)
{
    const JsonValue *member = json_member(object, key, JSON_TEXT);
    return member ? member->text : NULL;
}

bool json_member_number(const JsonValue *object, const char *key, double least, double most, double *number)
{
    const JsonValue *member = json_member(object, key, JSON_NUMBER);
    if (!member || !(member->number >= least && member->number <= most))
        return false;
    *number = member->number;
    return true;
}

bool json_member_flag(const JsonValue *object, const char *key)
{
    const JsonValue *member = json_member(object, key, JSON_FLAG);
    return member && member->number > 0;
}
