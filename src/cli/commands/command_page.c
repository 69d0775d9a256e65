#include "cli/run.h"

static const Option *const options[] = {&option_work, &option_brief, &option_all, &option_kind, &option_strength, &option_width,   &option_year, &option_language, &option_settings,
                                        &option_set,      &option_format, &option_output, &option_verbose, NULL};

static int run(const Arguments *arguments)
{
    return run_report(arguments, &(Run){SPZ_REPORT_MOVEMENTS, SPZ_TO_SEATING, SPZ_AS_TEXT, SPZ_REPORT_USUAL, NULL, NULL});
}

const Command command_page = {
    .name = "page",
    .purpose = "the page of each movement (the same as without a command)",
    .operands = "SCORE...",
    .help = "Prints for each movement which string sections it has, the seating that the score asks for with its\n"
            "reasons and what the other choice would lose, and the passages it rests on, with bars and rehearsal\n"
            "letters. A SCORE is a MusicXML file, plain (.musicxml, .xml) or compressed (.mxl).\n",
    .options = options,
    .run = run,
};
