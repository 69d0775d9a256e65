#include "cli/commands/command_sheets.h"

static const Option option_form = {"format", 0, "FORM", "text, json, csv or html (one file for paper, A4 or Letter)"};
static const Option option_arrangement = {"arrangement", 0, "NAME", "the seating to write for, by its name; else the one recommended"};
static const Option *const options[] = {&option_all,      &option_kind,   &option_strength, &option_arrangement,      &option_year,
                                        &option_language, &option_settings, &option_set,    &option_form,   &option_output,       &option_verbose, NULL};

static int run(const Arguments *arguments)
{
    static const spz_format formats[] = {SPZ_AS_TEXT, SPZ_AS_JSON, SPZ_AS_CSV, SPZ_AS_HTML};
    return sheets_run(arguments, &(SheetRun){&option_form, &option_arrangement, "text|json|csv|html", formats, spz_sheet_parts});
}

const Command command_parts = {
    .name = "parts",
    .purpose = "for the librarian: what to write into each string part",
    .operands = "SCORE...",
    .help = "Lists for each string part, in bar order, what to write into it: who leads and who answers, div. with the\n"
            "line of each desk, unis., with whom the part moves and whether across the stage; by bar and beat, with\n"
            "rehearsal letter, and where a bar is played more than once, which time is meant. Only clear and striking\n"
            "passages unless --all or --strength says otherwise. How sections are divided is the house's, by [divisi] of\n"
            "its settings; divisions that take more players than there are, and pages that are turned in a division,\n"
            "are told.\n",
    .options = options,
    .run = run,
};
