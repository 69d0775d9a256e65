#include "cli/commands/command_sheets.h"

static const Option option_form = {"format", 0, "FORM", "text, html (with the notes; one file for paper, A4 or Letter), csv or json"};
static const Option option_arrangement = {"arrangement", 0, NULL, ""}; /* what is bowed alike hangs on no seating */
static const Option *const options[] = {&option_all,      &option_kind, &option_strength, &option_language,
                                        &option_settings, &option_set,  &option_form,     &option_output, &option_verbose, NULL};

static int run(const Arguments *arguments)
{
    static const spz_format formats[] = {SPZ_AS_TEXT, SPZ_AS_HTML, SPZ_AS_CSV, SPZ_AS_JSON};
    return sheets_run(arguments, &(SheetRun){&option_form, &option_arrangement, "text|html|csv|json", formats, spz_sheet_bowings});
}

const Command command_bowings = {
    .name = "bowings",
    .purpose = "for the bowing committee: parts that share a gesture, and where their slurs and bows differ",
    .operands = "SCORE...",
    .help = "Holds sections that share a gesture against each other, those that play it together (unison, octaves, thirds)\n"
            "and those that answer each other: where slurs, dots, lines, accents, bow marks, pizz. and tremolo differ, by\n"
            "bar and beat. As HTML with the notes above each other, an answer under its call. Only clear and striking\n"
            "passages unless --all or --strength says otherwise.\n",
    .options = options,
    .run = run,
};
