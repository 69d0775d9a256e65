#include "cli/places/folder.h"
#include "cli/messages.h"
#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

bool folder_make(const char *folder)
{
    struct stat about;
    if (mkdir(folder, 0777) == 0 || (errno == EEXIST && stat(folder, &about) == 0 && S_ISDIR(about.st_mode)))
        return true;
    char text[200];
    snprintf(text, sizeof text, "the folder can't be made: %s", strerror(errno));
    spz_message message = {.severity = SPZ_ERROR, .file = folder, .text = text};
    Voice voice = {.most_doubts = 1};
    spz_sink sink = voice_sink(&voice);
    sink.say(sink.context, &message);
    return false;
}
