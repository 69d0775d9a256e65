#include "support/buffer.h"
#include "support/memory.h"
#include "support/numbers.h"
#include <stdio.h>
#include <string.h>

void buffer_init(Buffer *buffer)
{
    *buffer = (Buffer){.shortages = memory_shortages()};
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

bool buffer_in_doubt(const Buffer *buffer)
{
    return buffer->shortages != memory_shortages();
}

void buffer_go_on(Buffer *buffer)
{
    buffer->shortages = memory_shortages();
}

bool buffer_failed(const Buffer *buffer)
{
    return buffer->failed;
}

void buffers_end(bool *failed, Buffer *const *pieces, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        *failed = *failed || pieces[i]->failed;
        buffer_free(pieces[i]);
    }
}

static bool make_room(Buffer *buffer, size_t more)
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
    if (!make_room(buffer, length))
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

/* Into what is free, and once more where that was too little. */
void buffer_vprintf(Buffer *buffer, const char *format, va_list list)
{
    enum { MOSTLY_ENOUGH = 127 };
    va_list again;
    va_copy(again, list);
    if (make_room(buffer, MOSTLY_ENOUGH)) {
        size_t room = buffer->capacity - buffer->length;
        int length = number_format(buffer->text + buffer->length, room, format, list);
        if (length < 0)
            buffer->failed = true;
        else if ((size_t)length < room || make_room(buffer, (size_t)length)) {
            if ((size_t)length >= room)
                number_format(buffer->text + buffer->length, (size_t)length + 1, format, again);
            buffer->length += (size_t)length;
        }
        buffer->text[buffer->length] = '\0';
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
