#include "cli/commands/command_sheets.h"

static const Option option_form = {"format", 0, "FORM", "text, html (one file for paper, A4 or Letter), csv or json"};
static const Option option_arrangement = {"arrangement", 0, "NAME", "the seating that is rehearsed, by its name; else the one recommended"};
static const Option *const options[] = {&option_all,      &option_kind,     &option_strength, &option_arrangement, &option_year, &option_language,
                                        &option_settings, &option_set,      &option_form,     &option_output,      &option_verbose, NULL};

static int run(const Arguments *arguments)
{
    static const spz_format formats[] = {SPZ_AS_TEXT, SPZ_AS_HTML, SPZ_AS_CSV, SPZ_AS_JSON};
    return sheets_run(arguments, &(SheetRun){&option_form, &option_arrangement, "text|html|csv|json", formats, spz_sheet_rehearsal});
}

const Command command_rehearsal = {
    .name = "rehearsal",
    .purpose = "for the rehearsal: which passages with which sections called, how long, what to listen for",
    .operands = "SCORE...",
    .help = "Lists what to rehearse by the sections that have to be called for it, the longest and most exposed passages\n"
            "first: bars, rehearsal letter, how long they last at the tempo in force, who enters in which bar, and what to\n"
            "listen for from where. Only clear and striking passages unless --all or --strength says otherwise.\n",
    .options = options,
    .run = run,
};
