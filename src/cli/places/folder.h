/* folder.h - the folder that results go into. */
#ifndef CLI_FOLDER_H
#define CLI_FOLDER_H
#include <stdbool.h>

/* Makes it when it isn't there; false after one line. */
bool folder_make(const char *folder);
#endif
