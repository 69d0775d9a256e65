/* Names of pages: each score has one of its own. */
#include "spezzato/report.h"
#include "support/memory.h"
#include "support/suite.h"
#include <string.h>

static spz_page_names *names_of(const char *const *paths, size_t count)
{
    static const char *const taken[] = {"index.html", "concert-1.html"};
    spz_page_names *names = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_page_names_make(paths, count, taken, COUNT(taken), &names), SPZ_OK);
    return names;
}

#define NAMED(path, name) CU_ASSERT_STRING_EQUAL(spz_page_names_of(names, path), name)

static void a_page_is_called_as_its_score(void)
{
    static const char *const paths[] = {"scores/symphony-1.mxl", "scores/symphony-2.mxl", "overture.in.d.musicxml", ".hidden"};
    spz_page_names *names = names_of(paths, COUNT(paths));
    NAMED("scores/symphony-1.mxl", "symphony-1.html");
    NAMED("overture.in.d.musicxml", "overture.in.d.html");
    NAMED(".hidden", ".hidden.html");
    CU_ASSERT_PTR_NULL(spz_page_names_of(names, "scores/symphony-3.mxl"));
    spz_page_names_free(names);
}

static void folders_tell_scores_of_one_name_apart(void)
{
    static const char *const paths[] = {"spring/score.mxl", "autumn/./score.mxl", "/a/b/../one/finale.mxl", "/a/c/one/finale.mxl", "/a/Finale.xml", "other.mxl"};
    spz_page_names *names = names_of(paths, COUNT(paths));
    NAMED("spring/score.mxl", "spring-score.html");
    NAMED("autumn/./score.mxl", "autumn-score.html");
    NAMED("/a/b/../one/finale.mxl", "b-one-finale.html");
    NAMED("/a/c/one/finale.mxl", "c-one-finale.html");
    NAMED("/a/Finale.xml", "a-Finale.html");
    NAMED("other.mxl", "other.html");
    spz_page_names_free(names);
}

static void a_number_does_where_folders_do_not(void)
{
    static const char *const paths[] = {"score.mxl", "score.xml", "score-2.mxl", "index.mxl", "INDEX-2.mxl", "x/Concert-1.mxl", "./score.musicxml"};
    spz_page_names *names = names_of(paths, COUNT(paths));
    NAMED("score.mxl", "score.html");
    NAMED("score.xml", "score-3.html");
    NAMED("score-2.mxl", "score-2.html");
    NAMED("./score.musicxml", "score-4.html");
    NAMED("index.mxl", "index-3.html");
    NAMED("INDEX-2.mxl", "INDEX-2.html");
    NAMED("x/Concert-1.mxl", "Concert-1-2.html");
    spz_page_names_free(names);
}

/* A folder in front may give a name that another has already. */
static void no_two_names_are_alike_whatever_the_folders(void)
{
    static const char *const paths[] = {"a/b.mxl", "c/b.mxl", "a-b.mxl", "d/a-b.mxl", "a/a/b.mxl", "a/b.xml"};
    spz_page_names *names = names_of(paths, COUNT(paths));
    for (size_t i = 0; i < COUNT(paths); i++)
        for (size_t k = 0; k < i; k++)
            CU_ASSERT_STRING_NOT_EQUAL(spz_page_names_of(names, paths[i]), spz_page_names_of(names, paths[k]));
    spz_page_names_free(names);
}

static void without_memory_there_are_no_names(void)
{
    static const char *const paths[] = {"a/b.mxl", "c/b.mxl", "index.mxl", "b.mxl"};
    static const char *const taken[] = {"index.html"};
    spz_page_names *names = NULL;
    spz_status status = SPZ_NO_MEMORY;
    long request = 1;
    for (; status == SPZ_NO_MEMORY && request < 100; request++) {
        CU_ASSERT_PTR_NULL(names);
        memory_starve_after(request);
        status = spz_page_names_make(paths, COUNT(paths), taken, COUNT(taken), &names);
        memory_starve_after(0);
    }
    CU_ASSERT_EQUAL(status, SPZ_OK);
    CU_ASSERT_TRUE(request > 2);
    spz_page_names_free(names);
}

void suite_page_names(void)
{
    static const struct Statement statements[] = {
        STATEMENT(a_page_is_called_as_its_score),
        STATEMENT(folders_tell_scores_of_one_name_apart),
        STATEMENT(a_number_does_where_folders_do_not),
        STATEMENT(no_two_names_are_alike_whatever_the_folders),
        STATEMENT(without_memory_there_are_no_names),
    };
    suite_of("names of pages", statements, COUNT(statements));
}
