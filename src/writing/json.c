#include "writing/json.h"
#include "support/numbers.h"
#include "support/text/utf8.h"
#include <math.h>

void json_begin(Json *json, Buffer *out)
{
    *json = (Json){.out = out};
}

void json_finish(Json *json)
{
    if (json->depth > 0 || json->after_key)
        json->out->failed = true;
}

static void new_line(Json *json)
{
    buffer_putc(json->out, '\n');
    for (int i = 0; i < json->depth; i++)
        buffer_puts(json->out, "  ");
}

/* What stands between the value before and the next one. */
static void before_value(Json *json)
{
    if (json->after_key) {
        json->after_key = false;
        return;
    }
    if (json->depth == 0)
        return;
    int level = json->depth - 1;
    if (json->filled[level])
        buffer_puts(json->out, json->on_line[level] ? ", " : ",");
    if (!json->on_line[level])
        new_line(json);
    json->filled[level] = true;
}

static void open_level(Json *json, char open, char close, bool on_one_line)
{
    before_value(json);
    if (json->depth == JSON_DEEPEST) { /* a mistake in this module; never half a document */
        json->out->failed = true;
        return;
    }
    bool within_line = json->depth > 0 && json->on_line[json->depth - 1];
    json->filled[json->depth] = false;
    json->on_line[json->depth] = on_one_line || within_line;
    json->close[json->depth] = close;
    json->depth++;
    buffer_putc(json->out, open);
}

void json_object(Json *json)
{
    open_level(json, '{', '}', false);
}

void json_row(Json *json)
{
    open_level(json, '{', '}', true);
}

void json_array(Json *json)
{
    open_level(json, '[', ']', false);
}

void json_list(Json *json)
{
    open_level(json, '[', ']', true);
}

void json_end(Json *json)
{
    if (json->depth == 0 || json->after_key) {
        json->out->failed = true;
        return;
    }
    json->depth--;
    if (json->filled[json->depth] && !json->on_line[json->depth])
        new_line(json);
    buffer_putc(json->out, json->close[json->depth]);
    if (json->depth == 0)
        buffer_putc(json->out, '\n');
}

static void add_character(Buffer *out, uint32_t character)
{
    char bytes[UTF8_LONGEST];
    if (character == '"' || character == '\\')
        buffer_printf(out, "\\%c", (char)character);
    else if (utf8_is_unsafe(character)) /* all of them below U+10000 */
        buffer_printf(out, "\\u%04x", (unsigned)character);
    else
        buffer_add(out, bytes, utf8_write(character, bytes));
}

/* How much of the text stands as it is. */
static size_t plain_length(const char *text)
{
    size_t length = 0;
    while (text[length] >= ' ' && text[length] <= '~' && text[length] != '"' && text[length] != '\\')
        length++;
    return length;
}

static void add_string(Buffer *out, const char *text)
{
    buffer_putc(out, '"');
    for (;;) {
        size_t plain = plain_length(text);
        buffer_add(out, text, plain);
        text += plain;
        if (!*text)
            break;
        add_character(out, utf8_next(&text));
    }
    buffer_putc(out, '"');
}

void json_key(Json *json, const char *key)
{
    before_value(json);
    add_string(json->out, key);
    buffer_puts(json->out, ": ");
    json->after_key = true;
}

void json_text(Json *json, const char *text)
{
    before_value(json);
    if (text)
        add_string(json->out, text);
    else
        buffer_puts(json->out, "null");
}

void json_integer(Json *json, long long value)
{
    before_value(json);
    buffer_printf(json->out, "%lld", value);
}

void json_number(Json *json, double value, int decimals)
{
    before_value(json);
    char text[NUMBER_TEXT];
    buffer_puts(json->out, isfinite(value) ? number_text(value, decimals, text) : "null");
}

void json_flag(Json *json, bool value)
{
    before_value(json);
    buffer_puts(json->out, value ? "true" : "false");
}

void json_put_text(Json *json, const char *key, const char *text)
{
    json_key(json, key);
    json_text(json, text);
}

void json_put_integer(Json *json, const char *key, long long value)
{
    json_key(json, key);
    json_integer(json, value);
}

void json_put_number(Json *json, const char *key, double value, int decimals)
{
    json_key(json, key);
    json_number(json, value, decimals);
}

void json_put_flag(Json *json, const char *key, bool value)
{
    json_key(json, key);
    json_flag(json, value);
}

void json_put_array(Json *json, const char *key)
{
    json_key(json, key);
    json_array(json);
}
