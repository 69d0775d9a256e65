#include "cli/run.h"

static const Option *const options[] = {&option_work, &option_width, &option_year, &option_language, &option_settings, &option_set, &option_format, &option_output, &option_verbose, NULL};

static int run(const Arguments *arguments)
{
    return run_report(arguments, &(Run){SPZ_REPORT_SEATING, SPZ_TO_SEATING, SPZ_AS_TEXT, SPZ_REPORT_USUAL, NULL, NULL});
}

const Command command_seating = {
    .name = "seating",
    .purpose = "the recommended seating, and all arrangements ranked with what speaks for each",
    .operands = "SCORE...",
    .help = "Ranks the arrangements of the strings for each movement: the recommendation with its reasons, what each\n"
            "arrangement would lose, and every ground with its points.\n",
    .options = options,
    .run = run,
};
