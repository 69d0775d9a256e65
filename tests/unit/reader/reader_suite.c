/* The unofficial MusicXML test suite (MIT licence), file by file: support/suite_table.c says what each asks for. */
#include "support/suite.h"
#include "support/tables/suite_table.h"
#include <dirent.h>
#include <stdio.h>
#include <string.h>

static void every_file_of_the_suite_gives_what_its_description_asks_for(void)
{
    for (size_t i = 0; i < suite_case_count(); i++) {
        const SuiteCase *suite_case = suite_case_at(i);
        SuiteOutcome outcome;
        char name[300];
        snprintf(name, sizeof name, "suite/%s", suite_case->file);
        const char *path = shared_file(name);
        if (!path)
            return;
        suite_case_try(suite_case, path, &outcome);
        if (!outcome.as_asked)
            printf("  %s: %s; %zu parts, %zu bars, %zu sounds, %s crotchets, %d doubts %s\n", suite_case->file, spz_status_text(outcome.status),
                   outcome.parts, outcome.bars, outcome.sounds, outcome.length, outcome.doubts, outcome.said);
        CU_ASSERT_TRUE(outcome.as_asked);
    }
}

static void no_file_of_the_suite_is_left_out(void)
{
    const char *folder = shared_file("suite");
    DIR *dir = folder ? opendir(folder) : NULL;
    for (struct dirent *entry; dir && (entry = readdir(dir));) {
        size_t i = 0;
        if (!strstr(entry->d_name, ".xml") && !strstr(entry->d_name, ".mxl"))
            continue;
        while (i < suite_case_count() && strcmp(suite_case_at(i)->file, entry->d_name) != 0)
            i++;
        CU_ASSERT_TRUE(i < suite_case_count());
    }
    if (dir)
        closedir(dir);
}

static const struct Statement statements[] = {
    STATEMENT(every_file_of_the_suite_gives_what_its_description_asks_for),
    STATEMENT(no_file_of_the_suite_is_left_out),
};

void suite_reader_suite(void)
{
    suite_of("reader: the test suite", statements, COUNT(statements));
}
