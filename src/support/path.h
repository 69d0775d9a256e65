/* path.h - names of files. */
#ifndef SUPPORT_PATH_H
#define SUPPORT_PATH_H
#include <string.h>

/* The last part of a path: what follows its last slash. What stands before it is the folder, its slash included. */
static inline const char *path_name(const char *path)
{
    const char *slash = strrchr(path, '/');
    return slash ? slash + 1 : path;
}
#endif
