/* Adding: each score by itself, from its bytes to its rows. */
#include "engine/crew.h"
#include "library/score_walk.h"
#include "library/heard.h"
#include "library/inside.h"
#include "season/results/result_terms.h"
#include "season/results/score_file.h"
#include "support/memory.h"
#include "support/message.h"
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>

enum { FRESH = 2 /* seconds: a file may change once more within its time stamp's grain */ };

typedef enum Fate { FATE_UNCHANGED, FATE_HEARD, FATE_UNUSABLE } Fate;

typedef struct Task {
    const char *path;
    unsigned long long bytes;
    Fate fate;
    char *words; /* FATE_UNUSABLE: one sentence, until it is told; NULL: none, or no memory */
    size_t movements, bars;
} Task;

typedef struct Adding {
    Store *store;
    const spz_adding *how;
    const spz_settings *settings;
    char terms[SHA256_TEXT]; /* of the settings */
    const spz_sink *sink;
    const FileList *paths;
    Task *tasks; /* one a path */
    spz_progress progress;
    spz_added *added;
} Adding;

static void stamp(HeardFile *file, const struct stat *about)
{
    file->bytes = (long long)about->st_size;
    file->changed = time(NULL) - about->st_mtim.tv_sec < FRESH ? -1 : (long long)about->st_mtim.tv_sec * 1000000000 + about->st_mtim.tv_nsec;
}

static void say(Task *task, const char *text)
{
    task->words = memory_get(strlen(text) + 1);
    if (task->words)
        strcpy(task->words, text);
}

/* Whether the file is known by its time and length; a known problem is told again. */
static bool known_by_stamp(Adding *adding, const HeardFile *file, Task *task)
{
    Query query = query_begin(adding->store, "SELECT problem FROM file WHERE path = ? AND bytes = ? AND changed = ? AND changed >= 0 AND terms = ?");
    query_text(&query, file->path);
    query_integer(&query, file->bytes);
    query_integer(&query, file->changed);
    query_text(&query, file->terms);
    bool known = query_row(&query);
    task->fate = FATE_UNCHANGED;
    if (known && !query_is_null(&query, 0)) {
        task->fate = FATE_UNUSABLE;
        say(task, query_get_text(&query, 0));
    }
    query_end(&query);
    return known;
}

/* The first error is the one line about the file. */
static void keep_error(void *context, const spz_message *message)
{
    Task *task = context;
    char place[32] = "", text[480];
    if (message->severity != SPZ_ERROR || task->words)
        return;
    if (message->line)
        snprintf(place, sizeof place, "line %ld: ", message->line);
    snprintf(text, sizeof text, "%s%s", place, message->text);
    say(task, text);
}

static spz_status hear(Adding *adding, Task *task, const char *data, size_t size, spz_reading **reading)
{
    spz_sink sink = {keep_error, task};
    spz_score *score = NULL;
    spz_status status = spz_score_read_memory(data, size, task->path, &sink, &score);
    if (status == SPZ_OK)
        status = spz_reading_of_score(score, adding->settings, adding->how->year, SPZ_TO_SEATING, &sink, reading);
    if (status != SPZ_OK && !task->words)
        say(task, spz_status_text(status));
    return status;
}

static void count_reading(Task *task, const spz_reading *reading)
{
    task->fate = FATE_HEARD;
    task->movements = spz_reading_count(reading);
    for (size_t i = 0; i < task->movements; i++)
        task->bars += spz_movement_bars(spz_reading_at(reading, i).movement);
}

/* Keeps what came of it. Another may have been quicker with the same bytes. */
static spz_status keep(Adding *adding, const HeardFile *file, const spz_reading *reading, const char *problem)
{
    spz_status status = store_begin(adding->store, true);
    if (status != SPZ_OK)
        return status;
    long long score = problem ? 0 : heard_find(adding->store, file->content, file->terms);
    if (!score && reading)
        score = heard_keep(adding->store, file, reading, adding->how->year);
    heard_file(adding->store, file, score, problem);
    return store_end(adding->store, SPZ_OK);
}

static spz_status ask(Adding *adding, const HeardFile *file, Task *task, bool *known)
{
    spz_status status = store_begin(adding->store, false);
    if (status != SPZ_OK)
        return status;
    *known = *file->content ? heard_find(adding->store, file->content, file->terms) != 0 : known_by_stamp(adding, file, task);
    return store_end(adding->store, SPZ_OK);
}

static spz_status take_bytes(Adding *adding, HeardFile *file, Task *task, const char *data, size_t size)
{
    spz_reading *reading = NULL;
    bool known = false;
    sha256_of(data, size, file->content);
    spz_status status = ask(adding, file, task, &known), heard = SPZ_OK;
    if (status == SPZ_OK && !known)
        heard = hear(adding, task, data, size, &reading);
    if (heard == SPZ_NO_MEMORY || heard == SPZ_BAD_SETTINGS)
        status = heard;
    if (reading)
        count_reading(task, reading);
    else if (!known)
        task->fate = FATE_UNUSABLE;
    if (status == SPZ_OK)
        status = keep(adding, file, reading, heard == SPZ_OK ? NULL : task->words ? task->words : spz_status_text(heard));
    spz_reading_free(reading);
    return status;
}

static spz_status add_one(void *context, size_t number)
{
    Adding *adding = context;
    Task *task = &adding->tasks[number];
    struct stat about;
    HeardFile file = {.path = task->path};
    char *data = NULL;
    size_t size;
    bool known = false;
    terms_of_score(adding->terms, adding->settings, task->path, adding->how->year, file.terms);
    bool there = stat(task->path, &about) == 0;
    if (there)
        stamp(&file, &about);
    spz_status status = there && file.changed >= 0 ? ask(adding, &file, task, &known) : SPZ_OK;
    if (status != SPZ_OK || known)
        return status;
    spz_status read = score_file_read(task->path, &data, &size);
    if (read == SPZ_NO_MEMORY)
        return read;
    if (read == SPZ_OK)
        status = take_bytes(adding, &file, task, data, size);
    else {
        task->fate = FATE_UNUSABLE;
        say(task, spz_status_text(read));
    }
    memory_free(data);
    return status;
}

static void count_one(void *context, size_t number)
{
    Adding *adding = context;
    Task *task = &adding->tasks[number];
    spz_message place = {.severity = SPZ_ERROR, .file = task->path};
    if (task->fate == FATE_UNUSABLE)
        message_send(adding->sink, &place, "%s", task->words ? task->words : spz_status_text(SPZ_NO_MEMORY));
    memory_free(task->words);
    task->words = NULL;
    adding->added->unchanged += task->fate == FATE_UNCHANGED;
    adding->added->heard += task->fate == FATE_HEARD;
    adding->added->unusable += task->fate == FATE_UNUSABLE;
    adding->added->movements += task->movements;
    adding->added->bars += task->bars;
    adding->progress.files_done++;
    adding->progress.bytes_done += task->bytes;
    adding->progress.files_kept += task->fate == FATE_UNCHANGED;
    adding->progress.bytes_kept += task->fate == FATE_UNCHANGED ? task->bytes : 0;
    adding->progress.bars += task->bars;
}

static void tell_progress(void *context)
{
    const Adding *adding = context;
    if (adding->how->progress)
        adding->how->progress(adding->how->context, &adding->progress);
}

static bool is_stopped(void *context)
{
    const Adding *adding = context;
    return adding->how->stop && adding->how->stop(adding->how->context);
}

static spz_status set_tasks(Adding *adding, Arena *arena)
{
    adding->tasks = arena_take(arena, adding->paths->count + 1, sizeof *adding->tasks);
    for (size_t i = 0; adding->tasks && i < adding->paths->count; i++) {
        struct stat about;
        Task *task = &adding->tasks[i];
        task->path = adding->paths->at[i];
        task->bytes = stat(task->path, &about) == 0 ? (unsigned long long)about.st_size : 0;
        adding->progress.bytes += task->bytes;
    }
    adding->progress.files = adding->paths->count;
    return adding->tasks ? SPZ_OK : SPZ_NO_MEMORY;
}

static spz_status add_all(Adding *adding, const char *const *places, size_t count, Arena *arena)
{
    FileList paths = {NULL, 0, 0};
    spz_status status = SPZ_OK;
    for (size_t i = 0; status == SPZ_OK && i < count; i++)
        status = folders_walk(places[i], adding->sink, arena, &paths, &adding->added->unusable);
    adding->paths = &paths;
    adding->added->files = paths.count + adding->added->unusable; /* places that can't be looked into count too */
    if (status == SPZ_OK)
        status = set_tasks(adding, arena);
    if (status == SPZ_OK)
        status = crew_run(&(Crew){paths.count, adding->how->jobs, add_one, count_one, tell_progress, is_stopped, adding});
    for (size_t i = 0; adding->tasks && i < paths.count; i++) /* of those that were not counted since something failed */
        memory_free(adding->tasks[i].words);
    array_free(&paths);
    return status;
}

spz_status spz_library_add(spz_library *library, const char *const *places, size_t count, const spz_adding *how, const spz_sink *sink, spz_added *added)
{
    static const spz_adding usual = {.jobs = 1};
    spz_settings *defaults = NULL;
    Arena arena;
    *added = (spz_added){0};
    Adding adding = {.store = library->store, .how = how ? how : &usual, .sink = sink, .added = added};
    spz_status status = adding.how->settings ? SPZ_OK : spz_settings_new(&defaults);
    if (status != SPZ_OK)
        return status;
    adding.settings = adding.how->settings ? adding.how->settings : defaults;
    terms_of_settings(adding.settings, adding.terms);
    arena_init(&arena);
    status = add_all(&adding, places, count, &arena);
    arena_release(&arena);
    spz_settings_free(defaults);
    return library_end(library, status);
}
