/* store.h - what is set: values by row of the table, and the user's own entries with the place where they were read. */
#ifndef SETTINGS_STORE_H
#define SETTINGS_STORE_H
#include "settings/settings_table.h"
#include "support/arena.h"
#include "support/array.h"

typedef struct SettingEntry {
    const char *section, *key, *value;
    const char *file; /* NULL when it was set by the program */
    long line;
} SettingEntry;

typedef struct SettingPlace { /* where a value was written; NULL and 0: in no file */
    const char *file;
    long line;
} SettingPlace;

struct spz_settings {
    Arena arena; /* all text; what is overwritten stays in it until the end */
    const char **values; /* by row of the table; NULL: the default */
    double *numbers;     /* by row; of the default or of what was set */
    SettingPlace *places; /* by row */
    ARRAY(SettingEntry) entries;
    const char *house; /* name of the house's file; NULL */
};

/* Row of 'section.key', or -1. */
long settings_row(const char *section, const char *key);
bool settings_section_is_free(const char *section);

/* "; is 'stage.width' meant?" where a setting of the table has a key like that of `name`, "" else. Returns `text`. */
const char *settings_meant(const char *name, char *text, size_t size);

/* What is wrong with `value` for this row, as a clause ('has to lie between 5 and 60'); NULL when it is good. `number` gets its
 * value (yes: 1, no: 0). */
const char *settings_value_fault(const spz_setting *row, const char *value, double *number, char *text, size_t size);

spz_status settings_put(spz_settings *settings, long row, const char *value, double number, SettingPlace from);
spz_status settings_add_entry(spz_settings *settings, const SettingEntry *entry);

/* All that is set, over again; *out is to be freed on failure too. */
spz_status settings_copy(const spz_settings *from, spz_settings **out);

/* Entry `index` of a free section with its place; NULL past the end. */
const SettingEntry *settings_entry_at(const spz_settings *settings, const char *section, size_t index);
#endif
