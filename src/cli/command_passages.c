#include "run.h"

static const Option *const options[] = {&option_kind, &option_strength, &option_width, &option_settings, &option_set, &option_format, &option_output, &option_verbose, NULL};

static int run(const Arguments *arguments)
{
    return run_report(arguments, &(Run){SPZ_REPORT_PASSAGES, SPZ_TO_PASSAGES, SPZ_AS_TEXT, SPZ_REPORT_USUAL});
}

const Command command_passages = {
    .name = "passages",
    .purpose = "all passages on which the seating hangs",
    .operands = "SCORE...",
    .help = "Lists the passages of each movement: sections that answer each other (exchange, hocket, split line,\n"
            "imitation), divided sections, sections that move together (coupling), with bars, rehearsal letters,\n"
            "strength and reason.\n",
    .options = options,
    .run = run,
};
