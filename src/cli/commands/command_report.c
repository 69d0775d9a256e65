/* spezzato report SCORE... -o DIR: a page for each score's file, and one that leads to them. */
#include "cli/places/cache_place.h"
#include "cli/command.h"
#include "cli/places/engraver_place.h"
#include "cli/places/folder.h"
#include "cli/places/library_place.h"
#include "cli/messages.h"
#include "cli/options/one_work.h"
#include "cli/output.h"
#include "cli/page_sounds.h"
#include "cli/options/score_list.h"
#include "cli/places/sound_place.h"
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static const Option option_folder = {"output", 'o', "FOLDER", "where the pages go; made when it isn't there"};
static const Option option_engraver = {"engraver", 0, "FOLDER", "what engraves the passages (`make engraver`); none: they are drawn"};
static const Option option_no_cache = {"no-cache", 0, NULL, "engrave everything anew, keep nothing"};
static const Option option_listen = {"listen", 0, NULL, "make the decisive passages audible in two seatings, beside the pages"};
static const Option *const options[] = {&option_folder, &option_listen, &option_engraver, &option_no_cache, &option_library, &option_work, &option_kind, &option_strength, &option_year, &option_language, &option_settings, &option_set, &option_verbose, NULL};

enum { PATH_SIZE = 4096, CONCERT_NAME = 32, TITLE_SIZE = 512 };
static const char index_page[] = "index.html", season_page[] = "season.html", work_page[] = "work.html";

typedef struct Pages {
    const char *folder;
    spz_settings *settings;
    spz_report_options options;
    spz_report *index;
    spz_strips *strips; /* of a season's movements; NULL where there is no season */
    int year;
    size_t most_doubts, written;
    char **names_written; /* of documents, in the order in which they were */
    size_t names_count;
    ScoreList scores;
    bool with_work;     /* one seating for all is asked for */
    Verdicts verdicts;
    const char **verdict_pages; /* of each verdict */
    spz_page_names *names;
    char cache[PATH_SIZE];
    bool listen;
    PageSounds sounds; /* of the page under way */
} Pages;

static bool remember(Pages *pages, const char *name)
{
    char **names = realloc(pages->names_written, (pages->names_count + 1) * sizeof *names);
    size_t size = strlen(name) + 1;
    if (names)
        pages->names_written = names;
    char *copy = names ? malloc(size) : NULL;
    if (copy)
        pages->names_written[pages->names_count++] = memcpy(copy, name, size);
    return copy != NULL;
}

static void forget_names(Pages *pages)
{
    for (size_t i = 0; i < pages->names_count; i++)
        free(pages->names_written[i]);
    free(pages->names_written);
}

static int write_document(Pages *pages, const char *name, const spz_document *document)
{
    char path[PATH_SIZE];
    if (!remember(pages, name)) {
        complain_status(name, SPZ_NO_MEMORY);
        return EXIT_INPUT;
    }
    int length = snprintf(path, sizeof path, "%s/%s", pages->folder, name);
    if (length < 0 || (size_t)length >= sizeof path) {
        complain_status(pages->folder, SPZ_CANNOT_WRITE);
        return EXIT_INPUT;
    }
    return output_save(document, path);
}

static spz_status page_of(const Pages *pages, const spz_reading *reading, spz_document **document)
{
    spz_report *report = NULL;
    spz_status status = spz_report_open(SPZ_REPORT_MOVEMENTS, SPZ_AS_HTML, &pages->options, &report);
    if (!status)
        status = spz_report_add(report, reading);
    if (!status)
        status = spz_report_close(report, document);
    spz_report_free(report);
    return status;
}

/* A score that was read and waits for the one after it, so that its page can lead on to a page that is there. */
typedef struct Waiting {
    spz_reading *reading;
    const char *score;  /* NULL: none waits */
    const char *before; /* page before it; NULL: none */
    char before_title[TITLE_SIZE];
} Waiting;

/* The verdicts of the score's movements, for one seating for all; false after one line where there is no memory. */
static spz_status keep_verdicts(Pages *pages, const char *score, spz_reading *reading)
{
    size_t count = pages->verdicts.count + spz_reading_count(reading);
    const char **verdict_pages = realloc(pages->verdict_pages, (count + 1) * sizeof *verdict_pages);
    spz_status status = verdict_pages ? SPZ_OK : SPZ_NO_MEMORY;
    if (verdict_pages)
        pages->verdict_pages = verdict_pages;
    for (size_t i = pages->verdicts.count; verdict_pages && i < count; i++)
        verdict_pages[i] = spz_page_names_of(pages->names, score);
    if (!status)
        status = verdicts_take(&pages->verdicts, reading);
    if (status)
        complain_status(score, status);
    return status;
}

static const char *title_of(const spz_reading *reading)
{
    return spz_movement_title(spz_reading_at(reading, 0).movement);
}

/* Writes the page of the one that waits; `next`: the score after it, NULL for the last, and its reading. */
static int write_waiting(Pages *pages, Waiting *waiting, const char *next, const spz_reading *read)
{
    spz_document *document = NULL;
    int result = EXIT_INPUT;
    if (!waiting->score)
        return EXIT_OK;
    const char *name = spz_page_names_of(pages->names, waiting->score);
    pages->options.overview = index_page;
    pages->options.before = waiting->before;
    pages->options.after = next ? spz_page_names_of(pages->names, next) : NULL;
    pages->options.before_title = waiting->before_title;
    pages->options.after_title = next ? title_of(read) : NULL;
    int sounded = pages->listen ? page_sounds_make(waiting->reading, &pages->options, pages->folder, name, &pages->sounds) : EXIT_OK;
    pages->options.sounds = pages->sounds.at;
    pages->options.sound_count = pages->sounds.count;
    spz_status status = page_of(pages, waiting->reading, &document);
    if (!status)
        status = spz_report_add(pages->index, waiting->reading);
    if (!status && pages->strips)
        status = spz_strips_add(pages->strips, waiting->reading);
    if (!status)
        result = write_document(pages, name, document);
    else
        complain_status(waiting->score, status);
    pages->written += result == EXIT_OK;
    spz_document_free(document);
    if (!result && pages->with_work && keep_verdicts(pages, waiting->score, waiting->reading))
        result = EXIT_INPUT;
    result = result ? result : sounded;
    spz_text_clean(title_of(waiting->reading), waiting->before_title, TITLE_SIZE);
    spz_reading_free(waiting->reading);
    waiting->before = name;
    waiting->score = NULL;
    return result;
}

/* Reads the score; the one that waited can then be written. */
static int add_page(Pages *pages, const ScoreItem *item, Waiting *waiting)
{
    Voice voice = {.most_doubts = pages->most_doubts};
    spz_sink sink = voice_sink(&voice);
    spz_reading *reading = NULL;
    spz_status status = spz_reading_make(item->path, pages->settings, pages->year ? pages->year : item->year, SPZ_TO_SEATING, &sink, &reading);
    if (status && !voice.errors)
        complain_status(item->path, status);
    voice_close(&voice, item->path);
    if (status)
        return EXIT_INPUT;
    int result = write_waiting(pages, waiting, item->path, reading);
    waiting->reading = reading;
    waiting->score = item->path;
    return result;
}

static int add_pages(Pages *pages)
{
    int result = EXIT_OK;
    Waiting waiting = {.score = NULL};
    for (size_t i = 0; i < pages->scores.count; i++) {
        int one = add_page(pages, &pages->scores.at[i], &waiting);
        result = one ? one : result;
    }
    int last = write_waiting(pages, &waiting, NULL, NULL);
    return last ? last : result;
}

static int write_index(Pages *pages)
{
    spz_document *document = NULL;
    spz_status status = spz_report_close(pages->index, &document);
    if (status)
        complain_status(pages->folder, status);
    int result = status ? EXIT_INPUT : write_document(pages, index_page, document);
    spz_document_free(document);
    return result;
}

static int write_work(Pages *pages)
{
    spz_document *document = NULL;
    spz_status status = verdicts_judge(&pages->verdicts, pages->settings, NULL);
    if (!status)
        status = spz_report_work(pages->verdicts.work, pages->verdict_pages, pages->settings, pages->options.language, SPZ_AS_HTML, &document);
    if (status)
        complain_status(pages->folder, status);
    int result = status ? EXIT_INPUT : write_document(pages, work_page, document);
    spz_document_free(document);
    return result;
}

/* The season's plan and a page for each of its concerts. */
static int write_season(Pages *pages)
{
    const spz_season *season = pages->scores.season;
    spz_season_look look = {.language = pages->options.language, .paged = true, .pages = pages->names, .strips = pages->strips};
    spz_document *document = NULL;
    spz_status status = spz_report_season(season, SPZ_AS_HTML, &look, &document);
    int result = status ? EXIT_INPUT : write_document(pages, season_page, document);
    spz_document_free(document);
    for (size_t i = 0; !status && i < spz_season_concerts(season); i++) {
        char name[CONCERT_NAME];
        document = NULL;
        status = spz_report_concert(season, i, SPZ_AS_HTML, &look, &document);
        int concert = status ? EXIT_INPUT : write_document(pages, spz_report_concert_name(i, name, sizeof name), document);
        result = concert ? concert : result;
        spz_document_free(document);
    }
    if (status)
        complain_status(pages->folder, status);
    return result;
}

/* Each page has a name of its own, and none that of the overview, the season, a concert or the one seating. */
static spz_status name_pages(Pages *pages)
{
    size_t concerts = pages->scores.season ? spz_season_concerts(pages->scores.season) : 0, taken = 0;
    const char **paths = calloc(pages->scores.count + 1, sizeof *paths), **others = calloc(concerts + 3, sizeof *others);
    char (*names)[CONCERT_NAME] = calloc(concerts + 1, sizeof *names);
    spz_status status = paths && others && names ? SPZ_OK : SPZ_NO_MEMORY;
    for (size_t i = 0; !status && i < pages->scores.count; i++)
        paths[i] = pages->scores.at[i].path;
    for (size_t i = 0; !status && i < concerts; i++)
        others[taken++] = spz_report_concert_name(i, names[i], sizeof names[i]);
    if (!status) {
        others[taken++] = index_page;
        if (pages->scores.season)
            others[taken++] = season_page;
        if (pages->with_work)
            others[taken++] = work_page;
        status = spz_page_names_make(paths, pages->scores.count, others, taken, &pages->names);
    }
    free(names);
    free(others);
    free(paths);
    return status;
}

/* The folder is made when it isn't there, with the one that it stands in. */
static void find_cache(Pages *pages)
{
    if (!cache_place(pages->cache, sizeof pages->cache))
        return;
    char *last = strrchr(pages->cache, '/');
    *last = '\0';
    mkdir(pages->cache, 0700);
    *last = '/';
    if (mkdir(pages->cache, 0700) == 0 || errno == EEXIST)
        pages->options.cache = pages->cache;
}

static bool sound_is_ready(void)
{
    Voice voice = {.most_doubts = 1};
    spz_sink sink = voice_sink(&voice);
    return spz_listen_ready(sound_place(), &sink) == SPZ_OK;
}

static int report_all(Pages *pages, const Arguments *arguments)
{
    spz_report_options brief = SPZ_REPORT_USUAL;
    brief.brief = true;
    brief.language = pages->options.language;
    brief.settings = pages->settings;
    brief.season = pages->scores.season ? season_page : NULL;
    brief.work = pages->with_work ? work_page : NULL;
    if ((pages->listen && !sound_is_ready()) || !folder_make(pages->folder))
        return EXIT_INPUT;
    pages->options.engraver = engraver_place(arguments_value(arguments, &option_engraver, NULL));
    if (pages->options.engraver && !arguments_have(arguments, &option_no_cache))
        find_cache(pages);
    spz_status status = name_pages(pages);
    brief.pages = pages->names;
    if (!status)
        status = spz_report_open(SPZ_REPORT_MOVEMENTS, SPZ_AS_HTML, &brief, &pages->index);
    if (!status && pages->scores.season)
        status = spz_strips_new(&pages->options, &pages->strips);
    if (status) {
        complain_status(pages->folder, status);
        return EXIT_INPUT;
    }
    int result = add_pages(pages);
    if (pages->scores.season) {
        int season = write_season(pages);
        result = season ? season : result;
    }
    if (pages->with_work && pages->verdicts.count) {
        int work = write_work(pages);
        result = work ? work : result;
    }
    if (pages->written > 0) {
        int index = write_index(pages);
        result = index ? index : result;
        if (!index) {
            printf("Open %s/%s in a browser.\n", pages->folder, index_page);
            folder_tell_others(pages->folder, pages->names_written, pages->names_count);
        }
    }
    spz_report_free(pages->index);
    spz_strips_free(pages->strips);
    return result;
}

static int run(const Arguments *arguments)
{
    Pages pages = {.folder = arguments_value(arguments, &option_folder, NULL), .options = SPZ_REPORT_USUAL, .listen = arguments_have(arguments, &option_listen),
                   .with_work = arguments_have(arguments, &option_work), .most_doubts = arguments_have(arguments, &option_verbose) ? 0 : 3};
    if (!arguments_year(arguments, &pages.year) || !arguments_kinds(arguments, &pages.options.kinds) ||
        !arguments_strength(arguments, &pages.options.strength))
        return EXIT_USAGE;
    if (arguments->operand_count == 0 || !pages.folder) {
        complain_usage(arguments->command, arguments->operand_count ? "where to? Give a folder with -o" : "which score? Give a MusicXML file, plain or compressed");
        return EXIT_USAGE;
    }
    if (arguments_have(arguments, &option_library) && !score_list_asks_library(arguments)) {
        complain_usage(arguments->command, "--library does nothing here: neither a season's table nor a work of a library (library:NAME) is asked for");
        return EXIT_USAGE;
    }
    int result = arguments_settings(arguments, &pages.settings);
    if (!result && !arguments_language(arguments, pages.settings, &pages.options.language))
        result = EXIT_USAGE;
    if (result) {
        spz_settings_free(pages.settings);
        return result;
    }
    pages.options.settings = pages.settings;
    pages.options.house_rules = spz_settings_house(pages.settings);
    result = score_list_make(&pages.scores, arguments, pages.settings);
    if (result != EXIT_USAGE) {
        int reported = report_all(&pages, arguments);
        result = reported ? reported : result;
    }
    score_list_free(&pages.scores);
    verdicts_free(&pages.verdicts);
    free(pages.verdict_pages);
    forget_names(&pages);
    spz_page_names_free(pages.names);
    spz_settings_free(pages.settings);
    return result;
}

const Command command_report = {
    .name = "report",
    .purpose = "the conductor's pages for a browser: stage, verdict, passages in notes, strip",
    .operands = "SCORE...",
    .help = "Writes a page for each score, and index.html that leads to them, into a folder: stage, verdict, the passages\n"
            "that weigh most in notes and the movement as a strip at a glance; then the grounds, any second seating\n"
            "beside it, and all passages, to be filtered and opened. The pages need nothing else, fetch nothing, and print on A4 and Letter. A season's table (PLAN.csv) stands for its scores; its\n"
            "plan becomes a page too, and each concert one: the best single seating for the evening, what it gives up in each\n"
            "movement, what one change at the interval would gain, the stage before and after each change. With --work a page more:\n"
            "one seating for all the scores, with what it gives up in each movement in bars and minutes.\n"
            "library:WORK stands for the scores of a work in the library. A page is called as its score is; where several scores have one\n"
            "name, their folders stand before it (autumn-score.html, spring-score.html).\n",
    .options = options,
    .run = run,
};
