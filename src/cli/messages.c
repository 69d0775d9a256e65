#include "cli/messages.h"
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

enum { PIECE = 512, LINE = 2048 };

static void add_piece(char line[LINE], const char *before, const char *text)
{
    char clean[PIECE];
    size_t used = strlen(line);
    snprintf(line + used, LINE - used, "%s%s", before, spz_text_clean(text, clean, sizeof clean));
}

/* 'symphony.mxl, line 12, Violin II, bar 66: ' */
static void add_place(char line[LINE], const spz_message *message)
{
    char number[32];
    size_t before = strlen(line);
    if (message->file)
        add_piece(line, "", message->file);
    if (message->line > 0) {
        snprintf(number, sizeof number, "%ld", message->line);
        add_piece(line, message->file ? ", line " : "line ", number);
    }
    if (message->part && *message->part)
        add_piece(line, ", ", message->part);
    if (message->bar && *message->bar)
        add_piece(line, ", bar ", message->bar);
    if (strlen(line) > before)
        add_piece(line, ": ", "");
}

static void print_message(const spz_message *message)
{
    static const char *const words[] = {[SPZ_NOTE] = "note: ", [SPZ_DOUBT] = "doubt: ", [SPZ_ERROR] = ""};
    char line[LINE] = "spezzato: ";
    add_place(line, message);
    add_piece(line, words[message->severity], message->text ? message->text : "");
    fprintf(stderr, "%s\n", line);
}

/* What the user wrote and what did nothing is told however much else there is to tell. */
static bool of_corrections(const Voice *voice, const spz_message *message)
{
    return message->fault == SPZ_FAULT_CORRECTION_STAFF || message->fault == SPZ_FAULT_CORRECTION_VOICE ||
           ((message->fault == SPZ_FAULT_CORRECTION_PART || message->fault == SPZ_FAULT_CORRECTION_BAR) && voice->lone_score);
}

static void hear(void *context, const spz_message *message)
{
    Voice *voice = context;
    bool everything = voice->most_doubts == 0;
    bool print = everything || message->severity == SPZ_ERROR || of_corrections(voice, message);
    if (message->severity == SPZ_ERROR)
        voice->errors++;
    if (message->severity == SPZ_DOUBT && (everything || !print)) {
        voice->doubts++;
        print = print || voice->doubts <= voice->most_doubts;
    }
    if (print)
        print_message(message);
}

spz_sink voice_sink(Voice *voice)
{
    return (spz_sink){hear, voice};
}

void voice_close(Voice *voice, const char *file)
{
    char text[64];
    if (voice->most_doubts && voice->doubts > voice->most_doubts) {
        size_t more = voice->doubts - voice->most_doubts;
        snprintf(text, sizeof text, "%zu more doubt%s; --verbose shows all", more, more == 1 ? "" : "s");
        print_message(&(spz_message){.severity = SPZ_NOTE, .file = file, .text = text});
    }
    voice->doubts = voice->errors = 0;
}

void complain_usage(const char *command, const char *format, ...)
{
    char text[PIECE], clean[PIECE];
    va_list list;
    va_start(list, format);
    vsnprintf(text, sizeof text, format, list);
    va_end(list);
    fprintf(stderr, "spezzato: %s (see: spezzato %s%s--help)\n", spz_text_clean(text, clean, sizeof clean), command ? command : "",
            command ? " " : "");
}

void complain_status(const char *file, spz_status status)
{
    print_message(&(spz_message){.severity = SPZ_ERROR, .file = file, .text = spz_status_text(status)});
}
