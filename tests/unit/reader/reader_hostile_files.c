/* The files of tests/data/hostile, each named STATUS.FAULT.ext: what fuzzing, and thought, found. Each ends in the status of its name, with one
 * sentence for the user when it is refused. */
#include "spezzato/score.h"
#include "spezzato/settings.h"
#include "support/suite.h"
#include <dirent.h>
#include <stdio.h>
#include <string.h>

static const struct {
    const char *name;
    spz_status status;
} statuses[] = {
    {"fine.", SPZ_OK},           {"empty.", SPZ_EMPTY},           {"not-xml.", SPZ_NOT_XML},   {"not-musicxml.", SPZ_NOT_MUSICXML},
    {"bad-archive.", SPZ_BAD_ARCHIVE}, {"over-limit.", SPZ_OVER_LIMIT}, {"bad-music.", SPZ_BAD_MUSIC}, {"bad-settings.", SPZ_BAD_SETTINGS},
};

static int errors;

static void hear(void *context, const spz_message *message)
{
    (void)context;
    errors += message->severity == SPZ_ERROR;
    CU_ASSERT_PTR_NULL(strchr(message->text, '\n'));
}

static spz_status expected_of(const char *file)
{
    for (size_t i = 0; i < COUNT(statuses); i++)
        if (strncmp(file, statuses[i].name, strlen(statuses[i].name)) == 0)
            return statuses[i].status;
    return SPZ_STATUS_COUNT;
}

static spz_status status_of(const char *path)
{
    spz_sink sink = {hear, NULL};
    spz_status status;
    if (strstr(path, ".ini")) {
        spz_settings *settings = NULL;
        CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
        status = spz_settings_read(settings, path, &sink);
        spz_settings_free(settings);
    } else {
        spz_score *score = NULL;
        status = spz_score_read(path, &sink, &score);
        spz_score_free(score);
    }
    return status;
}

static void every_hostile_file_ends_as_its_name_says(void)
{
    int files = 0;
    DIR *dir = opendir("tests/data/hostile");
    CU_ASSERT_PTR_NOT_NULL_FATAL(dir);
    for (struct dirent *entry; (entry = readdir(dir));) {
        char path[512];
        if (entry->d_name[0] == '.')
            continue;
        snprintf(path, sizeof path, "tests/data/hostile/%s", entry->d_name);
        errors = 0;
        files++;
        spz_status status = status_of(path), expected = expected_of(entry->d_name);
        if (status != expected || errors != (expected != SPZ_OK))
            printf("  %s: %s, %d sentences\n", entry->d_name, spz_status_text(status), errors);
        CU_ASSERT_EQUAL(status, expected);
        CU_ASSERT_EQUAL(errors, expected != SPZ_OK);
    }
    closedir(dir);
    CU_ASSERT_TRUE(files >= 60);
}

static const struct Statement statements[] = {
    STATEMENT(every_hostile_file_ends_as_its_name_says),
};

void suite_reader_hostile_files(void)
{
    suite_of("reader: hostile files on disk", statements, COUNT(statements));
}
