/* message.h - how modules speak to the caller's sink. */
#ifndef SUPPORT_MESSAGE_H
#define SUPPORT_MESSAGE_H
#include "spezzato/status.h"

/* Sends a message to `sink` (NULL is silence). `place` carries file, line, part, bar and severity; its text is replaced by
 * the formatted sentence (cut at 400 characters). */
void message_send(const spz_sink *sink, const spz_message *place, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
#endif
