#include "cli/messages.h"
#include "cli/output.h"
#include "cli/commands/command_sheets.h"
#include <stdio.h>
#include <string.h>
#include <strings.h>

static const Option option_unmark = {"unmark", 0, NULL, "take the marks out again"};
static const Option option_into = {"output", 'o', "FILE", "the marked score: compressed where FILE ends in .mxl; needed"};
static const Option option_arrangement = {"arrangement", 0, "NAME", "the seating to mark for, by its name; else the one recommended"};
static const Option *const options[] = {&option_into, &option_unmark,   &option_all, &option_kind,    &option_strength,
                                        &option_arrangement, &option_year, &option_language, &option_settings, &option_set, &option_verbose, NULL};

static bool ends_in_mxl(const char *path)
{
    size_t length = strlen(path);
    return length > 4 && strcasecmp(path + length - 4, ".mxl") == 0;
}

static bool is_score_name(const char *name)
{
    const char *ending = strrchr(name, '.');
    return ending && (ends_in_mxl(name) || strcasecmp(ending, ".musicxml") == 0 || strcasecmp(ending, ".xml") == 0);
}

/* One score in, one file out, and they aren't the same. */
static bool read_names(const Arguments *arguments, const char **path, const char **into)
{
    *path = arguments->operand_count ? arguments->operands[0] : NULL;
    *into = arguments_value(arguments, &option_into, NULL);
    if (arguments->operand_count != 1)
        complain_usage(arguments->command, "it takes one score at a time");
    else if (!*into)
        complain_usage(arguments->command, "where to? Give -o FILE; the score itself is never overwritten");
    else if (strcmp(*into, "-") != 0 && !is_score_name(*into))
        complain_usage(arguments->command, "%s: a score is written as .mxl (compressed), .musicxml or .xml", *into);
    else if (output_is(*into, *path))
        complain_usage(arguments->command, "%s is the score itself, which is never overwritten", *into);
    else
        return true;
    return false;
}

static spz_status change(const Arguments *arguments, const char *path, const char *into, const spz_settings *settings,
                         const spz_sheet_options *sheet, spz_document **document, size_t *marks)
{
    Voice voice = {.most_doubts = arguments_have(arguments, &option_verbose) ? 0 : 3};
    spz_sink sink = voice_sink(&voice);
    bool compressed = ends_in_mxl(into);
    spz_status status = arguments_have(arguments, &option_unmark)
                            ? spz_score_unmark(path, compressed, &sink, document, marks)
                            : spz_score_mark(path, settings, sheet, compressed, &sink, document, marks);
    if (status && !voice.errors)
        complain_status(path, status);
    voice_close(&voice, path);
    return status;
}

static int run(const Arguments *arguments)
{
    const char *path, *into;
    spz_sheet_options sheet = SPZ_SHEET_USUAL;
    spz_settings *settings = NULL;
    spz_document *document = NULL;
    size_t marks = 0;
    bool unmark = arguments_have(arguments, &option_unmark);
    char seating[SEATING_NAME_MOST];
    if (!read_names(arguments, &path, &into) || !arguments_kinds(arguments, &sheet.kinds) ||
        !sheets_strength(arguments, &sheet.strength) || !arguments_year(arguments, &sheet.year))
        return EXIT_USAGE;
    int result = arguments_settings(arguments, &settings);
    if (!result && !arguments_language(arguments, settings, &sheet.language))
        result = EXIT_USAGE;
    if (!result)
        result = arguments_seating(arguments, &option_arrangement, settings, true, seating, &sheet.arrangement);
    if (result) {
        spz_settings_free(settings);
        return result;
    }
    spz_status status = change(arguments, path, into, settings, &sheet, &document, &marks);
    if (status)
        result = status == SPZ_BAD_ARGUMENT ? EXIT_USAGE : EXIT_INPUT;
    else
        result = output_save(document, into);
    if (result == EXIT_OK && strcmp(into, "-") != 0)
        printf("%s: %zu %s %s\n", into, marks, marks == 1 ? "mark" : "marks", unmark ? "taken out" : "added");
    spz_document_free(document);
    spz_settings_free(settings);
    return result;
}

const Command command_mark = {
    .name = "mark",
    .purpose = "for the librarian: the score with these marks put in, or taken out again",
    .operands = "SCORE",
    .help = "Writes the same score with what `spezzato parts` lists put in as words, brackets and dashed lines over the\n"
            "string staves. Everything else stays as it was, byte for byte; marks of an earlier run are replaced. With\n"
            "--unmark the marks are taken out, which gives back the score as it was before.\n",
    .options = options,
    .run = run,
};
