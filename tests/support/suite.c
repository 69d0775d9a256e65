#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
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

const char *shared_file(const char *name)
{
    static char path[1024];
    static int said;
    const char *top = getenv("SPEZZATO_SHARED");
    snprintf(path, sizeof path, "%s/%s", top ? top : "../shared", name);
    if (access(path, R_OK) == 0)
        return path;
    if (!said++)
        printf("  skipped: the shared folder is not at hand\n");
    return NULL;
}
