/* settings_table.h - every setting in one table. To add one, add a row to settings_table.c: nothing else is needed. */
#ifndef SETTINGS_SETTINGS_TABLE_H
#define SETTINGS_SETTINGS_TABLE_H
#include "spezzato/settings.h"

extern const spz_setting settings_table[];
extern const size_t settings_table_count;

/* Sections of a settings file whose keys are the user's own. An entry that ends with a space stands for all sections that
 * begin so ('arrangement NAME'). */
extern const char *const settings_free_sections[];
extern const size_t settings_free_section_count;
#endif
