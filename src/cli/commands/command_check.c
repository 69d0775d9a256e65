#include "cli/command.h"
#include "cli/messages.h"
#include "cli/options/score_list.h"
#include "cli/output.h"
#include "spezzato/check.h"
#include <stdlib.h>

static const Option *const options[] = {&option_language, &option_settings, &option_set, &option_format, &option_output, NULL};

typedef struct Lists {
    spz_doubts **at;
    size_t count, grave;
    spz_language language;
} Lists;

/* EXIT_OK or EXIT_INPUT. */
static int check_score(Lists *lists, const char *path, const spz_settings *settings)
{
    if (is_season_table(path))
        return refuse_season_table(path), EXIT_INPUT;
    Voice voice = {0};
    spz_sink sink = voice_sink(&voice);
    spz_status status = spz_check(path, settings, &sink, &lists->at[lists->count]);
    if (status && !voice.errors)
        complain_status(path, status);
    voice_close(&voice, path);
    if (status)
        return EXIT_INPUT;
    lists->grave += spz_doubts_grave(lists->at[lists->count++]);
    return EXIT_OK;
}

static int report(const Lists *lists, spz_format format, const char *path)
{
    spz_document *document = NULL;
    spz_status status = spz_report_doubts((const spz_doubts *const *)lists->at, lists->count, format, lists->language, &document);
    if (status == SPZ_BAD_ARGUMENT) {
        complain_usage("check", "doubts are written as text, json or csv");
        return EXIT_USAGE;
    }
    if (status)
        complain_status(path, status);
    int result = status ? EXIT_INPUT : output_save(document, path);
    spz_document_free(document);
    return result;
}

static int check_scores(const Arguments *arguments, Lists *lists, const spz_settings *settings, spz_format format)
{
    int result = EXIT_OK;
    for (size_t i = 0; i < arguments->operand_count; i++)
        if (check_score(lists, arguments->operands[i], settings) != EXIT_OK)
            result = EXIT_INPUT;
    if (lists->count > 0) { /* a report about nothing is not written */
        int written = report(lists, format, arguments_value(arguments, &option_output, NULL));
        result = written ? written : result;
    }
    return result == EXIT_OK && lists->grave > 0 ? EXIT_DOUBTS : result;
}

static bool would_overwrite(const Arguments *arguments)
{
    const char *path = arguments_value(arguments, &option_output, NULL);
    for (size_t i = 0; path && i < arguments->operand_count; i++)
        if (output_is(path, arguments->operands[i])) {
            complain_usage("check", "%s is one of the scores; the report would overwrite it", path);
            return true;
        }
    return false;
}

static int run(const Arguments *arguments)
{
    spz_format format;
    spz_settings *settings = NULL;
    Lists lists = {.at = calloc(arguments->operand_count + 1, sizeof *lists.at)};
    int result = EXIT_USAGE;
    if (!lists.at)
        complain_status(NULL, SPZ_NO_MEMORY);
    else if (arguments->operand_count == 0)
        complain_usage("check", "which score? Give a MusicXML file, plain or compressed");
    else if (arguments_format(arguments, SPZ_AS_TEXT, &format) && !would_overwrite(arguments)) {
        result = arguments_settings(arguments, &settings);
        if (result == EXIT_OK && !arguments_language(arguments, settings, &lists.language))
            result = EXIT_USAGE;
        if (result == EXIT_OK)
            result = check_scores(arguments, &lists, settings, format);
    }
    for (size_t i = 0; i < lists.count; i++)
        spz_doubts_free(lists.at[i]);
    free(lists.at);
    spz_settings_free(settings);
    return result;
}

const Command command_check = {
    .name = "check",
    .purpose = "what is doubtful in a score file, with part and bar",
    .operands = "SCORE...",
    .help = "Tells what to look at before trusting an analysis: bars that hold too much or too little, parts that end\n"
            "early, ties without an end, notes that the instrument does not have, missing tempo, parts that could not\n"
            "be named, divisions that never end, bars that are never played. Exit status 3 where there are doubts.\n",
    .options = options,
    .run = run,
};
