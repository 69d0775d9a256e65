#include "support/message.h"
#include "support/plain_locale.h"
#include "support/numbers.h"
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

enum { MESSAGE_TEXT = 400, NAME_MOST = 80 };

void message_send(const spz_sink *sink, const spz_message *place, const char *format, ...)
{
    char text[MESSAGE_TEXT];
    va_list list;
    if (!sink || !sink->say)
        return;
    va_start(list, format);
    number_format(text, sizeof text, format, list);
    va_end(list);
    spz_message message = *place;
    message.text = text;
    sink->say(sink->context, &message);
}

const char *message_cause(int cause)
{
    locale_t before = plain_locale_enter();
    const char *text = strerror(cause);
    plain_locale_leave(before);
    return text;
}

/* As much of a name as fits, whole characters only. */
static const char *cut_name(const char *name, char out[NAME_MOST + 1])
{
    size_t length = name ? strlen(name) : 0;
    if (!name || length <= NAME_MOST)
        return name;
    for (length = NAME_MOST; length && ((unsigned char)name[length] & 0xC0) == 0x80;)
        length--;
    memcpy(out, name, length);
    out[length] = '\0';
    return out;
}

static void fill_slots(const spz_message *message, char out[MESSAGE_TEXT])
{
    char count[24];
    snprintf(count, sizeof count, "%ld", message->count);
    const struct { const char *slot, *text; } slots[] = {{"{name}", message->name}, {"{other}", message->other}, {"{count}", count}};
    size_t used = 0;
    for (const char *at = fault_texts[message->fault].text; *at && used + 1 < MESSAGE_TEXT;) {
        const char *from = at++, *filled = NULL;
        for (size_t i = 0; i < sizeof slots / sizeof *slots && !filled; i++)
            if (!strncmp(from, slots[i].slot, strlen(slots[i].slot))) {
                filled = slots[i].text ? slots[i].text : "";
                at = from + strlen(slots[i].slot);
            }
        size_t length = filled ? strlen(filled) : 1, room = MESSAGE_TEXT - 1 - used;
        memcpy(out + used, filled ? filled : from, length < room ? length : room);
        used += length < room ? length : room;
    }
    out[used] = '\0';
}

void message_fault(const spz_sink *sink, const spz_message *place)
{
    char text[MESSAGE_TEXT], name[NAME_MOST + 1];
    spz_message message = *place;
    if (!sink || !sink->say)
        return;
    message.name = cut_name(place->name, name);
    fill_slots(&message, text);
    message.text = text;
    sink->say(sink->context, &message);
}

const char *spz_fault_name(spz_fault fault)
{
    return (int)fault > 0 && fault < SPZ_FAULT_COUNT ? fault_texts[fault].name : "";
}

static const char *const status_texts[SPZ_STATUS_COUNT] = {
    [SPZ_OK] = "done",
    [SPZ_NO_MEMORY] = "the computer has no memory left for this",
    [SPZ_BAD_ARGUMENT] = "there is no such thing to ask for",
    [SPZ_CANNOT_OPEN] = "the file can't be opened",
    [SPZ_CANNOT_READ] = "the file can't be read to its end",
    [SPZ_CANNOT_WRITE] = "the result can't be written",
    [SPZ_EMPTY] = "there is nothing in the file",
    [SPZ_NOT_XML] = "the file is damaged or breaks off",
    [SPZ_NOT_MUSICXML] = "the file holds no MusicXML score",
    [SPZ_BAD_ARCHIVE] = "the compressed score can't be unpacked",
    [SPZ_OVER_LIMIT] = "the file goes beyond what a score can hold",
    [SPZ_BAD_MUSIC] = "the score states an impossible time or pitch",
    [SPZ_BAD_SETTINGS] = "the settings can't be used",
    [SPZ_NO_STRINGS] = "the score has no string sections to seat",
    [SPZ_INTERRUPTED] = "stopped before the end",
};

const char *spz_status_text(spz_status status)
{
    if ((int)status < 0 || status >= SPZ_STATUS_COUNT || !status_texts[status])
        return "an unknown answer";
    return status_texts[status];
}
