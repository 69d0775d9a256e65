/* suite.h - how a file of tests/unit names its tests: statements about music, one a line.
 *
 *     static const struct Statement statements[] = { STATEMENT(a_tied_note_sounds_once), ... };
 *     void suite_streams(void) { suite_of("streams", statements, COUNT(statements)); }
 */
#ifndef TESTS_SUITE_H
#define TESTS_SUITE_H
#include <CUnit/CUnit.h>
#include <stdbool.h>
#include <stddef.h>

struct Statement {
    const char *name;
    void (*test)(void);
};
#define STATEMENT(name) { #name, name }
#define COUNT(array) (sizeof(array) / sizeof((array)[0]))

void suite_of(const char *name, const struct Statement *statements, size_t count);

/* The test under way can't be run here, or not in full, for this reason (a text for ever); it is counted apart. */
void skipped(const char *reason);
/* Path of a file in the shared folder, or NULL when it is absent: then the test counts as skipped. */
const char *shared_file(const char *name);

/* Where a test may write in the working folder: the name with the number of the process before its ending, so that runs at one time don't meet. Good until
 * the eighth call after. */
const char *own_file(const char *name);

/* Every suite that is wanted, in the order of the files (made by the Makefile); whether the file's was asked for. */
void all_suites(void);
bool suite_wanted(const char *file);

/* What was skipped so far: prints a line for each reason; how many tests. One that has failed in spite of it is no skip. */
unsigned tell_skipped(void);
#endif
