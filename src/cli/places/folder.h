/* folder.h - the folder that results go into. */
#ifndef CLI_FOLDER_H
#define CLI_FOLDER_H
#include <stdbool.h>
#include <stddef.h>

/* Makes it when it isn't there; false after one line. */
bool folder_make(const char *folder);

/* Tells in one line of the pages (.html) that lie in the folder and are none of `names`: an earlier run left them. */
void folder_tell_others(const char *folder, char *const *names, size_t count);
#endif
