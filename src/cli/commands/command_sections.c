#include "cli/run.h"
#include "cli/messages.h"
#include <stdio.h>

static const Option option_write = {"write", 0, "FILE", "write a settings file that says of each part what it was taken for, ready to be set right"};
static const Option *const options[] = {&option_write, &option_width, &option_language, &option_settings, &option_set, &option_format, &option_output, &option_verbose, NULL};

/* What may have been set right by hand is never written over. */
static int write_corrections(const Arguments *arguments, const char *path)
{
    FILE *there = fopen(path, "r");
    if (there) {
        fclose(there);
        complain_usage(arguments->command, "%s is there already; what stands in it is not written over", path);
        return EXIT_USAGE;
    }
    if (arguments_have(arguments, &option_output) || arguments_have(arguments, &option_format)) {
        complain_usage(arguments->command, "--write names its own file and has one form: leave out --output and --format");
        return EXIT_USAGE;
    }
    Run corrections = {.report = SPZ_REPORT_CORRECTIONS, .depth = SPZ_TO_SECTIONS, .usual = SPZ_AS_TEXT, .options = SPZ_REPORT_USUAL, .path = path};
    int status = run_report(arguments, &corrections);
    if (status == EXIT_OK)
        fprintf(stderr, "spezzato: %s is written: set right what is wrong in it, then give it with --settings %s\n", path, path);
    return status;
}

static int run(const Arguments *arguments)
{
    const char *path = arguments_value(arguments, &option_write, NULL);
    if (path)
        return write_corrections(arguments, path);
    return run_report(arguments, &(Run){SPZ_REPORT_SECTIONS, SPZ_TO_SECTIONS, SPZ_AS_TEXT, SPZ_REPORT_USUAL, NULL, NULL});
}

const Command command_sections = {
    .name = "sections",
    .purpose = "how every part of the score was understood, and how to correct it",
    .operands = "SCORE...",
    .help = "Shows for every part its staff, family, string section, desk or line of a division, and why it was\n"
            "taken for that; and what to write into a settings file where it is wrong. --write makes such a file.\n",
    .options = options,
    .run = run,
};
