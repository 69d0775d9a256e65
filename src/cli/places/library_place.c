#include "cli/places/library_place.h"
#include <stdio.h>
#include <stdlib.h>

const Option option_library = {"library", 0, "FILE", "the library's file; else library.sqlite in the user's data folder"};

bool library_place(const Arguments *arguments, char path[LIBRARY_PATH_MOST])
{
    const char *given = arguments_value(arguments, &option_library, NULL), *top = getenv("XDG_DATA_HOME"), *home = getenv("HOME");
    int length = -1;
    if (given)
        length = snprintf(path, LIBRARY_PATH_MOST, "%s", given);
    else if (top && *top == '/')
        length = snprintf(path, LIBRARY_PATH_MOST, "%s/spezzato/library.sqlite", top);
    else if (home && *home == '/')
        length = snprintf(path, LIBRARY_PATH_MOST, "%s/.local/share/spezzato/library.sqlite", home);
    return length > 0 && length < LIBRARY_PATH_MOST;
}
