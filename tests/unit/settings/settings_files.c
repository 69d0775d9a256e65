/* Settings: the table, values, and files. */
#include "settings/settings_table.h"
#include "spezzato/settings.h"
#include "support/memory.h"
#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

typedef struct Said {
    char text[600];
    long line;
    int errors;
} Said;

static void listen(void *context, const spz_message *message)
{
    Said *said = context;
    if (said->errors++ == 0) {
        snprintf(said->text, sizeof said->text, "%s", message->text);
        said->line = message->line;
    }
}

/* Reads `text` as a settings file over `settings`. */
static spz_status read_text(spz_settings *settings, const char *text, size_t length, Said *said)
{
    char path[512];
    const char *folder = getenv("TMPDIR");
    snprintf(path, sizeof path, "%s/spezzato-settings-XXXXXX", folder && strlen(folder) < 400 ? folder : ".");
    *said = (Said){ "", 0, 0 };
    spz_sink sink = { listen, said };
    int file = mkstemp(path);
    CU_ASSERT_TRUE_FATAL(file >= 0);
    CU_ASSERT_EQUAL_FATAL(write(file, text, length), (ssize_t)length);
    close(file);
    spz_status status = spz_settings_read(settings, path, &sink);
    unlink(path);
    return status;
}

static spz_settings *fresh(void)
{
    spz_settings *settings = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    return settings;
}

static void every_setting_has_a_default_in_its_range_and_says_what_it_means(void)
{
    spz_settings *settings = fresh();
    CU_ASSERT_TRUE(spz_setting_count() > 5);
    for (size_t i = 0; i < spz_setting_count(); i++) {
        const spz_setting *setting = spz_setting_at(i);
        char name[100];
        snprintf(name, sizeof name, "%s.%s", setting->section, setting->key);
        if (spz_settings_set(settings, name, setting->initial, NULL) != SPZ_OK)
            printf("\n    the default of %s can't be set", name);
        CU_ASSERT_EQUAL(spz_settings_set(settings, name, setting->initial, NULL), SPZ_OK);
        CU_ASSERT_TRUE(spz_settings_is_default(settings, name));
        CU_ASSERT_STRING_EQUAL(spz_settings_text(settings, name), setting->initial);
        CU_ASSERT_TRUE(setting->meaning[0] != '\0');
        CU_ASSERT_TRUE(setting->kind != SPZ_NUMBER || setting->least < setting->most);
        CU_ASSERT_TRUE(setting->kind != SPZ_WORD || strchr(setting->words, '|'));
        CU_ASSERT_PTR_NOT_NULL(setting->unit);
        CU_ASSERT_PTR_NOT_NULL(setting->source);
        for (size_t k = 0; k < i; k++)
            CU_ASSERT_FALSE(strcmp(setting->section, spz_setting_at(k)->section) == 0 && strcmp(setting->key, spz_setting_at(k)->key) == 0);
    }
    CU_ASSERT_PTR_NULL(spz_setting_at(spz_setting_count()));
    spz_settings_free(settings);
}

static void numbers_may_have_a_point_or_a_comma(void)
{
    spz_settings *settings = fresh();
    CU_ASSERT_EQUAL(spz_settings_set(settings, "stage.width", "17.5", NULL), SPZ_OK);
    CU_ASSERT_DOUBLE_EQUAL(spz_settings_number(settings, "stage.width"), 17.5, 1e-12);
    CU_ASSERT_EQUAL(spz_settings_set(settings, "stage.width", "18,25", NULL), SPZ_OK);
    CU_ASSERT_DOUBLE_EQUAL(spz_settings_number(settings, "stage.width"), 18.25, 1e-12);
    CU_ASSERT_FALSE(spz_settings_is_default(settings, "stage.width"));
    CU_ASSERT_STRING_EQUAL(spz_settings_text(settings, "stage.width"), "18,25");
    spz_settings_free(settings);
}

static void values_out_of_range_and_unknown_names_are_refused(void)
{
    static const char *const bad[][2] = {
        { "stage.width", "0" }, { "stage.width", "1000" }, { "stage.width", "wide" }, { "stage.width", "" }, { "stage.width", "12 m" },
        { "stage.width", "1.2.3" }, { "stage.width", "-" }, { "stage.width", "1e1" }, { "stage.width", "nan" }, { "stage.width", "99999999999999999999" },
        { "hall.sound", "boomy" }, { "hall.sound", "" }, { "hall.sound", "dry|clear" }, { "hall.sound", "Dry" }, { "stage.wdith", "18" }, { "width", "18" }, { "", "" },
    };
    spz_settings *settings = fresh();
    for (size_t i = 0; i < COUNT(bad); i++) {
        Said said = { "", 0, 0 };
        spz_sink sink = { listen, &said };
        CU_ASSERT_EQUAL(spz_settings_set(settings, bad[i][0], bad[i][1], &sink), SPZ_BAD_SETTINGS);
        CU_ASSERT_EQUAL(said.errors, 1);
    }
    CU_ASSERT_TRUE(spz_settings_is_default(settings, "stage.width"));
    CU_ASSERT_EQUAL(spz_settings_number(settings, "no.such"), 0);
    CU_ASSERT_STRING_EQUAL(spz_settings_text(settings, "no.such"), "");
    CU_ASSERT_FALSE(spz_settings_flag(settings, "stage.width"));
    spz_settings_free(settings);
}

static void a_file_sets_values_and_keeps_the_users_own_entries_in_order(void)
{
    static const char text[] = "\xEF\xBB\xBF; our house\n[stage]\nwidth = 20\n  depth=12 ; deep\n\n[sections]\nOboe d'amore = woodwind\nViolins = Vn I staff 1\n"
                               "Violins = Vn II staff 2\n[arrangement ours]\norder = Vn I, Va, Vc, Vn II\n[arrangement theirs]\norder = Vn I\n# end\n";
    Said said;
    const char *key, *value;
    spz_settings *settings = fresh();
    CU_ASSERT_EQUAL(read_text(settings, text, sizeof text - 1, &said), SPZ_OK);
    CU_ASSERT_EQUAL(said.errors, 0);
    CU_ASSERT_EQUAL(spz_settings_number(settings, "stage.width"), 20);
    CU_ASSERT_EQUAL(spz_settings_number(settings, "stage.depth"), 12);
    CU_ASSERT_TRUE(spz_settings_entry(settings, "sections", 0, &key, &value));
    CU_ASSERT_STRING_EQUAL(key, "Oboe d'amore");
    CU_ASSERT_STRING_EQUAL(value, "woodwind");
    CU_ASSERT_TRUE(spz_settings_entry(settings, "sections", 2, &key, &value));
    CU_ASSERT_STRING_EQUAL(value, "Vn II staff 2");
    CU_ASSERT_FALSE(spz_settings_entry(settings, "sections", 3, &key, &value));
    CU_ASSERT_STRING_EQUAL(spz_settings_section(settings, "arrangement ", 0), "arrangement ours");
    CU_ASSERT_STRING_EQUAL(spz_settings_section(settings, "arrangement ", 1), "arrangement theirs");
    CU_ASSERT_PTR_NULL(spz_settings_section(settings, "arrangement ", 2));
    spz_settings_free(settings);
}

struct BadFile {
    const char *text;
    long line;
    const char *says; /* part of the message */
};

static void a_mistake_is_reported_with_its_line_and_nothing_is_taken(void)
{
    static const struct BadFile files[] = {
        { "[stage]\nwidth = 20\nwidht = 3\n", 3, "widht" }, { "[stage]\n\nwidth = 400\n", 3, "400" }, { "[stage]\nwidth = 20\nnonsense\n", 3, "key = value" },
        { "[stgae]\nwidth = 20\n", 2, "[stgae]" }, { "width = 20\n", 1, "before the first" }, { "[stage\nwidth = 20\n", 1, "bracket" },
        { "[hall]\nsound = loud\n", 2, "dry, clear, blurred" }, { "[arrangement ]\norder = Vn I\n", 2, "arrangement" },
        { "[stage]\nwidth = 20\n[0123456789012345678901234567890123456789012345678901234567890]\n", 3, "too long" },
    };
    for (size_t i = 0; i < COUNT(files); i++) {
        Said said;
        spz_settings *settings = fresh();
        CU_ASSERT_EQUAL(spz_settings_set(settings, "stage.width", "19", NULL), SPZ_OK);
        CU_ASSERT_EQUAL(read_text(settings, files[i].text, strlen(files[i].text), &said), SPZ_BAD_SETTINGS);
        CU_ASSERT_EQUAL(said.line, files[i].line);
        if (!strstr(said.text, files[i].says))
            printf("\n    '%s' doesn't speak of '%s'", said.text, files[i].says);
        CU_ASSERT_PTR_NOT_NULL(strstr(said.text, files[i].says));
        CU_ASSERT_EQUAL(spz_settings_number(settings, "stage.width"), 19);
        spz_settings_free(settings);
    }
}

static void lines_too_long_are_refused_rather_than_cut(void)
{
    char text[2000] = "[sections]\n";
    Said said;
    spz_settings *settings = fresh();
    memset(text + strlen(text), 'x', 400);
    strcat(text, " = Vn I\n");
    CU_ASSERT_EQUAL(read_text(settings, text, strlen(text), &said), SPZ_BAD_SETTINGS);
    CU_ASSERT_EQUAL(said.line, 2);
    CU_ASSERT_PTR_NOT_NULL(strstr(said.text, "too long"));
    spz_settings_free(settings);
}

static void broken_bytes_do_no_harm(void)
{
    static const char text[] = "[stage]\nwi\0dth = 20\n\xff\xfe = 3\n";
    Said said;
    spz_settings *settings = fresh();
    CU_ASSERT_EQUAL(read_text(settings, text, sizeof text - 1, &said), SPZ_BAD_SETTINGS);
    CU_ASSERT_TRUE(spz_settings_is_default(settings, "stage.width"));
    CU_ASSERT_EQUAL(read_text(settings, "", 0, &said), SPZ_OK);
    spz_settings_free(settings);
}

static void a_file_that_is_not_there_is_said_so(void)
{
    Said said = { "", 0, 0 };
    spz_sink sink = { listen, &said };
    spz_settings *settings = fresh();
    CU_ASSERT_EQUAL(spz_settings_read(settings, "no such file.ini", &sink), SPZ_CANNOT_OPEN);
    CU_ASSERT_EQUAL(said.errors, 1);
    CU_ASSERT_EQUAL(spz_settings_read(settings, ".", &sink), SPZ_CANNOT_READ); /* a folder */
    CU_ASSERT_EQUAL(said.errors, 2);
    spz_settings_free(settings);
}

static void a_second_file_adds_to_the_first(void)
{
    Said said;
    const char *key, *value;
    spz_settings *settings = fresh();
    static const char first[] = "[stage]\nwidth = 20\ndepth = 12\n[sections]\nA = Va\n", second[] = "[stage]\nwidth = 21\n[sections]\nB = Vc\n";
    CU_ASSERT_EQUAL(read_text(settings, first, sizeof first - 1, &said), SPZ_OK);
    CU_ASSERT_EQUAL(read_text(settings, second, sizeof second - 1, &said), SPZ_OK);
    CU_ASSERT_EQUAL(spz_settings_number(settings, "stage.width"), 21);
    CU_ASSERT_EQUAL(spz_settings_number(settings, "stage.depth"), 12);
    CU_ASSERT_TRUE(spz_settings_entry(settings, "sections", 1, &key, &value));
    CU_ASSERT_STRING_EQUAL(key, "B");
    spz_settings_free(settings);
}

static void reading_without_memory_leaves_the_settings_as_they_were(void)
{
    static const char text[] = "[stage]\nwidth = 20\n[sections]\nA = Va\n";
    Said said;
    spz_settings *settings = fresh();
    long requests = 1;
    spz_status status = SPZ_NO_MEMORY;
    for (; status != SPZ_OK && requests < 100; requests++) {
        memory_starve_after(requests);
        status = read_text(settings, text, sizeof text - 1, &said);
        memory_starve_after(0);
        CU_ASSERT_TRUE(status == SPZ_OK || status == SPZ_NO_MEMORY);
        CU_ASSERT_EQUAL(spz_settings_is_default(settings, "stage.width"), status != SPZ_OK);
    }
    CU_ASSERT_TRUE(requests > 3);
    CU_ASSERT_EQUAL(status, SPZ_OK);
    spz_settings_free(settings);
    spz_settings_free(NULL);
}

void suite_settings_files(void);
void suite_settings_files(void)
{
    static const struct Statement statements[] = {
        STATEMENT(every_setting_has_a_default_in_its_range_and_says_what_it_means),
        STATEMENT(numbers_may_have_a_point_or_a_comma),
        STATEMENT(values_out_of_range_and_unknown_names_are_refused),
        STATEMENT(a_file_sets_values_and_keeps_the_users_own_entries_in_order),
        STATEMENT(a_mistake_is_reported_with_its_line_and_nothing_is_taken),
        STATEMENT(lines_too_long_are_refused_rather_than_cut),
        STATEMENT(broken_bytes_do_no_harm),
        STATEMENT(a_file_that_is_not_there_is_said_so),
        STATEMENT(a_second_file_adds_to_the_first),
        STATEMENT(reading_without_memory_leaves_the_settings_as_they_were),
    };
    suite_of("settings and their files", statements, COUNT(statements));
}
