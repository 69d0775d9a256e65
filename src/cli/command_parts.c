#include "messages.h"
#include "output.h"
#include "command_sheets.h"

static const Option option_form = {"format", 0, "FORM", "text, csv or html (one file for paper, A4 or Letter)"};
static const Option option_arrangement = {"arrangement", 0, "NAME", "the seating to write for, by its name; else the one recommended"};
static const Option *const options[] = {&option_all,      &option_kind,   &option_strength, &option_arrangement,      &option_year,
                                        &option_language, &option_settings, &option_set,    &option_form,   &option_output,       &option_verbose, NULL};

static spz_status write_sheet(const Readings *readings, const spz_settings *settings, const spz_sheet_options *sheet, spz_format format,
                              const char *path, int *result)
{
    spz_document *document = NULL;
    spz_status status = spz_sheet_parts((const spz_reading *const *)readings->at, readings->count, settings, sheet, format, &document);
    if (!status && output_save(document, path))
        *result = EXIT_INPUT;
    spz_document_free(document);
    return status;
}

static int run(const Arguments *arguments)
{
    static const spz_format formats[] = {SPZ_AS_TEXT, SPZ_AS_CSV, SPZ_AS_HTML};
    spz_format format;
    spz_sheet_options sheet = SPZ_SHEET_USUAL;
    spz_settings *settings = NULL;
    Readings readings;
    int year;
    sheet.arrangement = arguments_value(arguments, &option_arrangement, NULL);
    if (!sheets_format(arguments, &option_form, "text|csv|html", formats, &format) || !arguments_year(arguments, &year) ||
        !arguments_kinds(arguments, &sheet.kinds) || !sheets_strength(arguments, &sheet.strength) || !sheets_operands(arguments))
        return EXIT_USAGE;
    int result = arguments_settings(arguments, &settings);
    if (!result && !arguments_language(arguments, settings, &sheet.language))
        result = EXIT_USAGE;
    if (result) {
        spz_settings_free(settings);
        return result;
    }
    result = readings_make(arguments, settings, year, &readings);
    if (readings.count) {
        const char *path = arguments_value(arguments, &option_output, NULL);
        spz_status status = write_sheet(&readings, settings, &sheet, format, path, &result);
        if (status == SPZ_BAD_ARGUMENT)
            complain_usage(arguments->command, "there is no seating '%s'; `spezzato seating SCORE` names them", sheet.arrangement);
        else if (status)
            complain_status(path, status);
        if (status)
            result = status == SPZ_BAD_ARGUMENT ? EXIT_USAGE : EXIT_INPUT;
    }
    readings_free(&readings);
    spz_settings_free(settings);
    return result;
}

const Command command_parts = {
    .name = "parts",
    .purpose = "for the librarian: what to write into each string part",
    .operands = "SCORE...",
    .help = "Lists for each string part, in bar order, what to write into it: who leads and who answers, div. with the\n"
            "line of each desk, unis., with whom the part moves and whether across the stage; by bar and beat, with\n"
            "rehearsal letter, and where a bar is played more than once, which time is meant. Only clear and striking\n"
            "passages unless --all or --strength says otherwise.\n",
    .options = options,
    .run = run,
};
