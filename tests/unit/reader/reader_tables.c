/* Independent readings of real scores: the tables of the OpenScore Orchestra corpus (Gotham and others), beside the shared scores. */
#include "spezzato/score.h"
#include "support/tables/note_table.h"
#include "support/suite.h"
#include <dirent.h>
#include <stdio.h>
#include <string.h>

/* Reads NAME.mxl and compares it with NAME.csv; false when there is no such table. */
static bool compare(const char *name, NoteTableResult *result)
{
    char file[300];
    spz_score *score = NULL;
    snprintf(file, sizeof file, "scores/%.250s.mxl", name);
    const char *path = shared_file(file);
    CU_ASSERT_EQUAL_FATAL(spz_score_read(path ? path : "", NULL, &score), SPZ_OK);
    snprintf(file, sizeof file, "scores/%.250s.csv", name);
    path = shared_file(file);
    bool done = path && note_table_compare(path, spz_score_movement(score, 0), result);
    spz_score_free(score);
    return done;
}

static void every_difference_from_the_independent_tables_is_one_of_their_known_habits(void)
{
    const char *folder = shared_file("scores");
    DIR *dir = folder ? opendir(folder) : NULL;
    long compared = 0, unexplained = 0;
    for (struct dirent *entry; dir && (entry = readdir(dir));) {
        char name[300];
        NoteTableResult result;
        size_t length = strlen(entry->d_name);
        if (length < 5 || length > 250 || strcmp(entry->d_name + length - 4, ".mxl") != 0)
            continue;
        snprintf(name, sizeof name, "%.*s", (int)(length - 4), entry->d_name);
        CU_ASSERT_TRUE(compare(name, &result));
        CU_ASSERT_TRUE(result.moments > 900);
        CU_ASSERT_TRUE(result.agreeing * 100 >= result.compared * 98);
        compared += result.compared;
        unexplained += result.unexplained;
    }
    if (dir)
        closedir(dir);
    if (folder)
        CU_ASSERT_TRUE(compared > 900000);
    CU_ASSERT_TRUE(unexplained <= compared / 100000);
}

static const struct Statement statements[] = {
    STATEMENT(every_difference_from_the_independent_tables_is_one_of_their_known_habits),
};

void suite_reader_tables(void)
{
    suite_of("reader: independent tables", statements, COUNT(statements));
}
