/* What the library says of itself. The versions are those of the libraries that run, but for libcsv, which only tells it to the compiler. */
#include "spezzato/version.h"
#include <csv.h>
#include <libxml/parser.h>
#include <stdio.h>
#include <sqlite3.h>
#include <stdlib.h>
#include <zlib.h>

#define WORD(number) #number
#define NUMBERS(major, minor, patch) WORD(major) "." WORD(minor) "." WORD(patch)

const char *spz_version(void)
{
    return NUMBERS(SPZ_VERSION_MAJOR, SPZ_VERSION_MINOR, SPZ_VERSION_PATCH);
}

char *spz_libraries(char *out, size_t size)
{
    long xml = strtol(xmlParserVersion, NULL, 10); /* 20914: 2.9.14 */
    snprintf(out, size, "libxml2 %ld.%ld.%ld, zlib %s, libcsv %s, libinih, sqlite %s", xml / 10000, xml / 100 % 100, xml % 100, zlibVersion(),
             NUMBERS(CSV_MAJOR, CSV_MINOR, CSV_RELEASE), sqlite3_libversion());
    return out;
}
