#include "cli/places/cache_place.h"
#include <stdio.h>
#include <stdlib.h>

bool cache_place(char *path, size_t size)
{
    const char *top = getenv("XDG_CACHE_HOME"), *home = getenv("HOME");
    int length = -1;
    if (top && *top == '/')
        length = snprintf(path, size, "%s/spezzato", top);
    else if (home && *home == '/')
        length = snprintf(path, size, "%s/.cache/spezzato", home);
    return length > 0 && (size_t)length < size;
}
