#include "cli/command.h"
#include "cli/interrupts.h"
#include "cli/options/library_conditions.h"
#include "cli/places/library_place.h"
#include "cli/messages.h"
#include "cli/output.h"
#include "cli/progress.h"
#include <stdio.h>
#include <string.h>

enum { DOUBTS_SHOWN = 10, JOBS_MOST = 64, PASSAGES_SHOWN = 5, FIRST_SHOWN = 20, FOUND_SHOWN = 100, FIRST_MOST = 1000000 };

static const Option option_library_format = {"format", 0, "FORM", "text, csv, json, or html: a table to be sorted and filtered in a browser"};
static const Option option_jobs = {"jobs", 'j', "N", "add: scores read at a time, 1 to 64"};
static const Option option_passages = {"passages", 0, "N", "passages listed of a movement, 0 to 1000; 5 when not given"};

static const Option option_seating = {"seating", 0, "NAME", "fits: the seating of the evening, or words of it: 'violins opposed', 'cellos outside'"};
static const Option option_with = {"with", 0, "WORK", "fits: beside this work, in the seating in which it loses least"};
static const Option option_bar = {"bar", 0, "NUMBER", "alike: the bar of the passage, as printed"};
static const Option option_first = {"first", 0, "N", "works listed at most: of fits and partners the best, 20 when not given; of find and alike 100 as text, else all"};

static const Option *const options[] = {&option_library, &option_jobs, &option_year, &option_kind, &option_between, &option_at, &option_strength, &option_composer, &option_titled,
                                        &option_from, &option_before, &option_lasts, &option_players, &option_too_large, &option_two_orchestras,
                                        &option_thirds, &option_recommended, &option_seating, &option_with, &option_bar, &option_first, &option_passages, &option_library_format, &option_width, &option_language, &option_settings, &option_set,
                                        &option_output, &option_verbose, NULL};

typedef struct Asked {
    const Arguments *arguments;
    const char *const *names; /* behind the action */
    size_t count;
    spz_settings *settings;
    spz_library *library;
    spz_sink sink;
    Voice voice;
    spz_season_look look;
    spz_format format;
    int passages;
    char recommended[1024]; /* the seatings that --recommended means */
} Asked;

static int done(const Asked *asked, spz_status status)
{
    if (status == SPZ_OK)
        return asked->voice.errors ? EXIT_INPUT : EXIT_OK;
    if (status == SPZ_INTERRUPTED)
        fprintf(stderr, "spezzato: stopped before the end; the scores already heard are kept, the next run goes on from there\n");
    else if (!asked->voice.errors)
        complain_status(NULL, status);
    return EXIT_INPUT;
}

static const char *plural(size_t count)
{
    return count == 1 ? "" : "s";
}

static int add(Asked *asked)
{
    spz_added added = {0};
    spz_adding how = {.settings = asked->settings, .jobs = 1, .progress = progress_show, .stop = interrupts_came};
    Progress progress;
    if (!arguments_whole(asked->arguments, &option_jobs, 1, JOBS_MOST, &how.jobs) || !arguments_year(asked->arguments, &how.year))
        return EXIT_USAGE;
    progress_begin(&progress);
    how.context = &progress;
    interrupts_hear();
    spz_status status = spz_library_add(asked->library, asked->names, asked->count, &how, &asked->sink, &added);
    interrupts_leave();
    progress_end(&progress);
    printf("%zu score%s: %zu heard (%zu movement%s, %zu bar%s), %zu known already, %zu can't be used\n", added.files, plural(added.files), added.heard,
           added.movements, plural(added.movements), added.bars, plural(added.bars), added.unchanged, added.unusable);
    return done(asked, status);
}

/* `shelf`: where the call beside it put the answer. */
static int write_shelf(Asked *asked, spz_status status, spz_shelf **answer)
{
    spz_shelf *shelf = *answer;
    spz_document *document = NULL;
    if (status == SPZ_OK)
        status = spz_report_shelf(shelf, asked->format, &asked->look, &document);
    int result = done(asked, status);
    if (status == SPZ_OK)
        result = output_save(document, arguments_value(asked->arguments, &option_output, NULL));
    spz_document_free(document);
    spz_shelf_free(shelf);
    return result;
}

/* How many of the works that are found are listed: as text as many as one may want to read. */
static bool read_most(const Asked *asked, size_t *most)
{
    int first = asked->format == SPZ_AS_TEXT ? FOUND_SHOWN : 0;
    bool whole = arguments_whole(asked->arguments, &option_first, 1, FIRST_MOST, &first);
    *most = (size_t)first;
    return whole;
}

static bool seatings_meant(const Asked *asked, const char *words, char *out, size_t size)
{
    spz_status status = spz_library_seatings_meant(asked->library, words, out, size);
    if (status && !asked->voice.errors)
        complain_status(words, status);
    return status == SPZ_OK;
}

/* False after one line about what is wrong. */
static bool read_conditions(Asked *asked, spz_conditions *conditions)
{
    if (!library_conditions(asked->arguments, asked->settings, conditions))
        return false;
    if (conditions->seating && !seatings_meant(asked, conditions->seating, asked->recommended, sizeof asked->recommended))
        return false;
    if (conditions->seating)
        conditions->seating = asked->recommended;
    return true;
}

static int find(Asked *asked)
{
    spz_conditions conditions;
    spz_shelf *shelf = NULL;
    if (!read_conditions(asked, &conditions) || !read_most(asked, &conditions.first))
        return EXIT_USAGE;
    spz_status status = spz_library_find(asked->library, &conditions, (size_t)asked->passages, &shelf);
    return write_shelf(asked, status, &shelf);
}

static int not_there(const char *name)
{
    fprintf(stderr, "spezzato: %s: no work of that name is in the library\n", name);
    return EXIT_INPUT;
}

static int show(Asked *asked)
{
    spz_shelf *shelf = NULL;
    spz_status status = spz_library_show(asked->library, asked->names[0], (size_t)asked->passages, &shelf);
    if (status == SPZ_OK && spz_shelf_count(shelf) == 0) {
        spz_shelf_free(shelf);
        return not_there(asked->names[0]);
    }
    return write_shelf(asked, status, &shelf);
}

static bool read_first(Asked *asked, spz_conditions *conditions, int *first)
{
    *first = FIRST_SHOWN;
    return arguments_whole(asked->arguments, &option_first, 1, FIRST_MOST, first) && read_conditions(asked, conditions);
}

static int several(const char *name, size_t count)
{
    fprintf(stderr, count ? "spezzato: %s: the library has %zu works of that name; say which\n" : "spezzato: %s: the library has several of that name; say which\n", name, count);
    return EXIT_INPUT;
}

/* 0, or a work's name that isn't one work's: none, or several. */
static int one_work(Asked *asked, const char *name)
{
    spz_shelf *shelf = NULL;
    spz_status status = name ? spz_library_show(asked->library, name, 0, &shelf) : SPZ_OK;
    size_t count = shelf ? spz_shelf_count(shelf) : 0;
    spz_shelf_free(shelf);
    if (status != SPZ_OK)
        return done(asked, status);
    if (!name || count == 1)
        return EXIT_OK;
    if (count == 0)
        return not_there(name);
    return several(name, count);
}

static int fits(Asked *asked)
{
    spz_conditions conditions;
    spz_shelf *shelf = NULL;
    spz_evening evening = {arguments_value(asked->arguments, &option_seating, NULL), arguments_value(asked->arguments, &option_with, NULL)};
    char meant[sizeof asked->recommended];
    int first;
    if (!evening.seating && !evening.with) {
        complain_usage("library", "fits what? Give the evening's --seating, or a work with --with");
        return EXIT_USAGE;
    }
    if (!read_first(asked, &conditions, &first) || (evening.seating && !seatings_meant(asked, evening.seating, meant, sizeof meant)))
        return EXIT_USAGE;
    int result = one_work(asked, evening.with);
    return result ? result : write_shelf(asked, spz_library_fits(asked->library, &evening, &conditions, (size_t)first, &shelf), &shelf);
}

static int partners(Asked *asked)
{
    spz_conditions conditions;
    spz_shelf *shelf = NULL;
    int first;
    if (!read_first(asked, &conditions, &first))
        return EXIT_USAGE;
    int result = one_work(asked, asked->names[0]);
    return result ? result : write_shelf(asked, spz_library_partners(asked->library, asked->names[0], &conditions, (size_t)first, &shelf), &shelf);
}

static int alike(Asked *asked)
{
    spz_shelf *shelf = NULL;
    const char *bar = arguments_value(asked->arguments, &option_bar, NULL);
    if (!bar) {
        complain_usage("library", "alike to which passage? Give its bar with --bar");
        return EXIT_USAGE;
    }
    size_t most;
    if (!read_most(asked, &most))
        return EXIT_USAGE;
    spz_status status = spz_library_alike(asked->library, asked->names[0], bar, most, (size_t)asked->passages, &shelf);
    if (status == SPZ_EMPTY)
        return not_there(asked->names[0]);
    return status == SPZ_BAD_ARGUMENT ? several(asked->names[0], 0) : write_shelf(asked, status, &shelf);
}

static int forget(Asked *asked)
{
    int result = EXIT_OK;
    for (size_t i = 0; i < asked->count; i++) {
        size_t forgotten = 0;
        spz_status status = spz_library_forget(asked->library, asked->names[i], &forgotten);
        int one = status != SPZ_OK ? done(asked, status) : forgotten == 0 ? not_there(asked->names[i]) : EXIT_OK;
        if (one == EXIT_OK)
            printf("%s: %zu %s taken out\n", asked->names[i], forgotten, forgotten == 1 ? "score" : "scores");
        result = one ? one : result;
    }
    return result;
}

static int check(Asked *asked)
{
    spz_library_state state;
    spz_status status = spz_library_check(asked->library, asked->settings, &asked->sink, &state);
    if (status != SPZ_OK)
        return done(asked, status);
    printf("%zu works, %zu movements, %zu passages, from %zu files\n", state.works, state.movements, state.passages, state.files);
    printf("%zu files missing, %zu changed, %zu heard under other settings or by another edition, %zu that can't be used\n", state.missing, state.changed, state.outdated,
           state.unusable);
    if (state.faults)
        return EXIT_INPUT;
    return state.missing || state.changed || state.outdated ? EXIT_DOUBTS : EXIT_OK;
}

typedef struct Action {
    const char *name;
    spz_library_use use;
    size_t least, most; /* names behind it */
    const char *wants;
    int (*run)(Asked *asked);
} Action;

static const Action actions[] = {
    {"add", SPZ_LIBRARY_CHANGE, 1, (size_t)-1, "which scores? Give files or folders", add},
    {"find", SPZ_LIBRARY_ASK, 0, 0, "find takes conditions, no names", find},
    {"show", SPZ_LIBRARY_ASK, 1, 1, "which work? Give its name", show},
    {"fits", SPZ_LIBRARY_ASK, 0, 0, "fits takes no names but --seating and --with", fits},
    {"partners", SPZ_LIBRARY_ASK, 1, 1, "partners of which work? Give its name", partners},
    {"alike", SPZ_LIBRARY_ASK, 1, 1, "alike to which passage? Give the work's name and --bar", alike},
    {"forget", SPZ_LIBRARY_CHANGE, 1, (size_t)-1, "which scores? Give files, folders or names of works", forget},
    {"check", SPZ_LIBRARY_ASK, 0, 0, "check takes no names", check},
};

static const Action *read_action(const Arguments *arguments)
{
    const char *name = arguments->operand_count ? arguments->operands[0] : "";
    for (size_t i = 0; i < sizeof actions / sizeof *actions; i++) {
        if (strcmp(actions[i].name, name) != 0)
            continue;
        size_t count = arguments->operand_count - 1;
        if (count >= actions[i].least && count <= actions[i].most)
            return &actions[i];
        complain_usage("library", "%s", actions[i].wants);
        return NULL;
    }
    complain_usage("library", *name ? "there is no 'library %s'; there are add, find, show, fits, partners, alike, forget and check" : "what shall it do%s? add, find, show, fits, partners, alike, forget or check", name);
    return NULL;
}

static bool read_looks(Asked *asked)
{
    static const struct { const char *name; spz_format format; } forms[] = {{"text", SPZ_AS_TEXT}, {"csv", SPZ_AS_CSV}, {"json", SPZ_AS_JSON}, {"html", SPZ_AS_HTML}};
    const char *value = arguments_value(asked->arguments, &option_library_format, "text");
    asked->passages = PASSAGES_SHOWN;
    if (!arguments_whole(asked->arguments, &option_width, 60, 200, &asked->look.width) || !arguments_whole(asked->arguments, &option_passages, 0, 1000, &asked->passages) ||
        !arguments_language(asked->arguments, asked->settings, &asked->look.language))
        return false;
    for (size_t i = 0; i < sizeof forms / sizeof *forms; i++)
        if (strcmp(value, forms[i].name) == 0) {
            asked->format = forms[i].format;
            return true;
        }
    complain_usage("library", "--format %s: it is text, csv, json or html", value);
    return false;
}

static int run_action(Asked *asked, const Action *action)
{
    char path[LIBRARY_PATH_MOST];
    if (!library_place(asked->arguments, path)) {
        complain_usage("library", "where is the library? Name its file with --library");
        return EXIT_USAGE;
    }
    spz_status status = spz_library_open(path, action->use, &asked->sink, &asked->library);
    int result = status == SPZ_OK ? action->run(asked) : done(asked, status);
    spz_library_free(asked->library);
    voice_close(&asked->voice, path);
    return result;
}

static int run(const Arguments *arguments)
{
    const Action *action = read_action(arguments);
    Asked asked = {.arguments = arguments, .names = arguments->operands + 1, .voice = {.most_doubts = arguments_have(arguments, &option_verbose) ? 0 : DOUBTS_SHOWN}};
    if (!action)
        return EXIT_USAGE;
    asked.count = arguments->operand_count - 1;
    asked.sink = voice_sink(&asked.voice);
    int result = arguments_settings(arguments, &asked.settings);
    if (result == EXIT_OK)
        result = read_looks(&asked) ? run_action(&asked, action) : EXIT_USAGE;
    spz_settings_free(asked.settings);
    return result;
}

const Command command_library = {
    .name = "library",
    .purpose = "keeps what was heard of many scores, and answers which of them ask for what",
    .operands = "add|find|show|fits|partners|alike|forget|check ...",
    .help = "add FOLDER...    hears all scores in the folders, and in the folders in them; only what is new or changed.\n"
            "find             works that meet the conditions below, with the passages that do.\n"
            "show WORK        what is known of a work: what it needs, its seatings, its passages.\n"
            "fits             which works lose least in --seating, or beside the work --with; what they give up.\n"
            "partners WORK    which could share its concert without a chair being moved.\n"
            "alike WORK       other works with passages like the one at --bar; also of a movement, by its title.\n"
            "forget NAME...   takes scores out: a file, a folder, a work.\n"
            "check            holds the library against the disk.\n",
    .options = options,
    .run = run,
};
