#include "support/suite.h"
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

/* SPEZZATO_LEFT_OUT names suites that are not run, with commas between: those that are long arithmetic, where each step is watched. */
static bool left_out(const char *name)
{
    const char *list = getenv("SPEZZATO_LEFT_OUT");
    size_t length = strlen(name);
    for (; list && *list; list += strcspn(list, ","), list += *list == ',')
        if (strncmp(list, name, length) == 0 && (list[length] == ',' || !list[length]))
            return true;
    return false;
}

void suite_of(const char *name, const struct Statement *statements, size_t count)
{
    if (left_out(name))
        return;
    CU_pSuite suite = CU_add_suite(name, NULL, NULL);
    for (size_t i = 0; suite && i < count; i++)
        if (!CU_add_test(suite, statements[i].name, statements[i].test))
            suite = NULL;
    if (!suite) {
        fprintf(stderr, "the suite %s could not be set up\n", name);
        exit(2);
    }
}

enum { SKIPS_MOST = 2000 };
static struct Skip {
    CU_pTest test;
    const char *reason;
    bool first_of_test, told;
} skips[SKIPS_MOST];
static size_t skip_count;

void skipped(const char *reason)
{
    CU_pTest test = CU_get_current_test();
    size_t i = skip_count;
    for (; i > 0 && skips[i - 1].test == test; i--)
        if (!strcmp(skips[i - 1].reason, reason))
            return;
    if (skip_count < SKIPS_MOST)
        skips[skip_count] = (struct Skip){test, reason, i == skip_count, false};
    skip_count += skip_count < SKIPS_MOST;
}

static bool has_failed(CU_pTest test)
{
    for (CU_pFailureRecord failure = CU_get_failure_list(); failure; failure = failure->pNext)
        if (failure->pTest == test)
            return true;
    return false;
}

/* Tells the reason of skips[first], with how many tests share it, and marks them. */
static void tell_reason(size_t first)
{
    unsigned tests = 0;
    for (size_t i = first; i < skip_count; i++)
        if (!strcmp(skips[i].reason, skips[first].reason)) {
            tests += !has_failed(skips[i].test);
            skips[i].told = true;
        }
    if (tests > 0)
        printf("  skipped: %s (%u %s)\n", skips[first].reason, tests, tests == 1 ? "test" : "tests");
}

unsigned tell_skipped(void)
{
    unsigned tests = 0;
    for (size_t i = 0; i < skip_count; i++) {
        tests += skips[i].first_of_test && !has_failed(skips[i].test);
        if (!skips[i].told)
            tell_reason(i);
    }
    return tests;
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

const char *own_file(const char *name)
{
    static char paths[8][64];
    static unsigned calls;
    char *path = paths[calls++ % COUNT(paths)];
    const char *ending = strrchr(name, '.');
    int length = ending ? (int)(ending - name) : (int)strlen(name);
    snprintf(path, sizeof paths[0], "%.*s-%ld%s", length, name, (long)getpid(), ending ? ending : "");
    return path;
}
