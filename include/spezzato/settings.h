/* settings.h - house rules: everything that a user may set, with defaults, units and sources. One table in
 * src/settings/settings_table.c holds them all; settings files are .ini files read with libinih. */
#ifndef SPEZZATO_SETTINGS_H
#define SPEZZATO_SETTINGS_H

#include "spezzato/status.h"
#include <stdbool.h>
#include <stddef.h>

SPZ_C_BEGIN

typedef struct spz_settings spz_settings;

typedef enum spz_setting_kind { SPZ_NUMBER, SPZ_WORD, SPZ_TEXT, SPZ_YES_NO } spz_setting_kind;

/* One thing that can be set. */
typedef struct spz_setting {
    const char *section, *key; /* as written in a settings file: [section] key = value */
    spz_setting_kind kind;
    const char *initial;       /* the default, as it would be written */
    double least, most;        /* SPZ_NUMBER only */
    const char *words;         /* SPZ_WORD only: the words allowed, '|' between */
    const char *unit;          /* "" where there is none */
    const char *meaning;       /* one sentence */
    const char *source;        /* where the default comes from: a publication, 'common practice', 'measured: docs/accuracy.md' */
} spz_setting;

SPZ_API size_t spz_setting_count(void); /* rows of the table of settings */
SPZ_API const spz_setting *spz_setting_at(size_t index); /* NULL past the end */

SPZ_API spz_status spz_settings_new(spz_settings **out); /* all defaults */
SPZ_API void spz_settings_free(spz_settings *settings); /* takes NULL */
/* Reads a settings file over what is set. An unknown key, or a value out of its range, is an error with its line; on error nothing
 * is changed. A key of a free section ([sections], [arrangement NAME]) may stand several times; all are kept in order.
 * SPZ_CANNOT_OPEN, SPZ_CANNOT_READ, SPZ_BAD_SETTINGS, SPZ_NO_MEMORY. */
SPZ_API spz_status spz_settings_read(spz_settings *settings, const char *path, const spz_sink *sink);
/* The same of the house's own file, whose rules hold wherever nothing else is said; it is known by `name` afterwards. */
SPZ_API spz_status spz_settings_read_house(spz_settings *settings, const char *path, const char *name, const spz_sink *sink);
/* The settings file in which the value was written, and its line; NULL and 0 where it comes from nowhere else or is the default. */
SPZ_API const char *spz_settings_place(const spz_settings *settings, const char *name, long *line);
SPZ_API const char *spz_settings_house(const spz_settings *settings); /* that name; NULL where no such file was read */
/* Sets one value by its name, 'stage.width'. */
SPZ_API spz_status spz_settings_set(spz_settings *settings, const char *name, const char *value, const spz_sink *sink);

/* By name 'stage.width'. An unknown name is a mistake of the caller: 0, false or "". Views live until the next change. */
SPZ_API double spz_settings_number(const spz_settings *settings, const char *name); /* SPZ_NUMBER, in the unit of the setting; SPZ_YES_NO as 1 and 0 */
SPZ_API const char *spz_settings_text(const spz_settings *settings, const char *name); /* as written, else the default */
SPZ_API bool spz_settings_flag(const spz_settings *settings, const char *name); /* SPZ_YES_NO; false for other kinds */
SPZ_API bool spz_settings_is_default(const spz_settings *settings, const char *name); /* nothing was set, or the default itself */

/* Free-form entries: sections of a settings file whose keys are names of the user's: [sections] 'Oboe d'amore' = ..., and
 * [arrangement NAME]. Walks all entries of `section` in file order; `index` from 0; false past the end. */
SPZ_API bool spz_settings_entry(const spz_settings *settings, const char *section, size_t index, const char **key,
                                const char **value);
/* Names of the sections that start with `prefix` ('arrangement '), from 0; NULL past the end. */
SPZ_API const char *spz_settings_section(const spz_settings *settings, const char *prefix, size_t index);

SPZ_C_END
#endif
