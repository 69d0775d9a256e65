#include "run.h"

static const Option *const options[] = {&option_width, &option_language, &option_settings, &option_set, &option_format, &option_output, &option_verbose, NULL};

static int run(const Arguments *arguments)
{
    return run_report(arguments, &(Run){SPZ_REPORT_SECTIONS, SPZ_TO_SECTIONS, SPZ_AS_TEXT, SPZ_REPORT_USUAL, NULL});
}

const Command command_sections = {
    .name = "sections",
    .purpose = "how every part of the score was understood, and how to correct it",
    .operands = "SCORE...",
    .help = "Shows for every part its staff, family, string section, desk or line of a division, and why it was\n"
            "taken for that; and what to write into a settings file where it is wrong.\n",
    .options = options,
    .run = run,
};
