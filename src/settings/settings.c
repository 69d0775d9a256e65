/* The public face of the settings: defaults, values by name, the user's own entries. */
#include "settings/store.h"
#include "support/memory.h"
#include "support/message.h"
#include <stdio.h>
#include <string.h>

size_t spz_setting_count(void)
{
    return settings_table_count;
}

const spz_setting *spz_setting_at(size_t index)
{
    return index < settings_table_count ? &settings_table[index] : NULL;
}

spz_status spz_settings_new(spz_settings **out)
{
    *out = NULL;
    spz_settings *settings = memory_zeroed(1, sizeof *settings);
    if (!settings)
        return SPZ_NO_MEMORY;
    arena_init(&settings->arena);
    settings->values = arena_take(&settings->arena, settings_table_count, sizeof *settings->values);
    settings->numbers = arena_take(&settings->arena, settings_table_count, sizeof *settings->numbers);
    settings->places = arena_take(&settings->arena, settings_table_count, sizeof *settings->places);
    if (!settings->values || !settings->numbers || !settings->places) {
        spz_settings_free(settings);
        return SPZ_NO_MEMORY;
    }
    char text[8];
    for (size_t i = 0; i < settings_table_count; i++)
        settings_value_fault(&settings_table[i], settings_table[i].initial, &settings->numbers[i], text, sizeof text);
    *out = settings;
    return SPZ_OK;
}

void spz_settings_free(spz_settings *settings)
{
    if (!settings)
        return;
    array_free(&settings->entries);
    arena_release(&settings->arena);
    memory_free(settings);
}

long settings_row(const char *section, const char *key)
{
    for (size_t i = 0; i < settings_table_count; i++)
        if (strcmp(settings_table[i].section, section) == 0 && strcmp(settings_table[i].key, key) == 0)
            return (long)i;
    return -1;
}

/* Row of 'section.key'. */
static long row_of(const char *name)
{
    for (size_t i = 0; i < settings_table_count; i++) {
        size_t length = strlen(settings_table[i].section);
        if (strncmp(settings_table[i].section, name, length) == 0 && name[length] == '.' &&
            strcmp(settings_table[i].key, name + length + 1) == 0)
            return (long)i;
    }
    return -1;
}

bool settings_section_is_free(const char *section)
{
    for (size_t i = 0; i < settings_free_section_count; i++) {
        const char *name = settings_free_sections[i];
        size_t length = strlen(name);
        if (name[length - 1] == ' ' ? strncmp(section, name, length) == 0 && section[length] : strcmp(section, name) == 0)
            return true;
    }
    return false;
}

spz_status settings_put(spz_settings *settings, long row, const char *value, double number, SettingPlace from)
{
    const char *copy = arena_string(&settings->arena, value);
    SettingPlace place = {from.file ? arena_string(&settings->arena, from.file) : NULL, from.line};
    if (!copy || (from.file && !place.file))
        return SPZ_NO_MEMORY;
    settings->places[row] = place;
    settings->values[row] = copy;
    settings->numbers[row] = number;
    return SPZ_OK;
}

spz_status settings_add_entry(spz_settings *settings, const SettingEntry *entry)
{
    Arena *arena = &settings->arena;
    SettingEntry copy = { arena_string(arena, entry->section), arena_string(arena, entry->key), arena_string(arena, entry->value),
                          arena_string(arena, entry->file), entry->line };
    bool whole = copy.section && copy.key && copy.value && (copy.file || !entry->file);
    return whole && array_push(&settings->entries, copy) ? SPZ_OK : SPZ_NO_MEMORY;
}

static bool is_section(const spz_setting *row, const char *name, size_t length)
{
    return length > 0 && strlen(row->section) == length && strncmp(row->section, name, length) == 0;
}

/* 'bars.first': its section is written in a settings file alone. */
static bool names_free_section(const char *name, char *section, size_t size)
{
    const char *dot = strchr(name, '.');
    snprintf(section, size, "%.*s", dot ? (int)(dot - name) : 0, name);
    return dot && settings_section_is_free(section);
}

const char *settings_meant(const char *name, char *text, size_t size)
{
    const char *key = strchr(name, '.');
    size_t section = key ? (size_t)(key - name) : 0;
    spz_guess guess = {.word = key ? key + 1 : name};
    const spz_setting *meant = NULL;
    for (size_t i = 0; i < settings_table_count; i++)
        if (is_section(&settings_table[i], name, section) && spz_guess_look(&guess, settings_table[i].key))
            meant = &settings_table[i];
    for (size_t i = 0; i < settings_table_count && (!section || !meant); i++) /* in no known section, or in the wrong one */
        if (section ? strcmp(settings_table[i].key, guess.word) == 0 : spz_guess_look(&guess, settings_table[i].key))
            meant = &settings_table[i];
    *text = '\0';
    if (meant)
        snprintf(text, size, "; is '%s.%s' meant?", meant->section, meant->key);
    return text;
}

spz_status spz_settings_set(spz_settings *settings, const char *name, const char *value, const spz_sink *sink)
{
    spz_message place = { .severity = SPZ_ERROR };
    char text[200];
    double number;
    long row = row_of(name);
    if (row < 0 && names_free_section(name, text, sizeof text)) {
        message_send(sink, &place, "'%s': what stands in [%s] is written into a settings file, in a line '%s = %s' below '[%s]'", name, text, name + strlen(text) + 1, value, text);
        return SPZ_BAD_SETTINGS;
    }
    if (row < 0) {
        message_send(sink, &place, "there is no setting '%s'%s", name, settings_meant(name, text, sizeof text));
        return SPZ_BAD_SETTINGS;
    }
    const char *fault = settings_value_fault(&settings_table[row], value, &number, text, sizeof text);
    if (fault) {
        message_send(sink, &place, "'%s' %s, not '%s'", name, fault, value);
        return SPZ_BAD_SETTINGS;
    }
    return settings_put(settings, row, value, number, (SettingPlace){NULL, 0});
}

const char *spz_settings_place(const spz_settings *settings, const char *name, long *line)
{
    long row = row_of(name);
    *line = row < 0 ? 0 : settings->places[row].line;
    return row < 0 ? NULL : settings->places[row].file;
}

double spz_settings_number(const spz_settings *settings, const char *name)
{
    long row = row_of(name);
    return row < 0 ? 0 : settings->numbers[row];
}

const char *spz_settings_text(const spz_settings *settings, const char *name)
{
    long row = row_of(name);
    if (row < 0)
        return "";
    return settings->values[row] ? settings->values[row] : settings_table[row].initial;
}

bool spz_settings_flag(const spz_settings *settings, const char *name)
{
    long row = row_of(name);
    return row >= 0 && settings_table[row].kind == SPZ_YES_NO && settings->numbers[row] > 0;
}

bool spz_settings_is_default(const spz_settings *settings, const char *name)
{
    long row = row_of(name);
    return row < 0 || !settings->values[row] || strcmp(settings->values[row], settings_table[row].initial) == 0;
}

const SettingEntry *settings_entry_at(const spz_settings *settings, const char *section, size_t index)
{
    for (size_t i = 0; i < settings->entries.count; i++)
        if (strcmp(settings->entries.at[i].section, section) == 0 && index-- == 0)
            return &settings->entries.at[i];
    return NULL;
}

bool spz_settings_entry(const spz_settings *settings, const char *section, size_t index, const char **key, const char **value)
{
    const SettingEntry *entry = settings_entry_at(settings, section, index);
    if (!entry)
        return false;
    *key = entry->key;
    *value = entry->value;
    return true;
}

/* Is this entry the first of its section? */
static bool opens_section(const spz_settings *settings, size_t index)
{
    for (size_t i = 0; i < index; i++)
        if (strcmp(settings->entries.at[i].section, settings->entries.at[index].section) == 0)
            return false;
    return true;
}

const char *spz_settings_section(const spz_settings *settings, const char *prefix, size_t index)
{
    for (size_t i = 0; i < settings->entries.count; i++)
        if (strncmp(settings->entries.at[i].section, prefix, strlen(prefix)) == 0 && opens_section(settings, i) && index-- == 0)
            return settings->entries.at[i].section;
    return NULL;
}

spz_status settings_copy(const spz_settings *from, spz_settings **out)
{
    spz_status status = spz_settings_new(out);
    for (size_t i = 0; status == SPZ_OK && i < settings_table_count; i++)
        if (from->values[i])
            status = settings_put(*out, (long)i, from->values[i], from->numbers[i], from->places[i]);
    for (size_t i = 0; status == SPZ_OK && i < from->entries.count; i++)
        status = settings_add_entry(*out, &from->entries.at[i]);
    if (status == SPZ_OK && from->house && !((*out)->house = arena_string(&(*out)->arena, from->house)))
        status = SPZ_NO_MEMORY;
    return status;
}
