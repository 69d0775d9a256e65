#include "season/results/result_terms.h"
#include "support/path.h"
#include <stdbool.h>
#include <stdio.h>
#include <string.h>

/* The Makefile hands in a sum over every source that bears on a verdict. Without one the moment of compiling stands for it: this file
 * then has to be compiled anew with the rest. */
#ifdef SPEZZATO_EDITION
#define EDITION SPEZZATO_EDITION
#else
#define EDITION __DATE__ " " __TIME__
#endif

const char *terms_edition(void)
{
    return EDITION;
}

static void add_table(Sha256 *sum, const spz_settings *settings)
{
    char name[128];
    for (size_t i = 0; i < spz_setting_count(); i++) {
        const spz_setting *setting = spz_setting_at(i);
        snprintf(name, sizeof name, "%s.%s", setting->section, setting->key);
        if (strcmp(setting->section, "concert") == 0 || strcmp(name, "house.language") == 0)
            continue;
        sha256_add_text(sum, name);
        sha256_add_text(sum, spz_settings_text(settings, name));
    }
}

static void add_entries(Sha256 *sum, const spz_settings *settings, const char *section)
{
    const char *key, *value;
    sha256_add_text(sum, section);
    for (size_t i = 0; spz_settings_entry(settings, section, i, &key, &value); i++) {
        sha256_add_text(sum, key);
        sha256_add_text(sum, value);
    }
}

void terms_of_settings(const spz_settings *settings, char name[SHA256_TEXT])
{
    Sha256 sum;
    const char *name_of;
    sha256_begin(&sum);
    sha256_add_text(&sum, EDITION);
    add_table(&sum, settings);
    add_entries(&sum, settings, "sections");
    add_entries(&sum, settings, "bars");
    for (size_t i = 0; (name_of = spz_settings_section(settings, "bars ", i)) != NULL; i++)
        add_entries(&sum, settings, name_of);
    add_entries(&sum, settings, "passages");
    for (size_t i = 0; (name_of = spz_settings_section(settings, "passages ", i)) != NULL; i++)
        add_entries(&sum, settings, name_of);
    for (size_t i = 0; (name_of = spz_settings_section(settings, "arrangement ", i)) != NULL; i++)
        add_entries(&sum, settings, name_of);
    sha256_end(&sum, name);
}

/* Whether something is said of scores by the names of their files. */
static bool names_files(const spz_settings *settings)
{
    return spz_settings_section(settings, "bars ", 0) || spz_settings_section(settings, "passages ", 0);
}

void terms_of_score(const char *settings_name, const spz_settings *settings, const char *path, int year, char name[SHA256_TEXT])
{
    Sha256 sum;
    char number[16];
    snprintf(number, sizeof number, "%d", year);
    sha256_begin(&sum);
    sha256_add_text(&sum, settings_name);
    sha256_add_text(&sum, number);
    if (names_files(settings))
        sha256_add_text(&sum, path_name(path));
    sha256_end(&sum, name);
}
