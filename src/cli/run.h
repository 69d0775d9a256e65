/* run.h - what the commands that read scores and print one report have in common. */
#ifndef CLI_RUN_H
#define CLI_RUN_H
#include "cli/command.h"

typedef struct Run {
    spz_report_kind report;
    spz_depth depth;
    spz_format usual;           /* where --format is not given */
    spz_report_options options; /* what is not set by the shared options */
    const char *path;           /* where to write; NULL: what --output says */
    /* Whether a score can be reported so; else it has said one SPZ_ERROR. NULL: all can. */
    bool (*fits)(const spz_report_options *options, const spz_reading *reading, const spz_sink *sink);
} Run;

/* Reads every SCORE, reports those that could be read, writes the report. Exit status. */
int run_report(const Arguments *arguments, const Run *run);
#endif
