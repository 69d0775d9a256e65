/* message.h - how modules speak to the caller's sink. */
#ifndef SUPPORT_MESSAGE_H
#define SUPPORT_MESSAGE_H
#include "spezzato/status.h"

/* Sends a message to `sink` (NULL is silence). `place` carries file, line, part, bar and severity; its text is replaced by
 * the formatted sentence (cut at 400 characters). */
void message_send(const spz_sink *sink, const spz_message *place, const char *format, ...)
    __attribute__((format(printf, 3, 4)));

/* The same for a fault of a score: `place` carries the fault too, with its name, other and count. The name is cut at 80 bytes. */
void message_fault(const spz_sink *sink, const spz_message *place);

/* What the system calls the cause (a value of errno), in English as all messages; lives until the thread asks again. */
const char *message_cause(int cause);

/* Each fault as data and messages have it; made from the English phrases when building. */
typedef struct FaultText {
    const char *name, *text; /* `text` with {name}, {other} and {count} */
} FaultText;
extern const FaultText fault_texts[SPZ_FAULT_COUNT];
#endif
