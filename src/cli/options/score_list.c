#include "cli/options/score_list.h"
#include "cli/command.h"
#include "cli/places/library_place.h"
#include "cli/messages.h"
#include "spezzato/library.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Adds a path unless it is there. */
static spz_status add_path(ScoreList *list, const char *path, int year)
{
    for (size_t i = 0; i < list->count; i++)
        if (strcmp(list->at[i].path, path) == 0)
            return SPZ_OK;
    size_t size = strlen(path) + 1;
    ScoreItem *at = realloc(list->at, (list->count + 1) * sizeof *at);
    if (at)
        list->at = at;
    char *copy = at ? malloc(size) : NULL;
    if (!copy)
        return SPZ_NO_MEMORY;
    memcpy(copy, path, size);
    list->at[list->count++] = (ScoreItem){copy, year};
    return SPZ_OK;
}

static spz_status add_works(ScoreList *list, const spz_planned_concert *concert)
{
    spz_status status = SPZ_OK;
    for (size_t w = 0; w < concert->work_count && !status; w++)
        for (size_t m = 0; m < concert->works[w].movement_count && !status; m++)
            status = add_path(list, concert->works[w].movements[m].file, concert->works[w].year);
    return status;
}

static int add_season(ScoreList *list, const Arguments *arguments, const char *path, const spz_settings *settings)
{
    char library[LIBRARY_PATH_MOST];
    Voice voice = {.most_doubts = 3};
    spz_sink sink = voice_sink(&voice);
    spz_season_options options = {.settings = settings, .jobs = 1, .library = library_place(arguments, library) ? library : NULL, .anew = true};
    spz_status status = spz_season_plan(path, &options, &sink, &list->season);
    for (size_t i = 0; !status && i < spz_season_concerts(list->season); i++)
        status = add_works(list, spz_season_concert(list->season, i));
    if (status && !voice.errors)
        complain_status(path, status);
    bool problems = voice.errors > 0 || (list->season && spz_season_total(list->season).problems > 0);
    voice_close(&voice, path);
    return status || problems ? EXIT_INPUT : EXIT_OK;
}

/* 'library:NAME': the scores of that work. */
static int add_from_library(ScoreList *list, const Arguments *arguments, const char *name)
{
    Voice voice = {.most_doubts = 3};
    spz_sink sink = voice_sink(&voice);
    spz_library *library = NULL;
    spz_shelf *shelf = NULL;
    char path[LIBRARY_PATH_MOST] = "";
    spz_status status = library_place(arguments, path) ? spz_library_open(path, SPZ_LIBRARY_ASK, &sink, &library) : SPZ_CANNOT_OPEN;
    if (!status)
        status = spz_library_show(library, name, 0, &shelf);
    const spz_shelf_work *work = shelf && spz_shelf_count(shelf) == 1 ? spz_shelf_at(shelf, 0) : NULL;
    for (size_t i = 0; work && i < work->movement_count && !status; i++)
        status = add_path(list, work->movements[i].file, work->movements[i].year);
    if (status && !voice.errors)
        complain_status(path, status);
    else if (!status && !work)
        fprintf(stderr, "spezzato: %s: %s\n", name, spz_shelf_count(shelf) ? "the library has several works of that name; say which" : "no work of that name is in the library");
    spz_shelf_free(shelf);
    spz_library_free(library);
    return status || !work ? EXIT_INPUT : EXIT_OK;
}

bool is_season_table(const char *path)
{
    size_t length = strlen(path);
    const char *ending = strrchr(path, '.');
    return length > 4 && ending && (strcmp(ending, ".csv") == 0 || strcmp(ending, ".tsv") == 0 || strcmp(ending, ".ods") == 0 || strcmp(ending, ".xlsx") == 0);
}

spz_status refuse_season_table(const char *path)
{
    fprintf(stderr, "spezzato: %s: this is a table, not a score: `spezzato season` plans it, `spezzato report` makes a page of each of its scores, with its rehearsal sheet\n", path);
    return SPZ_NOT_MUSICXML;
}

bool score_list_asks_library(const Arguments *arguments)
{
    for (size_t i = 0; i < arguments->operand_count; i++)
        if (is_season_table(arguments->operands[i]) || strncmp(arguments->operands[i], "library:", 8) == 0)
            return true;
    return false;
}

int score_list_make(ScoreList *list, const Arguments *arguments, const spz_settings *settings)
{
    int result = EXIT_OK;
    size_t tables = 0;
    *list = (ScoreList){0};
    for (size_t i = 0; i < arguments->operand_count; i++)
        tables += is_season_table(arguments->operands[i]);
    if (tables > 1) {
        complain_usage(arguments->command, "one season at a time, please");
        return EXIT_USAGE;
    }
    for (size_t i = 0; i < arguments->operand_count; i++) {
        const char *path = arguments->operands[i];
        int one = EXIT_OK;
        if (strncmp(path, "library:", 8) == 0)
            one = add_from_library(list, arguments, path + 8);
        else if (is_season_table(path))
            one = add_season(list, arguments, path, settings);
        else if (add_path(list, path, 0)) {
            complain_status(path, SPZ_NO_MEMORY);
            one = EXIT_INPUT;
        }
        result = one ? one : result;
    }
    return result;
}

void score_list_free(ScoreList *list)
{
    for (size_t i = 0; i < list->count; i++)
        free(list->at[i].path);
    free(list->at);
    spz_season_free(list->season);
    *list = (ScoreList){0};
}
