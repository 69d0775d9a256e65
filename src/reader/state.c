/* state.c - what all rules share: messages with their place, texts, attributes, numbers. */
#include "reader/reader.h"
#include "support/message.h"
#include "support/numbers.h"
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

uint32_t reader_line(const Reader *reader)
{
    const xmlParserInput *input = reader->parser ? reader->parser->input : NULL;
    return input && input->line > 0 ? (uint32_t)input->line : 0;
}

static spz_message place_of(const Reader *reader, spz_severity severity)
{
    spz_message message = {.severity = severity, .file = reader->file, .line = (long)reader_line(reader)};
    if (reader->place.part >= 0)
        message.part = reader->parts.at[reader->place.part].about.name;
    if (reader->place.bar >= 0 && (size_t)reader->place.bar < reader->bars.count)
        message.bar = reader->bars.at[reader->place.bar].number;
    return message;
}

void reader_fail(Reader *reader, spz_status status, const char *format, ...)
{
    char text[400];
    va_list list;
    spz_message place = place_of(reader, SPZ_ERROR);
    if (reader->status != SPZ_OK)
        return;
    va_start(list, format);
    number_format(text, sizeof text, format, list);
    va_end(list);
    message_send(reader->sink, &place, "%s", text);
    reader->status = status;
    if (reader->parser && !reader->feeding)
        xmlStopParser(reader->parser);
}

void reader_no_memory(Reader *reader)
{
    reader_fail(reader, SPZ_NO_MEMORY, "%s", spz_status_text(SPZ_NO_MEMORY));
}

void reader_doubt(Reader *reader, spz_fault fault, const char *name)
{
    spz_message place = place_of(reader, SPZ_DOUBT);
    place.fault = fault;
    place.name = name;
    message_fault(reader->sink, &place);
}

Element reader_parent(const Reader *reader)
{
    return reader->depth >= 2 ? (Element)reader->open[reader->depth - 2] : ELEMENT_OTHER;
}

bool reader_inside(const Reader *reader, Element element)
{
    for (int i = reader->depth - 1; i >= 0; i--)
        if (reader->open[i] == element)
            return true;
    return false;
}

static bool is_blank(char c)
{
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

const char *reader_text(Reader *reader)
{
    char *to = reader->text;
    for (const char *from = reader->text; *from; from++)
        if (!is_blank(*from))
            *to++ = *from;
        else if (to > reader->text && to[-1] != ' ')
            *to++ = ' ';
    if (to > reader->text && to[-1] == ' ')
        to--;
    *to = '\0';
    reader->text_length = (size_t)(to - reader->text);
    return reader->text;
}

const char *reader_keep(Reader *reader, const char *text)
{
    const char *copy = arena_string(&reader->score->arena, text);
    if (!copy)
        reader_no_memory(reader);
    return copy;
}

static const xmlChar **find_attribute(Reader *reader, AttributeName name)
{
    const xmlChar *wanted = name_table_attribute(reader->table, name);
    for (int i = 0; i < reader->attribute_count; i++)
        if (reader->attributes[5 * i] == wanted) /* name, prefix, namespace, start and end of the value */
            return reader->attributes + 5 * i;
    return NULL;
}

const char *reader_attribute(Reader *reader, AttributeName name, char *text, size_t size)
{
    const xmlChar **found = find_attribute(reader, name);
    if (!found)
        return NULL;
    size_t length = (size_t)(found[4] - found[3]);
    if (length >= size)
        length = size - 1;
    memcpy(text, found[3], length);
    text[length] = '\0';
    return text;
}

bool reader_attribute_is(Reader *reader, AttributeName name, const char *value)
{
    const xmlChar **found = find_attribute(reader, name);
    size_t length = strlen(value);
    return found && (size_t)(found[4] - found[3]) == length && memcmp(found[3], value, length) == 0;
}

PartDraft *reader_part(Reader *reader)
{
    return reader->place.part >= 0 ? &reader->parts.at[reader->place.part] : NULL;
}

Bar *reader_bar(Reader *reader)
{
    return reader->place.bar >= 0 ? &reader->bars.at[reader->place.bar] : NULL;
}

bool number_decimal(const char *text, Decimal *out)
{
    bool negative = *text == '-';
    int digits = 0, decimals = 0;
    *out = (Decimal){0, 1, false, false};
    if (*text == '-' || *text == '+')
        text++;
    for (; *text >= '0' && *text <= '9'; text++, digits++) {
        if (digits >= LIMIT_DIGITS)
            return false;
        out->digits = out->digits * 10 + (*text - '0');
    }
    if (*text == '.')
        for (text++; *text >= '0' && *text <= '9'; text++, digits++) {
            if (decimals == LIMIT_DECIMALS) {
                out->rounded = out->rounded || *text != '0';
                continue;
            }
            out->digits = out->digits * 10 + (*text - '0');
            out->scale *= 10;
            decimals++;
        }
    if (negative)
        out->digits = -out->digits;
    return out->given = *text == '\0' && digits > 0;
}

bool number_whole(const char *text, int64_t *out)
{
    Decimal decimal;
    if (!number_decimal(text, &decimal) || decimal.digits % decimal.scale != 0)
        return false;
    *out = decimal.digits / decimal.scale;
    return true;
}

