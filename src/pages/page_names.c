/* Names for the pages of many scores in one folder. */
#include "pages/page_names.h"
#include "support/arena.h"
#include "support/text/ascii.h"
#include "support/memory.h"
#include "support/path.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { NAME_MOST = 200 }; /* bytes: a name of a file may have 255, and sounds add to it */

typedef struct PageName {
    const char *path; /* the caller's, until the names are made */
    char *name;
    int folders;      /* that stand before the score's own name */
    size_t place;     /* as given */
    bool shared;      /* with another */
} PageName;

struct spz_page_names {
    Arena arena;
    PageName *at;
    size_t count;
};

/* 'symphony-1.musicxml' as 'symphony-1.html'. */
char *spz_report_page_name(const char *path, char *out, size_t size)
{
    const char *name = strcmp(path, "-") == 0 ? "standard-input" : path_name(path);
    const char *dot = strrchr(name, '.');
    size_t length = dot && dot != name ? (size_t)(dot - name) : strlen(name);
    snprintf(out, size, "%.*s.html", (int)length, name);
    return out;
}

const char *page_name_of(const spz_page_names *names, const char *path, char *out, size_t size)
{
    const char *name = spz_page_names_of(names, path);
    return name ? name : spz_report_page_name(path, out, size);
}

/* The folder before `from` on the way: its first letter, NULL where there is none. '.' and '..' are no names. */
static const char *folder_before(const char *path, const char *from, size_t *length)
{
    while (from > path) {
        const char *end = from - 1, *start = end;
        while (start > path && start[-1] != '/')
            start--;
        *length = (size_t)(end - start);
        if (*length && !(*length <= 2 && strspn(start, ".") >= *length))
            return start;
        from = start;
    }
    return NULL;
}

/* The name with so many folders before it; NULL where there are not so many, or it grows too long. No memory: `*failed`. */
static char *name_with(Arena *arena, const char *path, int folders, bool *failed)
{
    char name[4096];
    size_t length = 0;
    const char *from = path_name(path);
    char *text = arena_string(arena, spz_report_page_name(path, name, sizeof name));
    for (int i = 0; i < folders && text; i++) {
        from = folder_before(path, from, &length);
        if (!from || length + strlen(text) + 1 > NAME_MOST)
            return NULL;
        text = arena_format(arena, "%.*s-%s", (int)length, from, text);
    }
    *failed = *failed || !text;
    return text;
}

/* Without regard to capitals: not every file system has any. */
static int compare_names(const char *a, const char *b)
{
    while (*a && ascii_lower(*a) == ascii_lower(*b))
        a++, b++;
    return (unsigned char)ascii_lower(*a) - (unsigned char)ascii_lower(*b);
}

static int by_name(const void *a, const void *b)
{
    const PageName *one = a, *other = b;
    int order = compare_names(one->name, other->name);
    return order ? order : (one->place > other->place) - (one->place < other->place);
}

static int by_path(const void *a, const void *b)
{
    return strcmp(((const PageName *)a)->path, ((const PageName *)b)->path);
}

static void find_shared(spz_page_names *names)
{
    qsort(names->at, names->count, sizeof *names->at, by_name);
    for (size_t i = 0; i < names->count; i++) {
        bool before = i > 0 && compare_names(names->at[i].name, names->at[i - 1].name) == 0;
        bool behind = i + 1 < names->count && compare_names(names->at[i].name, names->at[i + 1].name) == 0;
        names->at[i].shared = before || behind;
    }
}

/* One folder more for each that shares its name; whether any got one. */
static bool put_folders(spz_page_names *names, bool *failed)
{
    bool put = false;
    find_shared(names);
    for (size_t i = 0; i < names->count; i++) {
        PageName *one = &names->at[i];
        char *longer = one->shared ? name_with(&names->arena, one->path, one->folders + 1, failed) : NULL;
        if (!longer)
            continue;
        one->name = longer;
        one->folders++;
        put = true;
    }
    return put && !*failed;
}

static bool is_free(const spz_page_names *names, const PageName *mine, const char *const *taken, size_t taken_count, const char *name)
{
    for (size_t i = 0; i < taken_count; i++)
        if (compare_names(taken[i], name) == 0)
            return false;
    for (size_t i = 0; i < names->count; i++)
        if (&names->at[i] != mine && compare_names(names->at[i].name, name) == 0)
            return false;
    return true;
}

/* 'score-2.html' for what nothing else tells apart: the first of a name keeps it, unless it is one of `taken`. */
static void put_numbers(spz_page_names *names, const char *const *taken, size_t taken_count, bool *failed)
{
    const char *before = NULL; /* name of the one before, as it was */
    find_shared(names);
    for (size_t i = 0; i < names->count && !*failed; i++) {
        PageName *one = &names->at[i];
        bool free = !before || compare_names(one->name, before) != 0;
        for (size_t k = 0; k < taken_count && free; k++)
            free = compare_names(taken[k], one->name) != 0;
        int length = (int)strlen(one->name) - 5; /* without '.html' */
        char *tried = one->name;
        for (int number = 2; !free && tried; number++) {
            tried = arena_format(&names->arena, "%.*s-%d.html", length, one->name, number);
            free = tried && is_free(names, one, taken, taken_count, tried);
        }
        before = one->name;
        *failed = *failed || !tried;
        if (tried)
            one->name = tried;
    }
}

static spz_status name_all(spz_page_names *names, const char *const *paths, const char *const *taken, size_t taken_count)
{
    bool failed = false;
    names->at = arena_take(&names->arena, names->count + 1, sizeof *names->at);
    if (!names->at)
        return SPZ_NO_MEMORY;
    for (size_t i = 0; i < names->count; i++) {
        names->at[i] = (PageName){.path = arena_string(&names->arena, paths[i]), .place = i};
        failed = failed || !names->at[i].path;
        names->at[i].name = failed ? NULL : name_with(&names->arena, paths[i], 0, &failed);
    }
    while (!failed && put_folders(names, &failed))
        ;
    if (!failed)
        put_numbers(names, taken, taken_count, &failed);
    if (failed)
        return SPZ_NO_MEMORY;
    qsort(names->at, names->count, sizeof *names->at, by_path);
    return SPZ_OK;
}

spz_status spz_page_names_make(const char *const *paths, size_t count, const char *const *taken, size_t taken_count, spz_page_names **out)
{
    *out = NULL;
    spz_page_names *names = memory_get(sizeof *names);
    if (!names)
        return SPZ_NO_MEMORY;
    arena_init(&names->arena);
    names->count = count;
    spz_status status = name_all(names, paths, taken, taken_count);
    if (status == SPZ_OK)
        *out = names;
    else
        spz_page_names_free(names);
    return status;
}

const char *spz_page_names_of(const spz_page_names *names, const char *path)
{
    const PageName wanted = {.path = path};
    const PageName *found = names ? bsearch(&wanted, names->at, names->count, sizeof *names->at, by_path) : NULL;
    return found ? found->name : NULL;
}

void spz_page_names_free(spz_page_names *names)
{
    if (!names)
        return;
    arena_release(&names->arena);
    memory_free(names);
}
