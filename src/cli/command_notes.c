#include "messages.h"
#include "output.h"
#include "command_sheets.h"
#include <stdlib.h>
#include <string.h>

static const Option option_form = {"format", 0, "FORM", "text, markdown or csv"};
static const Option option_lasts = {"lasts", 0, "TIME", "how long the movement lasts, such as 7:10; for several movements\n"
                                                        "                              once each, in their order"};
static const Option option_most = {"most", 0, "NUMBER", "passages cited of each movement at most; 6 when not given"};
static const Option *const options[] = {&option_language, &option_lasts,  &option_most, &option_all,    &option_strength, &option_year,
                                        &option_settings, &option_set,    &option_form, &option_output, &option_verbose,  NULL};

enum { MOVEMENTS_MOST = 64 };

static bool read_lasts(const Arguments *arguments, double *lasts, size_t *count)
{
    const char *text;
    for (*count = 0; (text = arguments_each(arguments, &option_lasts, *count)) != NULL; ++*count) {
        double seconds = spz_seconds_from_text(text);
        if (*count == MOVEMENTS_MOST || seconds <= 0) {
            complain_usage(arguments->command, *count == MOVEMENTS_MOST ? "--lasts %s: too many movements" : "--lasts %s: it is minutes and seconds, such as 7:10", text);
            return false;
        }
        lasts[*count] = seconds;
    }
    return true;
}

static int write_notes(const Arguments *arguments, const Readings *readings, const spz_note_options *notes, spz_format format)
{
    const char *path = arguments_value(arguments, &option_output, NULL);
    spz_document *document = NULL;
    spz_status status = spz_sheet_notes((const spz_reading *const *)readings->at, readings->count, notes, format, &document);
    if (status)
        complain_status(path, status);
    int result = status ? EXIT_INPUT : output_save(document, path);
    spz_document_free(document);
    return result;
}

static int run(const Arguments *arguments)
{
    static const spz_format formats[] = {SPZ_AS_TEXT, SPZ_AS_MARKDOWN, SPZ_AS_CSV};
    double lasts[MOVEMENTS_MOST];
    spz_note_options notes = SPZ_NOTES_USUAL;
    spz_format format;
    spz_settings *settings = NULL;
    Readings readings;
    int year, most = arguments_have(arguments, &option_all) ? 0 : (int)notes.citations;
    notes.lasts = lasts;
    if (!sheets_format(arguments, &option_form, "text|markdown|csv", formats, &format) ||
        !read_lasts(arguments, lasts, &notes.lasts_count) || !arguments_whole(arguments, &option_most, 1, 1000, &most) ||
        !arguments_year(arguments, &year) || !sheets_strength(arguments, &notes.strength) || !sheets_operands(arguments))
        return EXIT_USAGE;
    notes.citations = (size_t)most;
    int result = arguments_settings(arguments, &settings);
    if (!result && !arguments_language(arguments, settings, &notes.language))
        result = EXIT_USAGE;
    if (result) {
        spz_settings_free(settings);
        return result;
    }
    result = readings_make(arguments, settings, year, &readings);
    if (readings.count) {
        int written = write_notes(arguments, &readings, &notes, format);
        result = written ? written : result;
    }
    readings_free(&readings);
    spz_settings_free(settings);
    return result;
}

const Command command_notes = {
    .name = "notes",
    .purpose = "for the programme-note writer: the passages most worth citing",
    .operands = "SCORE...",
    .help = "Writes for each movement a short paragraph and the passages most worth citing, chosen for strength and\n"
            "variety: bars, rehearsal letter, the time at which each sounds (repeats counted; by the tempo marks, or in\n"
            "a performance as long as --lasts says) and one sentence about what to listen for.\n",
    .options = options,
    .run = run,
};
