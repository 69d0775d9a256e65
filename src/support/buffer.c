#include "support/buffer.h"
#include "support/memory.h"
#include <stdio.h>
#include <string.h>

void buffer_init(Buffer *buffer)
{
    *buffer = (Buffer){0};
}

void buffer_free(Buffer *buffer)
{
    memory_free(buffer->text);
    buffer_init(buffer);
}

void buffer_clear(Buffer *buffer)
{
    buffer->length = 0;
    if (buffer->text)
        buffer->text[0] = '\0';
}

bool buffer_failed(const Buffer *buffer)
{
    return buffer->failed;
}

static bool label_space_for(Buffer *buffer, size_t more)
{
    if (buffer->failed)
        return false;
    size_t need = buffer->length + more + 1;
    if (need <= buffer->capacity)
        return true;
    size_t larger = buffer->capacity ? buffer->capacity : 256;
    while (larger < need)
        larger *= 2;
    char *text = memory_resize(buffer->text, larger, 1);
    if (!text) {
        buffer->failed = true;
        return false;
    }
    buffer->text = text;
    buffer->capacity = larger;
    return true;
}

void buffer_add(Buffer *buffer, const char *text, size_t length)
{
    if (!label_space_for(buffer, length))
        return;
    memcpy(buffer->text + buffer->length, text, length);
    buffer->length += length;
    buffer->text[buffer->length] = '\0';
}

void buffer_puts(Buffer *buffer, const char *text)
{
    if (text)
        buffer_add(buffer, text, strlen(text));
}

void buffer_putc(Buffer *buffer, char c)
{
    buffer_add(buffer, &c, 1);
}

void buffer_vprintf(Buffer *buffer, const char *format, va_list list)
{
    va_list again;
    va_copy(again, list);
    int length = vsnprintf(NULL, 0, format, list);
    if (length < 0)
        buffer->failed = true;
    else if (label_space_for(buffer, (size_t)length)) {
        vsnprintf(buffer->text + buffer->length, (size_t)length + 1, format, again);
        buffer->length += (size_t)length;
    }
    va_end(again);
}

void buffer_printf(Buffer *buffer, const char *format, ...)
{
    va_list list;
    va_start(list, format);
    buffer_vprintf(buffer, format, list);
    va_end(list);
}

static const char *xml_entity(char c)
{
    switch (c) {
    case '&': return "&amp;";
    case '<': return "&lt;";
    case '>': return "&gt;";
    case '"': return "&quot;";
    case '\'': return "&#39;";
    default: return NULL;
    }
}

void buffer_xml(Buffer *buffer, const char *text)
{
    for (; text && *text; text++) {
        const char *entity = xml_entity(*text);
        if (entity)
            buffer_puts(buffer, entity);
        else if ((unsigned char)*text >= 0x20 || *text == '\n' || *text == '\t')
            buffer_putc(buffer, *text);
    }
}

void buffer_json(Buffer *buffer, const char *text)
{
    if (!text) {
        buffer_puts(buffer, "null");
        return;
    }
    buffer_putc(buffer, '"');
    for (; *text; text++) {
        unsigned char c = (unsigned char)*text;
        if (c == '"' || c == '\\')
            buffer_printf(buffer, "\\%c", c);
        else if (c < 0x20)
            buffer_printf(buffer, "\\u%04x", c);
        else
            buffer_putc(buffer, (char)c);
    }
    buffer_putc(buffer, '"');
}

void buffer_csv(Buffer *buffer, const char *text)
{
    if (!text)
        return;
    if (!strpbrk(text, ",\"\r\n")) {
        buffer_puts(buffer, text);
        return;
    }
    buffer_putc(buffer, '"');
    for (; *text; text++) {
        if (*text == '"')
            buffer_putc(buffer, '"');
        buffer_putc(buffer, *text);
    }
    buffer_putc(buffer, '"');
}
