/* unit_main.c - runs every suite (the list is made by the Makefile from tests/unit/), or those whose files are named, and fails when any statement fails.
 *
 *     unit-tests [NAME...]        NAME: of a file of tests/unit, without its ending */
#include "support/suite.h"
#include <CUnit/Basic.h>
#include <locale.h>
#include <stdio.h>
#include <string.h>

static char **names;
static int name_count;

bool suite_wanted(const char *file)
{
    bool named = name_count == 0;
    for (int i = 0; i < name_count && !named; i++)
        named = strcmp(names[i], file) == 0;
    return named;
}

int main(int argc, char **argv)
{
    names = argv + 1;
    name_count = argc - 1;
    setlocale(LC_ALL, "C");
    if (CU_initialize_registry() != CUE_SUCCESS)
        return 2;
    all_suites();
    CU_basic_set_mode(CU_BRM_NORMAL);
    CU_basic_run_tests();
    unsigned failures = CU_get_number_of_failures() + CU_get_number_of_suites_failed();
    unsigned run = CU_get_number_of_tests_run(), failed = CU_get_number_of_tests_failed(), skips = tell_skipped();
    printf("tests: %u passed, %u failed, %u skipped\n", run - failed - skips, failed, skips);
    CU_cleanup_registry();
    if (run == 0) {
        puts("no test was run");
        return 1;
    }
    return failures != 0;
}
