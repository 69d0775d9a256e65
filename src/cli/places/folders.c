/* A folder stands for the scores that lie in it. */
#include "cli/options/arguments.h"
#include "cli/command.h"
#include "cli/messages.h"
#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

static bool is_folder(const char *path)
{
    struct stat about;
    return stat(path, &about) == 0 && S_ISDIR(about.st_mode);
}

static int is_score(const struct dirent *entry)
{
    static const char *const endings[] = {".musicxml", ".mxl", ".xml"};
    const char *ending = strrchr(entry->d_name, '.');
    for (size_t i = 0; ending && ending > entry->d_name && entry->d_name[0] != '.' && i < sizeof endings / sizeof *endings; i++)
        if (strcmp(ending, endings[i]) == 0)
            return 1;
    return 0;
}

static int by_bytes(const struct dirent **one, const struct dirent **other)
{
    return strcmp((*one)->d_name, (*other)->d_name);
}

typedef struct Operands {
    const char **at;
    size_t count;
} Operands;

static bool add(Operands *operands, const char *path)
{
    const char **at = realloc((void *)operands->at, (operands->count + 1) * sizeof *at);
    if (!at)
        return false;
    operands->at = at;
    operands->at[operands->count++] = path;
    return true;
}

/* The path of a file of the folder, kept with the arguments; NULL when out of memory. */
static char *keep(Arguments *arguments, const char *folder, const char *name)
{
    size_t size = strlen(folder) + strlen(name) + 2, length = strlen(folder);
    char **found = realloc(arguments->found, (arguments->found_count + 1) * sizeof *found);
    char *path = found ? malloc(size) : NULL;
    if (found)
        arguments->found = found;
    if (!path)
        return NULL;
    snprintf(path, size, "%s%s%s", folder, length && folder[length - 1] == '/' ? "" : "/", name);
    return arguments->found[arguments->found_count++] = path;
}

static bool add_folder(Arguments *arguments, const char *folder, Operands *operands)
{
    struct dirent **entries = NULL;
    int count = scandir(folder, &entries, is_score, by_bytes);
    bool good = count > 0;
    if (!good)
        complain_usage(arguments->command, count < 0 ? "%s: the folder can't be read" : "%s: there is no score in this folder (.musicxml, .mxl, .xml)", folder);
    for (int i = 0; i < count; i++) {
        char *path = good ? keep(arguments, folder, entries[i]->d_name) : NULL;
        good = path && add(operands, path);
        free(entries[i]);
    }
    free(entries);
    return good;
}

bool arguments_open_folders(Arguments *arguments)
{
    Operands operands = {NULL, 0};
    bool good = true;
    for (size_t i = 0; i < arguments->operand_count && good; i++)
        good = is_folder(arguments->operands[i]) ? add_folder(arguments, arguments->operands[i], &operands) : add(&operands, arguments->operands[i]);
    if (!good) {
        free((void *)operands.at);
        return false;
    }
    free((void *)arguments->operands);
    arguments->operands = operands.at;
    arguments->operand_count = operands.count;
    return true;
}
