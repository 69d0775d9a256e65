#include "cli/commands/command_sheets.h"
#include "cli/messages.h"
#include "cli/options/score_list.h"
#include "cli/output.h"
#include <stdlib.h>
#include <string.h>

enum { DOUBTS_SHOWN = 3 };
static const double usual_strength = 0.5; /* clear, by the scale of passages.h */

static spz_status read_score(const Arguments *arguments, const spz_settings *settings, int year, const char *path, spz_reading **reading)
{
    if (is_season_table(path))
        return refuse_season_table(path);
    Voice voice = {.most_doubts = arguments_have(arguments, &option_verbose) ? 0 : DOUBTS_SHOWN, .lone_score = arguments->operand_count == 1};
    spz_sink sink = voice_sink(&voice);
    spz_status status = spz_reading_make(path, settings, year, SPZ_TO_SEATING, &sink, reading);
    if (status && !voice.errors)
        complain_status(path, status);
    voice_close(&voice, path);
    return status;
}

int readings_make(const Arguments *arguments, const spz_settings *settings, int year, Readings *readings)
{
    int result = EXIT_OK;
    *readings = (Readings){calloc(arguments->operand_count + 1, sizeof *readings->at), 0};
    if (!readings->at) {
        complain_status(NULL, SPZ_NO_MEMORY);
        return EXIT_INPUT;
    }
    for (size_t i = 0; i < arguments->operand_count; i++) {
        if (read_score(arguments, settings, year, arguments->operands[i], &readings->at[readings->count]))
            result = EXIT_INPUT;
        else
            readings->count++;
    }
    return result;
}

void readings_free(Readings *readings)
{
    for (size_t i = 0; i < readings->count; i++)
        spz_reading_free(readings->at[i]);
    free(readings->at);
    *readings = (Readings){NULL, 0};
}

bool sheets_format(const Arguments *arguments, const Option *option, const char *names, const spz_format *formats, spz_format *format)
{
    const char *value = arguments_value(arguments, option, NULL);
    size_t index = 0;
    *format = formats[0];
    if (!value)
        return true;
    for (const char *name = names; *name; index++) {
        size_t length = strcspn(name, "|");
        if (strlen(value) == length && memcmp(value, name, length) == 0) {
            *format = formats[index];
            return true;
        }
        name += length + (name[length] == '|');
    }
    complain_usage(arguments->command, "--format %s: here it is one of %s", value, names);
    return false;
}

bool sheets_operands(const Arguments *arguments)
{
    const char *path = arguments_value(arguments, &option_output, NULL);
    if (arguments->operand_count == 0) {
        complain_usage(arguments->command, "which score? Give a MusicXML file, plain or compressed");
        return false;
    }
    for (size_t i = 0; path && i < arguments->operand_count; i++)
        if (output_is(path, arguments->operands[i])) {
            complain_usage(arguments->command, "%s is one of the scores; it would be overwritten", path);
            return false;
        }
    return true;
}

bool sheets_strength(const Arguments *arguments, double *strength)
{
    bool given = arguments_value(arguments, &option_strength, NULL) != NULL;
    if (!arguments_strength(arguments, strength))
        return false;
    if (!given)
        *strength = arguments_have(arguments, &option_all) ? 0 : usual_strength;
    return true;
}

static spz_status write_sheet(const Readings *readings, const spz_settings *settings, const spz_sheet_options *sheet, spz_format format,
                              const SheetRun *wanted, const char *path, int *result)
{
    spz_document *document = NULL;
    spz_status status = wanted->sheet((const spz_reading *const *)readings->at, readings->count, settings, sheet, format, &document);
    if (!status && output_save(document, path))
        *result = EXIT_INPUT;
    spz_document_free(document);
    return status;
}

static int write_all(const Arguments *arguments, const SheetRun *wanted, const spz_settings *settings, const spz_sheet_options *sheet, spz_format format,
                     int year)
{
    Readings readings;
    int result = readings_make(arguments, settings, year, &readings);
    if (readings.count) {
        const char *path = arguments_value(arguments, &option_output, NULL);
        spz_status status = write_sheet(&readings, settings, sheet, format, wanted, path, &result);
        if (status == SPZ_BAD_ARGUMENT)
            complain_usage(arguments->command, "the house forbids the seating '%s'", sheet->arrangement);
        else if (status)
            complain_status(path, status);
        if (status)
            result = status == SPZ_BAD_ARGUMENT ? EXIT_USAGE : EXIT_INPUT;
    }
    readings_free(&readings);
    return result;
}

int sheets_run(const Arguments *arguments, const SheetRun *wanted)
{
    spz_format format;
    spz_sheet_options sheet = SPZ_SHEET_USUAL;
    spz_settings *settings = NULL;
    int year;
    char seating[SEATING_NAME_MOST];
    if (!sheets_format(arguments, wanted->form, wanted->names, wanted->formats, &format) || !arguments_year(arguments, &year) ||
        !arguments_kinds(arguments, &sheet.kinds) || !sheets_strength(arguments, &sheet.strength) || !sheets_operands(arguments))
        return EXIT_USAGE;
    int result = arguments_settings(arguments, &settings);
    if (!result && !arguments_language(arguments, settings, &sheet.language))
        result = EXIT_USAGE;
    if (!result)
        result = arguments_seating(arguments, wanted->arrangement, settings, true, seating, &sheet.arrangement);
    if (!result)
        result = write_all(arguments, wanted, settings, &sheet, format, year);
    spz_settings_free(settings);
    return result;
}
