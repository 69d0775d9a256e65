#include "cli/run.h"
#include "cli/messages.h"
#include "cli/output.h"
#include "cli/options/one_work.h"
#include "cli/options/score_list.h"
#include <string.h>

enum { DOUBTS_SHOWN = 3 };

/* What stays the same from score to score. */
typedef struct Work {
    const Run *run;
    const spz_settings *settings;
    spz_report *report;
    spz_depth depth;
    int year;
    size_t most_doubts;
    bool lone_score;
    Verdicts *verdicts; /* NULL where no seating for all is asked for */
} Work;

/* One score into the report; it is let go at once, so that many need no more memory than one. */
static spz_status add_score(const Work *work, const char *path)
{
    if (is_season_table(path))
        return refuse_season_table(path);
    Voice voice = {.most_doubts = work->most_doubts, .lone_score = work->lone_score};
    spz_sink sink = voice_sink(&voice);
    spz_reading *reading = NULL;
    spz_status status = spz_reading_make(path, work->settings, work->year, work->depth, &sink, &reading);
    if (!status && work->run->fits && !work->run->fits(&work->run->options, reading, &sink))
        status = SPZ_BAD_ARGUMENT;
    if (!status)
        status = spz_report_add(work->report, reading);
    if (!status && work->verdicts)
        status = verdicts_take(work->verdicts, reading);
    if (status && !voice.errors)
        complain_status(path, status);
    voice_close(&voice, path);
    spz_reading_free(reading);
    return status;
}

static int add_scores(const Arguments *arguments, const Work *work, size_t *good)
{
    int status = EXIT_OK;
    *good = 0;
    for (size_t i = 0; i < arguments->operand_count; i++) {
        if (add_score(work, arguments->operands[i]))
            status = EXIT_INPUT;
        else
            ++*good;
    }
    return status;
}

static bool read_options(const Arguments *arguments, const Run *run, spz_format *format, int *year, spz_report_options *options)
{
    *options = run->options;
    options->all = options->all || arguments_have(arguments, &option_all);
    options->brief = arguments_have(arguments, &option_brief);
    options->named = arguments->operand_count > 1;
    return arguments_format(arguments, run->usual, format) && arguments_year(arguments, year) &&
           arguments_kinds(arguments, &options->kinds) && arguments_strength(arguments, &options->strength) &&
           arguments_whole(arguments, &option_width, 60, 200, &options->width);
}

static bool output_is_an_input(const Arguments *arguments, const char *path)
{
    for (size_t i = 0; path && i < arguments->operand_count; i++)
        if (output_is(path, arguments->operands[i])) {
            complain_usage(arguments->command, "%s is one of the scores; the report would overwrite it", path);
            return true;
        }
    return false;
}

static int finish(const Work *work, const char *path)
{
    spz_document *document = NULL;
    spz_status status = work->verdicts ? verdicts_judge(work->verdicts, work->settings, NULL) : SPZ_OK;
    if (!status && work->verdicts)
        spz_report_set_work(work->report, work->verdicts->work);
    if (!status)
        status = spz_report_close(work->report, &document);
    if (status)
        complain_status(path, status);
    int result = status ? EXIT_INPUT : output_save(document, path);
    spz_document_free(document);
    return result;
}

int run_report(const Arguments *arguments, const Run *run)
{
    spz_format format;
    spz_report_options options;
    /* Whoever looks at how the parts were understood wants to hear of a correction that met no part, too. */
    bool all_doubts = arguments_have(arguments, &option_verbose) || run->report == SPZ_REPORT_SECTIONS;
    Work work = {.run = run, .depth = run->depth, .most_doubts = all_doubts ? 0 : DOUBTS_SHOWN, .lone_score = arguments->operand_count == 1};
    const char *path = run->path ? run->path : arguments_value(arguments, &option_output, NULL);
    spz_settings *settings = NULL;
    Verdicts verdicts = {0};
    size_t good = 0;
    if (arguments_have(arguments, &option_work))
        work.verdicts = &verdicts;
    if (!read_options(arguments, run, &format, &work.year, &options) || output_is_an_input(arguments, path))
        return EXIT_USAGE;
    if (arguments->operand_count == 0) {
        complain_usage(arguments->command, "which score? Give a MusicXML file, plain or compressed");
        return EXIT_USAGE;
    }
    int status = arguments_settings(arguments, &settings);
    if (status)
        return status;
    if (!arguments_language(arguments, settings, &options.language)) {
        spz_settings_free(settings);
        return EXIT_USAGE;
    }
    if (run->report == SPZ_REPORT_PASSAGES) /* divisions name their desks; a page would draw a plan */
        options.settings = settings;
    options.house_rules = spz_settings_house(settings);
    spz_status opened = spz_report_open(run->report, format, &options, &work.report);
    work.settings = settings;
    if (opened) {
        complain_status(path, opened);
        status = EXIT_INPUT;
    } else
        status = add_scores(arguments, &work, &good);
    if (good > 0) { /* a report about nothing is not written */
        int written = finish(&work, path);
        status = written ? written : status;
    }
    spz_report_free(work.report);
    verdicts_free(&verdicts);
    spz_settings_free(settings);
    return status;
}
