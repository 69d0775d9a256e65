/* command_sheets.h - what the commands that write sheets for several scores together have in common. */
#ifndef CLI_COMMAND_SHEETS_H
#define CLI_COMMAND_SHEETS_H
#include "cli/command.h"

typedef struct Readings {
    spz_reading **at;
    size_t count;
} Readings;

/* Reads every SCORE as far as its seating; those that can't be read are left out, after one line each, and the exit status says so. */
int readings_make(const Arguments *arguments, const spz_settings *settings, int year, Readings *readings);
void readings_free(Readings *readings);

/* What the option says, out of `names` ("text|csv|html", in the order of `formats`). false after one line. */
bool sheets_format(const Arguments *arguments, const Option *option, const char *names, const spz_format *formats, spz_format *format);
/* Whether there is at least one SCORE, and the output isn't one of them. false after one line. */
bool sheets_operands(const Arguments *arguments);
/* --strength and --all: this strength at least; clear ones where nothing is said. false after one line. */
bool sheets_strength(const Arguments *arguments, double *strength);

/* A sheet made of readings, settings and spz_sheet_options: `names` and `formats` as above. Runs the whole command; its exit status. */
typedef struct SheetRun {
    const Option *form, *arrangement;
    const char *names;
    const spz_format *formats;
    spz_status (*sheet)(const spz_reading *const *, size_t, const spz_settings *, const spz_sheet_options *, spz_format, spz_document **);
} SheetRun;
int sheets_run(const Arguments *arguments, const SheetRun *wanted);
#endif
