/* realpath belongs to the X/Open part of POSIX. */
#define _XOPEN_SOURCE 700
#include "library/score_walk.h"
#include "support/message.h"
#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

enum { DEEPEST = 64 };

typedef struct Walk {
    const spz_sink *sink;
    Arena *arena;
    FileList *paths;
    size_t *missing;
} Walk;

static void complain(const Walk *walk, const char *path, int cause)
{
    spz_message place = {.severity = SPZ_ERROR, .file = path};
    message_send(walk->sink, &place, "it can't be opened: %s", message_cause(cause));
    ++*walk->missing;
}

static bool is_seen(const char *name)
{
    return name[0] != '.';
}

static spz_status walk_folder(const Walk *walk, const char *path, int depth)
{
    FileList names = {NULL, 0, 0};
    spz_status status = scores_folder(path, is_seen, walk->arena, &names);
    if (status == SPZ_CANNOT_OPEN) {
        complain(walk, path, errno);
        return SPZ_OK;
    }
    for (size_t i = 0; status == SPZ_OK && i < names.count; i++) {
        struct stat about, led;
        const char *name = names.at[i];
        if (lstat(name, &about) != 0)
            continue;
        if (S_ISDIR(about.st_mode) && depth < DEEPEST)
            status = walk_folder(walk, name, depth + 1);
        else if (scores_is_name(name) && stat(name, &led) == 0 && S_ISREG(led.st_mode) && !array_push(walk->paths, name))
            status = SPZ_NO_MEMORY;
    }
    array_free(&names);
    return status;
}

spz_status folders_walk(const char *place, const spz_sink *sink, Arena *arena, FileList *paths, size_t *missing)
{
    const Walk walk = {sink, arena, paths, missing};
    struct stat about;
    char *whole = realpath(place, NULL);
    if (!whole || stat(whole, &about) != 0) {
        complain(&walk, place, errno);
        free(whole);
        return SPZ_OK;
    }
    const char *path = arena_string(arena, whole);
    free(whole);
    if (!path)
        return SPZ_NO_MEMORY;
    if (S_ISDIR(about.st_mode))
        return walk_folder(&walk, path, 0);
    return array_push(paths, path) ? SPZ_OK : SPZ_NO_MEMORY;
}

const char *folders_path(const char *name, Arena *arena)
{
    char *whole = realpath(name, NULL);
    const char *path = arena_string(arena, whole ? whole : name);
    free(whole);
    return path;
}
