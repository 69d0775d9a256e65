/* library_place.h - where the library lies, and opening it. */
#ifndef CLI_LIBRARY_PLACE_H
#define CLI_LIBRARY_PLACE_H
#include "cli/options/arguments.h"

extern const Option option_library; /* --library FILE */
enum { LIBRARY_PATH_MOST = 4096 };

/* --library, else $XDG_DATA_HOME/spezzato/library.sqlite, else ~/.local/share/spezzato/library.sqlite (XDG Base Directory Specification). False
 * where there is none of these, or no room for the name. */
bool library_place(const Arguments *arguments, char path[LIBRARY_PATH_MOST]);
#endif
