#include "support/message.h"
#include <stdarg.h>
#include <stdio.h>

void message_send(const spz_sink *sink, const spz_message *place, const char *format, ...)
{
    char text[400];
    va_list list;
    if (!sink || !sink->say)
        return;
    va_start(list, format);
    vsnprintf(text, sizeof text, format, list);
    va_end(list);
    spz_message message = *place;
    message.text = text;
    sink->say(sink->context, &message);
}

static const char *const status_texts[SPZ_STATUS_COUNT] = {
    [SPZ_OK] = "done",
    [SPZ_NO_MEMORY] = "the computer has no memory left for this",
    [SPZ_BAD_ARGUMENT] = "there is no such thing to ask for",
    [SPZ_CANNOT_OPEN] = "the file can't be opened",
    [SPZ_CANNOT_READ] = "the file can't be read to its end",
    [SPZ_CANNOT_WRITE] = "the result can't be written",
    [SPZ_EMPTY] = "there is nothing in the file",
    [SPZ_NOT_XML] = "the file is no well-formed XML",
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
