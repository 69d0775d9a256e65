/* suite - reads every file of the unofficial MusicXML test suite (the folder given) and prints what came of it as Markdown. Exit status 1 when a
 * file does not give what its description asks for. */
#include "support/tables/suite_table.h"
#include <stdio.h>

int main(int argc, char **argv)
{
    size_t met = 0, count = suite_case_count();
    if (argc != 2) {
        fprintf(stderr, "usage: suite FOLDER\n");
        return 2;
    }
    printf("# The unofficial MusicXML test suite, file by file\n\n"
           "Made by `make suite-table`; not written by hand. The suite is MIT licensed. Each file states in its own description what it is for; what that\n"
           "means for an analysis of notes stands in the second column and is checked by `make check` (tests/support/tables/suite_table.c). `sounds` are the\n"
           "notes of all parts, tied notes joined; `length` is in crotchets.\n\n"
           "| file | what it asks for | parts | bars | sounds | length | reported | met |\n|---|---|---|---|---|---|---|---|\n");
    for (size_t i = 0; i < count; i++) {
        const SuiteCase *suite_case = suite_case_at(i);
        SuiteOutcome outcome;
        char path[4096];
        snprintf(path, sizeof path, "%.3000s/%.300s", argv[1], suite_case->file);
        suite_case_try(suite_case, path, &outcome);
        met += outcome.as_asked;
        if (outcome.status != SPZ_OK)
            snprintf(outcome.said, sizeof outcome.said, "refused: %s", spz_status_text(outcome.status));
        printf("| %s | %s | %zu | %zu | %zu | %s | %s | %s |\n", suite_case->file, suite_case->asked, outcome.parts, outcome.bars, outcome.sounds,
               outcome.length, outcome.said, outcome.as_asked ? "yes" : "NO");
    }
    printf("\n%zu of %zu files give what they ask for.\n", met, count);
    return met != count;
}
