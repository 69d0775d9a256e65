/* version.h - which edition of the library this is: the one place that says so. The Makefile takes the number of the shared library and of
 * spezzato.pc from here.
 *
 * Editions with the same major number, from 1 on, can stand in for one another once compiled; before 1.0 those with the same minor number. */
#ifndef SPEZZATO_VERSION_H
#define SPEZZATO_VERSION_H

#include "spezzato/status.h"
#include <stddef.h>

SPZ_C_BEGIN

#define SPZ_VERSION_MAJOR 0
#define SPZ_VERSION_MINOR 1
#define SPZ_VERSION_PATCH 0
/* To be asked by the preprocessor: #if SPZ_VERSION_AT_LEAST(0, 1, 0) */
#define SPZ_VERSION_AT_LEAST(major, minor, patch) \
    (SPZ_VERSION_MAJOR * 1000000 + SPZ_VERSION_MINOR * 1000 + SPZ_VERSION_PATCH >= (major) * 1000000 + (minor) * 1000 + (patch))
#define SPZ_LICENSE "MIT" /* SPDX identifier */

/* "0.1.0": of the library that runs, which need not be the one whose headers were compiled. */
SPZ_API const char *spz_version(void);

/* The libraries that it works with, and their versions where they tell them: "libxml2 2.9.14, zlib 1.2.13, libcsv 3.0.3, libinih, sqlite 3.40.1". Writes at
 * most `size` bytes with the closing zero. Returns `out`. */
SPZ_API char *spz_libraries(char *out, size_t size);

SPZ_C_END
#endif
