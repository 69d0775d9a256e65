#include "season/table/score_cells.h"
#include "support/path.h"
#include "support/text/ascii.h"
#include "support/text/name_order.h"
#include <dirent.h>
#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

static int by_name(const void *a, const void *b)
{
    return names_compare(*(const char *const *)a, *(const char *const *)b);
}

bool scores_is_name(const char *name)
{
    static const char *const endings[] = {".musicxml", ".mxl", ".xml"};
    size_t length = strlen(name);
    for (size_t i = 0; i < sizeof endings / sizeof endings[0] && name[0] != '.'; i++) {
        size_t ending = strlen(endings[i]);
        if (length > ending && ascii_same(name + length - ending, endings[i]))
            return true;
    }
    return false;
}

spz_status scores_folder(const char *path, bool (*wanted)(const char *name), Arena *arena, FileList *files)
{
    size_t before = files->count;
    spz_status status = SPZ_OK;
    DIR *folder = opendir(path);
    if (!folder)
        return SPZ_CANNOT_OPEN;
    for (struct dirent *entry; status == SPZ_OK && (entry = readdir(folder)) != NULL;) {
        if (!wanted(entry->d_name))
            continue;
        const char *name = arena_format(arena, "%s%s%s", path, path[strlen(path) - 1] == '/' ? "" : "/", entry->d_name);
        if (!name || !array_push(files, name))
            status = SPZ_NO_MEMORY;
    }
    closedir(folder);
    if (files->count > before)
        qsort(files->at + before, files->count - before, sizeof *files->at, by_name);
    return status;
}

static void complain(ScoreSearch *search, spz_fault fault, const char *name, const char *other)
{
    table_tell(search->table, search->sink, &(spz_table_note){.line = search->line, .fault = fault, .name = name, .other = other});
    search->missing++;
}

/* A name without the ending of a score. */
static const char *stem_of(const char *name, Arena *arena)
{
    const char *dot = scores_is_name(name) ? strrchr(name, '.') : NULL;
    return arena_text(arena, name, dot ? (size_t)(dot - name) : strlen(name));
}

static bool same_stem(const char *one, const char *other, Arena *arena)
{
    const char *left = stem_of(one, arena), *right = stem_of(other, arena);
    return left && right && ascii_same(left, right);
}

enum { GUESSED_MOST = 20 /* faults of a table; a folder may hold ten thousand */ };

/* The score in the same folder whose name differs only by capitals or by its ending, the first by name; where `guesses`, else the one that may have been
 * meant; "" where there is none. */
static const char *like_named(const char *path, bool guesses, Arena *arena)
{
    spz_guess guess = {.word = path_name(path)};
    const char *slash = strrchr(path, '/'), *name = slash ? slash + 1 : path, *found = "";
    const char *within = slash ? arena_text(arena, path, (size_t)(slash - path + 1)) : ".";
    if (!within)
        return "";
    DIR *folder = opendir(within);
    for (struct dirent *entry; folder && (entry = readdir(folder)) != NULL;) {
        bool first = scores_is_name(entry->d_name) && same_stem(entry->d_name, name, arena) && (!*found || names_compare(entry->d_name, found) < 0);
        const char *kept = first ? arena_string(arena, entry->d_name) : NULL;
        found = kept ? kept : found;
        kept = guesses && !*found && scores_is_name(entry->d_name) ? arena_string(arena, entry->d_name) : NULL;
        if (kept)
            spz_guess_look(&guess, kept);
    }
    if (folder)
        closedir(folder);
    return *found || !guess.meant ? found : guess.meant;
}

static void complain_of_nothing(ScoreSearch *search, const char *path, const char *shown, Arena *arena)
{
    bool several = strpbrk(shown, ";,") != NULL;
    const char *like = like_named(path, !several && search->table->faults < GUESSED_MOST, arena);
    complain(search, *like ? SPZ_FAULT_SCORE_NEARLY_THERE : several ? SPZ_FAULT_SCORES_WITHOUT_BAR : SPZ_FAULT_SCORE_NOT_THERE, shown, like);
}

static spz_status add_one(ScoreSearch *search, const char *path, const char *shown, Arena *arena, FileList *files)
{
    struct stat about;
    if (stat(path, &about) != 0) {
        if (errno == ENOENT)
            complain_of_nothing(search, path, shown, arena);
        else
            complain(search, SPZ_FAULT_SCORE_NOT_OPENED, shown, "");
        return SPZ_OK;
    }
    if (!S_ISDIR(about.st_mode))
        return array_push(files, path) ? SPZ_OK : SPZ_NO_MEMORY;
    size_t before = files->count;
    spz_status status = scores_folder(path, scores_is_name, arena, files);
    if (status == SPZ_CANNOT_OPEN)
        complain(search, SPZ_FAULT_SCORE_NOT_OPENED, shown, "");
    else if (status == SPZ_OK && files->count == before)
        complain(search, SPZ_FAULT_FOLDER_WITHOUT_SCORE, shown, "");
    return status == SPZ_CANNOT_OPEN ? SPZ_OK : status;
}

spz_status scores_find(ScoreSearch *search, const char *cell, const char *folder, Arena *arena, FileList *files)
{
    spz_status status = SPZ_OK;
    while (*cell && status == SPZ_OK) {
        size_t length = strcspn(cell, "|"), start = 0, end = length;
        while (start < end && ascii_is_blank((unsigned char)cell[start]))
            start++;
        while (end > start && ascii_is_blank((unsigned char)cell[end - 1]))
            end--;
        const char *name = arena_text(arena, cell + start, end - start);
        const char *path = name ? arena_format(arena, "%s%s", *name == '/' ? "" : folder, name) : NULL;
        if (!path)
            return SPZ_NO_MEMORY;
        if (*name)
            status = add_one(search, path, name, arena, files);
        cell += length + (cell[length] == '|');
    }
    return status;
}
