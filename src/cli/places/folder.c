#include "cli/places/folder.h"
#include "cli/messages.h"
#include <dirent.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

static void tell(spz_severity severity, const char *folder, const char *text)
{
    Voice voice = {.most_doubts = 0};
    spz_sink sink = voice_sink(&voice);
    sink.say(sink.context, &(spz_message){.severity = severity, .file = folder, .text = text});
}

bool folder_make(const char *folder)
{
    struct stat about;
    if (mkdir(folder, 0777) == 0 || (errno == EEXIST && stat(folder, &about) == 0 && S_ISDIR(about.st_mode)))
        return true;
    char text[200];
    snprintf(text, sizeof text, "the folder can't be made: %s", strerror(errno));
    tell(SPZ_ERROR, folder, text);
    return false;
}

static int is_page(const struct dirent *entry)
{
    const char *ending = strrchr(entry->d_name, '.');
    return ending && ending > entry->d_name && strcmp(ending, ".html") == 0;
}

static bool is_among(const char *name, char *const *names, size_t count)
{
    while (count && strcmp(name, names[count - 1]) != 0)
        count--;
    return count > 0;
}

void folder_tell_others(const char *folder, char *const *names, size_t count)
{
    enum { NAMED = 5 };
    struct dirent **pages = NULL;
    int all = scandir(folder, &pages, is_page, alphasort), others = 0;
    char text[480] = "";
    for (int i = 0; i < all; i++) {
        size_t used = strlen(text);
        if (!is_among(pages[i]->d_name, names, count) && others++ < NAMED)
            snprintf(text + used, sizeof text - used, "%s%.80s", used ? ", " : "pages from before lie here too, to which these don't lead: ", pages[i]->d_name);
        free(pages[i]);
    }
    free(pages);
    size_t used = strlen(text);
    if (others > NAMED)
        snprintf(text + used, sizeof text - used, " and %d more", others - NAMED);
    if (others)
        tell(SPZ_NOTE, folder, text);
}
