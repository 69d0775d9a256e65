#include "cli/command.h"
#include "cli/interrupts.h"
#include "cli/places/library_place.h"
#include "cli/messages.h"
#include "cli/output.h"
#include "cli/progress.h"
#include "spezzato/season.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { DOUBTS_SHOWN = 10, JOBS_MOST = 64, SHARES_MOST = 1000000, CONCERTS_MOST = 1000000 };

static const Option option_season_format = {"format", 0, "FORM", "text, json, csv (for the stage manager), html (for paper), calendar,\n"
                                                                 "                              calendar-csv, ics (for a calendar program), or ndjson (one line a movement,\n                              see --lines)"};
static const Option option_sheet = {"sheet", 0, "NUMBER|NAME", "a number: only the change sheet of the concert of that number in the plan, as text\n                              or html; a name: which sheet of a spreadsheet file is the plan (else the first);\n                              name:2027 for one whose name is a number"};
static const Option option_jobs = {"jobs", 'j', "N", "scores read at a time, 1 to 64; the result is the same"};
static const Option option_no_cache = {"no-cache", 0, NULL, "read every score anew, keep no results in the library"};
static const Option option_scores = {"scores", 0, "library", "rows without a score take it from the library by the work's name"};
static const Option option_lines = {"lines", 0, "FILE", "take results from lines that --format ndjson wrote; may be repeated; - is\n"
                                                         "                              standard input"};
static const Option option_share = {"share", 0, "K/N", "with --format ndjson: only the Kth of N shares of the scores"};

static const Option option_dates = {"dates", 0, "ORDER", "day-first or month-first: how 3/4/2027 is meant, where no other date shows it"};

static const Option *const options[] = {&option_season_format, &option_sheet,  &option_jobs,   &option_library, &option_no_cache, &option_scores, &option_lines, &option_share, &option_dates, &option_width,
                                        &option_language, &option_settings,      &option_set,    &option_output, &option_verbose,  NULL};

typedef enum Form { FORM_TEXT, FORM_JSON, FORM_CSV, FORM_HTML, FORM_CALENDAR, FORM_CALENDAR_CSV, FORM_ICS, FORM_LINES, FORM_COUNT } Form;

typedef struct Wish {
    const Arguments *arguments;
    Form form;
    int sheet; /* 0: not asked for */
    spz_season_look look;
    spz_season_options season;
    const char **lines;
    char library[LIBRARY_PATH_MOST];
} Wish;

static bool read_form(Wish *wish)
{
    static const char *const names[FORM_COUNT] = {"text", "json", "csv", "html", "calendar", "calendar-csv", "ics", "ndjson"};
    const char *value = arguments_value(wish->arguments, &option_season_format, "text");
    for (int i = 0; i < FORM_COUNT; i++)
        if (strcmp(value, names[i]) == 0) {
            wish->form = (Form)i;
            return true;
        }
    complain_usage("season", "--format %s: it is text, json, csv, html, calendar, calendar-csv, ics or ndjson", value);
    return false;
}

static bool read_share(Wish *wish)
{
    const char *value = arguments_value(wish->arguments, &option_share, NULL);
    char rest;
    if (!value)
        return true;
    if (strspn(value, "0123456789/") != strlen(value) || strlen(value) > 15 ||
        sscanf(value, "%d/%d%c", &wish->season.share, &wish->season.shares, &rest) != 2 || wish->season.share < 1 ||
        wish->season.share > wish->season.shares || wish->season.shares > SHARES_MOST) {
        complain_usage("season", "--share %s: it is K/N, such as 3/8 for the third of eight shares", value);
        return false;
    }
    return true;
}

static bool read_dates(Wish *wish)
{
    const char *value = arguments_value(wish->arguments, &option_dates, NULL);
    if (value && strcmp(value, "day-first") != 0 && strcmp(value, "month-first") != 0) {
        complain_usage("season", "--dates %s: it is day-first or month-first", value);
        return false;
    }
    if (value)
        wish->season.dates = *value == 'd' ? SPZ_DATES_DAY_FIRST : SPZ_DATES_MONTH_FIRST;
    return true;
}

/* When the document is written; SOURCE_DATE_EPOCH (reproducible-builds.org) where it has to be the same again. */
static long long time_of_writing(void)
{
    const char *given = getenv("SOURCE_DATE_EPOCH");
    return given && *given && strspn(given, "0123456789") == strlen(given) && strlen(given) < 12 ? atoll(given) : (long long)time(NULL);
}

/* A number asks for a change sheet, a name tells the sheet of a spreadsheet; both may be given. */
static bool read_sheets(Wish *wish)
{
    const char *value;
    for (size_t i = 0; (value = arguments_each(wish->arguments, &option_sheet, i)) != NULL; i++) {
        static const char named[] = "name:"; /* a sheet whose name is a number */
        bool by_name = strncmp(value, named, strlen(named)) == 0;
        if (by_name || !*value || value[strspn(value, "0123456789")]) {
            wish->season.sheet = value + (by_name ? strlen(named) : 0);
            continue;
        }
        long number = strlen(value) < 8 ? strtol(value, NULL, 10) : 0;
        if (number < 1 || number > CONCERTS_MOST) {
            complain_usage("season", "--sheet %s: concerts are counted from 1 to %d", value, CONCERTS_MOST);
            return false;
        }
        wish->sheet = (int)number;
    }
    if (wish->sheet && wish->form != FORM_TEXT && wish->form != FORM_HTML) {
        complain_usage("season", "--sheet is written as text or html");
        return false;
    }
    return true;
}

static bool read_lines(Wish *wish)
{
    wish->lines = calloc(wish->arguments->given_count + 1, sizeof *wish->lines);
    if (!wish->lines) {
        complain_status(NULL, SPZ_NO_MEMORY);
        return false;
    }
    const char *file;
    while ((file = arguments_each(wish->arguments, &option_lines, wish->season.line_files)) != NULL)
        wish->lines[wish->season.line_files++] = file;
    wish->season.lines = wish->lines;
    return true;
}

static bool read_wish(const Arguments *arguments, Wish *wish)
{
    *wish = (Wish){.arguments = arguments, .season = {.jobs = 1}, .look = {.stamp = time_of_writing()}};
    if (!read_form(wish) || !read_share(wish) || !read_sheets(wish) || !read_dates(wish) || !arguments_whole(arguments, &option_jobs, 1, JOBS_MOST, &wish->season.jobs) ||
        !arguments_whole(arguments, &option_width, 60, 200, &wish->look.width))
        return false;
    if (arguments->operand_count != 1) {
        complain_usage("season", arguments->operand_count ? "one plan at a time" : "which plan? Give a table (CSV, .ods or .xlsx) of concerts and works");
        return false;
    }
    const char *output = arguments_value(arguments, &option_output, NULL);
    if (output && output_is(output, arguments->operands[0])) {
        complain_usage("season", "%s is the plan itself; the result would overwrite it", output);
        return false;
    }
    if (library_place(arguments, wish->library))
        wish->season.library = wish->library;
    wish->season.anew = arguments_have(arguments, &option_no_cache);
    const char *scores = arguments_value(arguments, &option_scores, NULL);
    wish->season.named = scores != NULL;
    if (scores && strcmp(scores, "library") != 0) {
        complain_usage("season", "--scores %s: it is library", scores);
        return false;
    }
    return read_lines(wish);
}

static spz_status write_season(const Wish *wish, const spz_season *season, spz_document **document)
{
    static const spz_format formats[] = {[FORM_TEXT] = SPZ_AS_TEXT, [FORM_JSON] = SPZ_AS_JSON, [FORM_CSV] = SPZ_AS_CSV, [FORM_HTML] = SPZ_AS_HTML,
                                         [FORM_CALENDAR] = SPZ_AS_TEXT, [FORM_CALENDAR_CSV] = SPZ_AS_CSV, [FORM_ICS] = SPZ_AS_ICS};
    if (wish->sheet)
        return spz_report_changes(season, (size_t)wish->sheet - 1, formats[wish->form], &wish->look, document);
    if (wish->form == FORM_CALENDAR || wish->form == FORM_CALENDAR_CSV || wish->form == FORM_ICS)
        return spz_report_calendar(season, formats[wish->form], &wish->look, document);
    return spz_report_season(season, formats[wish->form], &wish->look, document);
}

static spz_status make_document(const Wish *wish, const char *path, const spz_sink *sink, spz_document **document)
{
    spz_season *season = NULL;
    if (wish->form == FORM_LINES)
        return spz_season_lines(path, &wish->season, sink, document);
    spz_status status = spz_season_plan(path, &wish->season, sink, &season);
    if (status == SPZ_OK)
        status = write_season(wish, season, document);
    spz_season_free(season);
    return status;
}

static int finish(const Wish *wish, spz_status status, const spz_document *document, const Voice *voice)
{
    if (status == SPZ_BAD_ARGUMENT && wish->sheet) {
        complain_usage("season", "--sheet %d: the plan has no concert of that number", wish->sheet);
        return EXIT_USAGE;
    }
    if (status == SPZ_INTERRUPTED) {
        fprintf(stderr, "spezzato: stopped before the end%s\n", wish->season.library && !wish->season.anew ? "; the scores already read are kept, the next run goes on from there" : "");
        return EXIT_INPUT;
    }
    if (status != SPZ_OK) {
        if (!voice->errors)
            complain_status(wish->arguments->operands[0], status);
        return EXIT_INPUT;
    }
    int written = output_save(document, arguments_value(wish->arguments, &option_output, NULL));
    return written || !voice->errors ? written : EXIT_INPUT; /* written all the same, with what could be used */
}

static int plan_season(Wish *wish, spz_settings *settings)
{
    Voice voice = {.most_doubts = arguments_have(wish->arguments, &option_verbose) ? 0 : DOUBTS_SHOWN};
    spz_sink sink = voice_sink(&voice);
    spz_document *document = NULL;
    Progress progress;
    progress_begin(&progress);
    wish->season.settings = settings;
    wish->season.progress = progress_show;
    wish->season.context = &progress;
    wish->season.stop = interrupts_came;
    interrupts_hear();
    spz_status status = make_document(wish, wish->arguments->operands[0], &sink, &document);
    progress_end(&progress);
    interrupts_leave();
    int result = finish(wish, status, document, &voice);
    voice_close(&voice, wish->arguments->operands[0]);
    spz_document_free(document);
    return result;
}

static int run(const Arguments *arguments)
{
    Wish wish;
    spz_settings *settings = NULL;
    int status = EXIT_USAGE;
    if (read_wish(arguments, &wish))
        status = arguments_settings(arguments, &settings);
    if (status == EXIT_OK && !arguments_language(arguments, settings, &wish.look.language))
        status = EXIT_USAGE;
    if (status == EXIT_OK)
        status = plan_season(&wish, settings);
    spz_settings_free(settings);
    free(wish.lines);
    return status;
}

const Command command_season = {
    .name = "season",
    .purpose = "a seating for every work of every concert, the changes between them, from one table",
    .operands = "PLAN",
    .help = "Reads a table (CSV, .ods or .xlsx) with one row a work and plans every concert: which seating for each work,\n"
            "where it changes, how long that takes and what moves, what is given up, and what else could be done. Columns, in any\n"
            "order: concert, date, time, hall, order, work, score (a file, several with | between, a folder, or 'library'),\n"
            "composed, interval after (yes), fixed seating, rehearsals, soloist, piano, podium, note. Scores and\n"
            "halls/HALL.ini are looked for beside the table. What can't be used is named with its line and listed at the\n"
            "end; the works are planned without it, and the exit status is then 2.\n",
    .options = options,
    .run = run,
};
