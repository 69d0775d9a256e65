/* language.h - the languages in which documents are written. Data (JSON, CSV column names) and messages stay English. */
#ifndef SPEZZATO_LANGUAGE_H
#define SPEZZATO_LANGUAGE_H

#include "spezzato/status.h"
#include <stdbool.h>

SPZ_C_BEGIN

/* One line for each file of src/wording/languages. */
typedef enum spz_language {
    SPZ_ENGLISH,
    SPZ_GERMAN,
    SPZ_FRENCH,
    SPZ_LANGUAGE_COUNT
} spz_language;

SPZ_API const char *spz_language_code(spz_language language); /* ISO 639-1: "en", "de", "fr"; "" outside the list */
SPZ_API const char *spz_language_name(spz_language language); /* in itself: "English", "Deutsch", "français" */
/* By code or by name, its own or that in another of the languages ('German', 'allemand'), whatever the capitals. False, and `out` unchanged, when there is none. */
SPZ_API bool spz_language_from_name(const char *name, spz_language *out);

SPZ_C_END
#endif
