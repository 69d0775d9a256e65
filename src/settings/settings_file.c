/* Settings files: libinih cuts the lines into sections, keys and values; here they are checked against the table and taken
 * over as a whole or not at all.
 *
 * libinih joins an indented line to the value before it, cuts lines and section names at fixed lengths without a word, and
 * doesn't tell its handler the line. So it reads through `next_line`, which counts lines, takes indentation off and refuses what would
 * be cut. */
#include "settings/store.h"
#include "support/message.h"
#include <errno.h>
#include <ini.h>
#include <stdio.h>
#include <string.h>

enum {
    SECTION_LIMIT = 49,   /* libinih's own */
    LINE_COUNT_LIMIT = 100000 /* no settings file of an orchestra is longer */
};

typedef struct SettingsFile {
    FILE *file;
    const char *path;
    const spz_sink *sink;
    spz_settings *settings; /* the fresh copy that is being filled */
    long line;
    spz_status status;
} SettingsFile;

static void fault(SettingsFile *reading, long line, const char *what, const char *detail)
{
    spz_message place = { .severity = SPZ_ERROR, .file = reading->path, .line = line };
    message_send(reading->sink, &place, what, detail);
    if (reading->status == SPZ_OK)
        reading->status = SPZ_BAD_SETTINGS;
}

static void skip_rest(FILE *file)
{
    int c;
    do
        c = getc(file);
    while (c != EOF && c != '\n');
}

/* Says what is wrong with the form of a line. */
static bool line_is_faulty(SettingsFile *reading, const char *line)
{
    static const char byte_order_mark[] = "\xEF\xBB\xBF";
    if (reading->line == 1 && strncmp(line, byte_order_mark, 3) == 0)
        line += 3;
    size_t name = line[0] == '[' ? strcspn(line + 1, "]") : 0;
    if (line[0] == '\0' || strchr(";#\r\n", line[0]))
        return false;
    if (line[0] == '[' && !line[1 + name])
        fault(reading, reading->line, "the name of this section has no closing bracket%s", "");
    else if (name > SECTION_LIMIT)
        fault(reading, reading->line, "the name of this section is too long%s", "");
    else if (line[0] != '[' && !strpbrk(line, "=:"))
        fault(reading, reading->line, "this is neither '[section]' nor 'key = value'%s", "");
    else
        return false;
    return true;
}

/* One line without its indentation into `line`; an empty one in place of what can't be used. */
static char *next_line(char *line, int size, void *context)
{
    SettingsFile *reading = context;
    if (reading->line >= LINE_COUNT_LIMIT || !fgets(line, size, reading->file))
        return NULL;
    reading->line++;
    size_t length = strlen(line);
    bool cut = length + 1 == (size_t)size && line[length - 1] != '\n';
    if (cut) {
        skip_rest(reading->file);
        fault(reading, reading->line, "the line is too long%s", "");
        line[0] = '\0';
    }
    char *start = line + strspn(line, " \t");
    if (line_is_faulty(reading, start))
        *start = '\0';
    memmove(line, start, strlen(start) + 1);
    return line;
}

static int take_entry(SettingsFile *reading, const char *section, const char *key, const char *value)
{
    SettingEntry entry = { section, key, value, reading->path, reading->line };
    spz_status status = settings_add_entry(reading->settings, &entry);
    if (status != SPZ_OK)
        reading->status = status;
    return status == SPZ_OK;
}

static bool section_known(const char *section)
{
    for (size_t i = 0; i < settings_table_count; i++)
        if (strcmp(settings_table[i].section, section) == 0)
            return true;
    return false;
}

static void unknown_key(SettingsFile *reading, const char *section, const char *key)
{
    char text[300], meant[120], whole[120];
    spz_guess language = {.word = key};
    if (!*section)
        snprintf(text, sizeof text, "'%.60s' stands before the first [section]%s", key, spz_guess_look(&language, "language") ? "; is 'language' meant?" : "");
    else if (section_known(section)) {
        snprintf(whole, sizeof whole, "%.49s.%.60s", section, key);
        snprintf(text, sizeof text, "there is no setting '%.60s' in [%s]%s", key, section, settings_meant(whole, meant, sizeof meant));
    } else
        snprintf(text, sizeof text, "there is no section [%s]", section);
    fault(reading, reading->line, "%s", text);
}

static int take_value(SettingsFile *reading, const char *section, const char *key, const char *value)
{
    char text[200], whole[420];
    double number;
    bool bare = !*section && !strcmp(key, "language"); /* the one key that may stand before every section */
    long row = settings_row(bare ? "house" : section, key);
    if (row < 0) {
        unknown_key(reading, section, key);
        return 0;
    }
    const char *wrong = settings_value_fault(&settings_table[row], value, &number, text, sizeof text);
    if (wrong) {
        snprintf(whole, sizeof whole, "'%s' in [%s] %s, not '%s'", key, section, wrong, value);
        fault(reading, reading->line, "%s", whole);
        return 0;
    }
    spz_status status = settings_put(reading->settings, row, value, number, (SettingPlace){reading->path, reading->line});
    if (status != SPZ_OK)
        reading->status = status;
    return status == SPZ_OK;
}

static int take_line(void *context, const char *section, const char *key, const char *value)
{
    SettingsFile *reading = context;
    if (reading->status == SPZ_NO_MEMORY)
        return 0;
    return settings_section_is_free(section) ? take_entry(reading, section, key, value) : take_value(reading, section, key, value);
}

/* One line about a file that is no settings file at all, rather than one for each of its lines. */
static bool is_foreign(SettingsFile *reading)
{
    int first = getc(reading->file);
    bool foreign = first == '<' || first == 'P' ? (first == '<' || getc(reading->file) == 'K') : false;
    rewind(reading->file);
    if (foreign)
        fault(reading, 0, "this is a score or another document, no settings file%s", "");
    return foreign;
}

static spz_status read_lines(SettingsFile *reading)
{
    if (is_foreign(reading))
        return reading->status;
    int first_fault = ini_parse_stream(next_line, reading, take_line, reading);
    if (ferror(reading->file)) {
        fault(reading, 0, "reading stopped: %s", message_cause(errno));
        return SPZ_CANNOT_READ;
    }
    if (reading->line >= LINE_COUNT_LIMIT)
        fault(reading, reading->line, "the file is too long%s", "");
    if (first_fault > 0 && reading->status == SPZ_OK)
        fault(reading, first_fault, "this line can't be understood%s", "");
    if (first_fault < 0 && reading->status == SPZ_OK)
        reading->status = SPZ_NO_MEMORY;
    return reading->status;
}

spz_status spz_settings_read_house(spz_settings *settings, const char *path, const char *name, const spz_sink *sink)
{
    spz_status status = spz_settings_read(settings, path, sink);
    if (status == SPZ_OK && !(settings->house = arena_string(&settings->arena, name)))
        status = SPZ_NO_MEMORY;
    return status;
}

const char *spz_settings_house(const spz_settings *settings)
{
    return settings ? settings->house : NULL;
}

spz_status spz_settings_read(spz_settings *settings, const char *path, const spz_sink *sink)
{
    SettingsFile reading = { fopen(path, "r"), path, sink, NULL, 0, SPZ_OK };
    if (!reading.file) {
        fault(&reading, 0, "the settings file can't be opened: %s", message_cause(errno));
        return SPZ_CANNOT_OPEN;
    }
    spz_status status = settings_copy(settings, &reading.settings);
    if (status == SPZ_OK)
        status = read_lines(&reading);
    if (status == SPZ_OK) {
        spz_settings old = *settings;
        *settings = *reading.settings;
        *reading.settings = old;
    }
    spz_settings_free(reading.settings);
    fclose(reading.file);
    return status;
}
