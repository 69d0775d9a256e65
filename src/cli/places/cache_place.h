/* cache_place.h - where what was worked out is kept from one run to the next. */
#ifndef CLI_CACHE_PLACE_H
#define CLI_CACHE_PLACE_H
#include <stdbool.h>
#include <stddef.h>

/* $XDG_CACHE_HOME/spezzato, else ~/.cache/spezzato (XDG Base Directory Specification). False where there is neither, or no room for
 * the name: nothing is kept then, which is no mistake. */
bool cache_place(char *path, size_t size);
#endif
