/* The library through its public door: what is kept is found again by each condition, and a shortage of memory loses nothing. */
#include "spezzato/library.h"
#include "support/memory.h"
#include "support/suite.h"
#include <stdio.h>
#include <string.h>
#include <unistd.h>

static const char *const scores[] = {"corpus/caldremi-grosso-1.musicxml", "corpus/scarrowmere-fell-and-mere.musicxml", "corpus/tolvesk-ecluses-2.mxl"};
static const char library_name[] = "library-questions.tmp";

static spz_library *filled(void)
{
    spz_library *library = NULL;
    spz_added added;
    unlink(own_file(library_name));
    CU_ASSERT_EQUAL_FATAL(spz_library_open(own_file(library_name), SPZ_LIBRARY_CHANGE, NULL, &library), SPZ_OK);
    CU_ASSERT_EQUAL(spz_library_add(library, scores, COUNT(scores), NULL, NULL, &added), SPZ_OK);
    CU_ASSERT_EQUAL(added.heard, COUNT(scores));
    return library;
}

static void leave(spz_library *library)
{
    spz_library_free(library);
    unlink(own_file(library_name));
}

static size_t found(spz_library *library, const spz_conditions *conditions)
{
    spz_shelf *shelf = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_library_find(library, conditions, 3, &shelf), SPZ_OK);
    size_t count = spz_shelf_count(shelf);
    spz_shelf_free(shelf);
    return count;
}

static void each_condition_finds_what_meets_it(void)
{
    static const struct { const char *what; spz_conditions conditions; size_t works; } cases[] = {
        {"everything", {0}, 3},
        {"composer", {.composer = "CALDREMI"}, 1},
        {"composed from", {.from = 1911}, 2},
        {"composed before", {.before = 1911}, 1},
        {"two orchestras", {.two_orchestras = true}, 1},
        {"violins in three", {.thirds = true}, 1},
        {"at most three minutes", {.longest = 3}, 2},
        {"at least three minutes", {.shortest = 3}, 1},
        {"one second violin", {.players = {0, 1}}, 1},
        {"more seconds than one", {.players = {0, 1}, .too_large = true}, 2},
        {"words of the title", {.title = "fell and"}, 1},
        {"a quotation mark", {.title = "' OR '1'='1"}, 0},
        {"recommended", {.seating = "violins together, violas outside|violins together, cellos outside"}, 1},
        {"divided in three", {.kinds = 1u << SPZ_DIV3, .strength = 0.5}, 1},
        {"kinds that nobody knows", {.kinds = 1u << 31}, 0},
        {"Vn II leads Vn III", {.between = {SPZ_VN2, SPZ_VN3}, .led = true, .kinds = 1u << SPZ_EXCHANGE}, 0},
        {"Vn III leads Vn II", {.between = {SPZ_VN3, SPZ_VN2}, .led = true, .kinds = 1u << SPZ_EXCHANGE}, 1},
    };
    spz_library *library = filled();
    for (size_t i = 0; i < COUNT(cases); i++) {
        size_t works = found(library, &cases[i].conditions);
        if (works != cases[i].works)
            printf("\n  %s: %zu works, not %zu\n", cases[i].what, works, cases[i].works);
        CU_ASSERT_EQUAL(works, cases[i].works);
    }
    leave(library);
}

/* Only what is listed is read; how many there are is told all the same. */
static void the_first_of_many_are_those_of_the_whole_list(void)
{
    spz_library *library = filled();
    spz_shelf *all = NULL, *first = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_library_find(library, &(spz_conditions){.strength = 0.5}, 5, &all), SPZ_OK);
    CU_ASSERT_TRUE_FATAL(spz_shelf_count(all) > 1);
    CU_ASSERT_EQUAL_FATAL(spz_library_find(library, &(spz_conditions){.strength = 0.5, .first = 1}, 5, &first), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_shelf_count(first), 1);
    CU_ASSERT_EQUAL(spz_shelf_total(first), spz_shelf_count(all));
    CU_ASSERT_EQUAL(spz_shelf_total(all), spz_shelf_count(all));
    CU_ASSERT_STRING_EQUAL(spz_shelf_at(first, 0)->name, spz_shelf_at(all, 0)->name);
    CU_ASSERT_EQUAL(spz_shelf_at(first, 0)->movement_count, spz_shelf_at(all, 0)->movement_count);
    CU_ASSERT_EQUAL(spz_shelf_at(first, 0)->movements[0].found, spz_shelf_at(all, 0)->movements[0].found);
    spz_shelf_free(first);
    spz_shelf_free(all);
    leave(library);
}

static void every_interval_has_a_name_that_is_read_back(void)
{
    for (int i = SPZ_AT_UNISON; i < SPZ_INTERVAL_COUNT; i++) {
        spz_interval interval;
        CU_ASSERT_TRUE(spz_interval_from_name(spz_interval_name((spz_interval)i), &interval));
        CU_ASSERT_EQUAL((int)interval, i);
    }
    CU_ASSERT_STRING_EQUAL(spz_interval_name(SPZ_ANY_INTERVAL), "");
}

static spz_status ask_all(spz_library *library, spz_format format)
{
    static const spz_conditions clear = {.strength = 0.5}, any = {0};
    static const spz_evening evening = {.seating = "violins opposed"};
    spz_shelf *shelf[4] = {NULL};
    spz_status status = spz_library_find(library, &clear, 5, &shelf[0]);
    if (!status)
        status = spz_library_fits(library, &evening, &any, 5, &shelf[1]);
    if (!status)
        status = spz_library_partners(library, "Trois", &any, 5, &shelf[2]);
    if (!status)
        status = spz_library_alike(library, "Trois", "13", 0, 5, &shelf[3]);
    for (size_t i = 0; i < COUNT(shelf); i++) {
        spz_document *document = NULL;
        if (!status)
            status = spz_report_shelf(shelf[i], format, NULL, &document);
        spz_document_free(document);
        spz_shelf_free(shelf[i]);
    }
    return status;
}

/* Starved at the first request, the second, ... until it gets through: it says so each time. */
static void questions_without_memory_say_so(void)
{
    static const spz_format forms[] = {SPZ_AS_TEXT, SPZ_AS_JSON, SPZ_AS_CSV, SPZ_AS_HTML};
    spz_library *library = filled();
    for (size_t f = 0; f < COUNT(forms); f++) {
        spz_status status = SPZ_NO_MEMORY;
        long request = 1;
        for (; status == SPZ_NO_MEMORY && request < 100000; request++) {
            memory_starve_after(request);
            status = ask_all(library, forms[f]);
            memory_starve_after(0);
        }
        CU_ASSERT_EQUAL(status, SPZ_OK);
        CU_ASSERT_TRUE(request > 20);
    }
    leave(library);
}

static void adding_without_memory_says_so_and_can_be_done_again(void)
{
    spz_library *library = NULL;
    spz_added added = {0};
    spz_status status = SPZ_NO_MEMORY;
    unlink(own_file(library_name));
    CU_ASSERT_EQUAL_FATAL(spz_library_open(own_file(library_name), SPZ_LIBRARY_CHANGE, NULL, &library), SPZ_OK);
    for (long request = 1; status == SPZ_NO_MEMORY && request < 1000000; request += request < 60 ? 1 : 1 + request / 7) {
        memory_starve_after(request);
        status = spz_library_add(library, &scores[2], 1, NULL, NULL, &added);
        memory_starve_after(0);
        CU_ASSERT_TRUE(status == SPZ_NO_MEMORY || status == SPZ_OK);
    }
    CU_ASSERT_EQUAL(status, SPZ_OK);
    CU_ASSERT_EQUAL(added.unusable, 0);
    CU_ASSERT_EQUAL(found(library, &(spz_conditions){0}), 1);
    leave(library);
}

static const struct Statement statements[] = {
    STATEMENT(each_condition_finds_what_meets_it),
    STATEMENT(the_first_of_many_are_those_of_the_whole_list),
    STATEMENT(every_interval_has_a_name_that_is_read_back),
    STATEMENT(questions_without_memory_say_so),
    STATEMENT(adding_without_memory_says_so_and_can_be_done_again),
};

void suite_library_questions(void)
{
    suite_of("a library's questions", statements, COUNT(statements));
}
