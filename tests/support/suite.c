#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

void suite_of(const char *name, const struct Statement *statements, size_t count)
{
    CU_pSuite suite = CU_add_suite(name, NULL, NULL);
    for (size_t i = 0; suite && i < count; i++)
        if (!CU_add_test(suite, statements[i].name, statements[i].test))
            suite = NULL;
    if (!suite) {
        fprintf(stderr, "the suite %s could not be set up\n", name);
        exit(2);
    }
}

enum { REASONS_MOST = 16 };
static struct Skip {
    const char *reason;
    unsigned tests;
    CU_pTest last; /* a test counts once for a reason */
} skips[REASONS_MOST];
static CU_pTest last_skipped;
static unsigned tests_skipped;

void skipped(const char *reason)
{
    CU_pTest test = CU_get_current_test();
    struct Skip *skip = skips;
    while (skip < skips + REASONS_MOST - 1 && skip->reason && strcmp(skip->reason, reason) != 0)
        skip++;
    skip->reason = reason;
    skip->tests += skip->last != test;
    skip->last = test;
    tests_skipped += test != last_skipped;
    last_skipped = test;
}

unsigned tell_skipped(void)
{
    for (const struct Skip *skip = skips; skip < skips + REASONS_MOST && skip->reason; skip++)
        printf("  skipped: %s (%u %s)\n", skip->reason, skip->tests, skip->tests == 1 ? "test" : "tests");
    return tests_skipped;
}

const char *shared_file(const char *name)
{
    static char path[1024];
    const char *top = getenv("SPEZZATO_SHARED");
    snprintf(path, sizeof path, "%s/%s", top ? top : "../shared", name);
    if (access(path, R_OK) == 0)
        return path;
    skipped(access(top ? top : "../shared", R_OK) == 0 ? "a file of the shared folder is not at hand" : "the shared folder is not at hand");
    return NULL;
}
