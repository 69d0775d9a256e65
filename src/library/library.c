/* The library's door: opening, forgetting, checking. */
#include "library/finding.h"
#include "library/score_walk.h"
#include "library/heard.h"
#include "season/results/result_terms.h"
#include "season/results/score_file.h"
#include "support/memory.h"
#include "support/message.h"
#include <string.h>
#include <sys/stat.h>

spz_status spz_library_open(const char *path, spz_library_use use, const spz_sink *sink, spz_library **out)
{
    *out = NULL;
    spz_library *library = memory_get(sizeof *library);
    if (!library)
        return SPZ_NO_MEMORY;
    library->sink = sink ? *sink : (spz_sink){NULL, NULL};
    spz_status status = store_open(path, use == SPZ_LIBRARY_CHANGE ? STORE_WRITE : STORE_READ, sink, &library->store);
    if (status == SPZ_OK)
        *out = library;
    else
        memory_free(library);
    return status;
}

spz_status library_end(spz_library *library, spz_status status)
{
    store_tell(library->store, SPZ_ERROR, &library->sink);
    return status;
}

void spz_library_free(spz_library *library)
{
    if (!library)
        return;
    store_close(library->store);
    memory_free(library);
}

/* Files of that path or below that folder. */
static size_t forget_path(Store *store, const char *path)
{
    size_t count = 0;
    Query query = query_begin(store, "DELETE FROM file WHERE path = ?1 OR substr(path, 1, length(?1) + 1) = ?1 || '/' RETURNING 1");
    query_text(&query, path);
    while (query_row(&query))
        count++;
    query_end(&query);
    return count;
}

static size_t forget_works(Store *store, const char *name)
{
    enum { MOST = 100 };
    long long works[MOST];
    size_t count = 0, found = find_works(store, name, works, MOST);
    for (size_t i = 0; i < found && i < MOST; i++) {
        Query query = query_begin(store, "DELETE FROM file WHERE score IN (SELECT score FROM movement WHERE work = ?) RETURNING 1");
        query_integer(&query, works[i]);
        while (query_row(&query))
            count++;
        query_end(&query);
    }
    return count;
}

spz_status spz_library_forget(spz_library *library, const char *name, size_t *forgotten)
{
    Store *store = library->store;
    Arena arena;
    *forgotten = 0;
    spz_status status = store_begin(store, true);
    if (status != SPZ_OK)
        return library_end(library, status);
    arena_init(&arena);
    const char *path = folders_path(name, &arena);
    if (path)
        *forgotten = forget_path(store, path);
    if (path && *forgotten == 0)
        *forgotten = forget_works(store, name);
    heard_sweep(store);
    arena_release(&arena);
    return library_end(library, store_end(store, path ? SPZ_OK : SPZ_NO_MEMORY));
}

static void count_rows(Store *store, spz_library_state *state)
{
    Query query = query_begin(store, "SELECT (SELECT count(*) FROM work), (SELECT count(*) FROM movement), (SELECT count(*) FROM passage),"
                                     " (SELECT count(*) FROM file), (SELECT count(*) FROM file WHERE problem IS NOT NULL)");
    if (query_row(&query)) {
        state->works = (size_t)query_get_integer(&query, 0);
        state->movements = (size_t)query_get_integer(&query, 1);
        state->passages = (size_t)query_get_integer(&query, 2);
        state->files = (size_t)query_get_integer(&query, 3);
        state->unusable = (size_t)query_get_integer(&query, 4);
    }
    query_end(&query);
}

typedef struct Shelved { /* a file as the library has it */
    const char *path, *content;
} Shelved;
typedef ARRAY(Shelved) ShelvedFiles;

static void check_file(const Shelved *file, const spz_sink *sink, spz_library_state *state)
{
    char *data = NULL, content[SHA256_TEXT];
    size_t size;
    spz_message place = {.severity = SPZ_DOUBT, .file = file->path};
    spz_status status = score_file_read(place.file, &data, &size);
    if (status != SPZ_OK) {
        message_send(sink, &place, "it is not there any more, or can't be read; `spezzato library forget` takes it out");
        state->missing++;
        return;
    }
    sha256_of(data, size, content);
    memory_free(data);
    if (strcmp(content, file->content) == 0)
        return;
    message_send(sink, &place, "it has changed since it was heard; `spezzato library add` hears it again");
    state->changed++;
}

static void check_terms(Store *store, const spz_settings *settings, spz_library_state *state)
{
    char name[SHA256_TEXT], terms[SHA256_TEXT];
    terms_of_settings(settings, name);
    Query query = query_begin(store, "SELECT f.terms, ifnull((SELECT max(year) FROM movement m WHERE m.score = f.score), 0), f.path FROM file f WHERE f.score IS NOT NULL" /* what could not be used was not heard under any */);
    while (query_row(&query)) {
        terms_of_score(name, settings, query_get_text(&query, 2), 0, terms);
        bool plain = strcmp(terms, query_get_text(&query, 0)) == 0;
        terms_of_score(name, settings, query_get_text(&query, 2), (int)query_get_integer(&query, 1), terms);
        if (!plain && strcmp(terms, query_get_text(&query, 0)) != 0)
            state->outdated++;
    }
    query_end(&query);
}

static bool list_files(Store *store, Arena *arena, ShelvedFiles *files)
{
    bool whole = true;
    Query query = query_begin(store, "SELECT path, content FROM file ORDER BY path");
    while (whole && query_row(&query)) {
        Shelved file = {arena_string(arena, query_get_text(&query, 0)), arena_string(arena, query_get_text(&query, 1))};
        whole = file.path && file.content && array_push(files, file);
    }
    query_end(&query);
    return whole;
}

/* The files are read when nobody has to wait for the library any more. */
static spz_status check_all(Store *store, const spz_settings *settings, const spz_sink *sink, spz_library_state *out)
{
    long faults = 0;
    Arena arena;
    ShelvedFiles files = {NULL, 0, 0};
    spz_status status = store_begin(store, false);
    if (status != SPZ_OK)
        return status;
    arena_init(&arena);
    count_rows(store, out);
    status = store_check(store, sink, &faults);
    out->faults = (size_t)faults;
    if (!list_files(store, &arena, &files))
        status = SPZ_NO_MEMORY;
    check_terms(store, settings, out);
    status = store_end(store, status);
    for (size_t i = 0; status == SPZ_OK && i < files.count; i++)
        check_file(&files.at[i], sink, out);
    array_free(&files);
    arena_release(&arena);
    return status;
}

spz_status spz_library_check(spz_library *library, const spz_settings *settings, const spz_sink *sink, spz_library_state *out)
{
    spz_settings *defaults = NULL;
    *out = (spz_library_state){0};
    spz_status status = settings ? SPZ_OK : spz_settings_new(&defaults);
    if (status == SPZ_OK)
        status = check_all(library->store, settings ? settings : defaults, sink, out);
    spz_settings_free(defaults);
    return library_end(library, status);
}
