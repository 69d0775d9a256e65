/* messages.h - everything that goes to the terminal beside the result: one line each, 'spezzato: FILE, line N: cause'. */
#ifndef CLI_MESSAGES_H
#define CLI_MESSAGES_H
#include "spezzato/spezzato.h"
#include <stdbool.h>
#include <stddef.h>

/* What was said about the file at hand. */
typedef struct Voice {
    size_t errors, doubts;
    bool lone_score;    /* no other is looked at: a correction that meets no part of it is a slip */
    size_t most_doubts; /* lines printed at most; the rest is counted. 0: all, notes too */
} Voice;

spz_sink voice_sink(Voice *voice);
/* Ends what was said about `file`: a line for the doubts that were only counted. */
void voice_close(Voice *voice, const char *file);

/* A mistake in the command: one line, and where help is. `command` NULL for none in particular. */
void complain_usage(const char *command, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* A file that failed without a word from the library. */
void complain_status(const char *file, spz_status status);
#endif
