/* What is kept of a score from one run to the next: its name by content, its lines, its place in the store. */
#include "season/results/result_store.h"
#include "season/results/json_reader.h"
#include "season/results/result_terms.h"
#include "season/results/score_file.h"
#include "support/scores/evening.h"
#include "support/memory.h"
#include "support/text/name_order.h"
#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* FIPS 180-4's examples, and the million times 'a', as published with the standard (NIST, Secure Hash Standard, example values). */
static void content_is_named_by_the_published_sums(void)
{
    static const struct { const char *text; size_t times; const char *sum; } cases[] = {
        {"", 1, "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"},
        {"abc", 1, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"},
        {"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq", 1, "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"},
        {"a", 1000000, "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        Sha256 sum;
        char text[SHA256_TEXT];
        sha256_begin(&sum);
        for (size_t n = 0; n < cases[i].times; n++)
            sha256_add(&sum, cases[i].text, strlen(cases[i].text));
        sha256_end(&sum, text);
        CU_ASSERT_STRING_EQUAL(text, cases[i].sum);
    }
}

static const JsonValue *read_json(const char *text, Arena *arena)
{
    return json_read(text, strlen(text), arena);
}

static void well_formed_lines_are_read(void)
{
    Arena arena;
    arena_init(&arena);
    const JsonValue *value = read_json(" {\"a\": [1, -2.5e1, true, null], \"b\": \"\\u00e9\\n\\ud834\\udd1e\\\"\", \"c\": {}} ", &arena);
    CU_ASSERT_PTR_NOT_NULL_FATAL(value);
    const JsonValue *list = json_member(value, "a", JSON_LIST);
    CU_ASSERT_PTR_NOT_NULL_FATAL(list);
    CU_ASSERT_DOUBLE_EQUAL(list->first->next->number, -25, 0);
    CU_ASSERT_STRING_EQUAL(json_member_text(value, "b"), "\xC3\xA9\n\xF0\x9D\x84\x9E\"");
    CU_ASSERT_PTR_NULL(json_member_text(value, "a"));
    CU_ASSERT_PTR_NULL(json_member(value, "d", JSON_NUMBER));
    arena_release(&arena);
}

static void damaged_lines_are_refused(void)
{
    static const char *const bad[] = {"", "{", "{\"a\"}", "{\"a\": }", "[1,]", "[1 2]", "\"open", "\"\\x\"", "\"\\ud834\"", "\"\\u0000\"", "tru", "nul",
                                      "1 2", "--1", "1.2.3", "{\"a\": 1} x", "\"a\nb\"", "[[[[[[[[[[1]]]]]]]]]]", "+", "\"\\"};
    Arena arena;
    arena_init(&arena);
    for (size_t i = 0; i < COUNT(bad); i++)
        CU_ASSERT_PTR_NULL(read_json(bad[i], &arena));
    arena_release(&arena);
}

/* Two movements, one of them with three violin sections, with awkward texts. */
static ScoreResult *sample(void)
{
    static const spz_bars bars[2] = {{2, 3, "3", "4"}, {11, 11, "12a", "12a"}};
    static const spz_loss losses[2] = {{.kind = SPZ_EXCHANGE, .sides = {SPZ_VN1, SPZ_VN2}, .basis = {.bars = bars, .bar_count = 2}},
                                       {.kind = SPZ_DIV3, .sides = {SPZ_VIOLINS, SPZ_NO_SECTION}, .throughout = true}};
    static SeatingResult seats[2] = {{"violins opposed, violas inside left", NULL, 0, 1234, 0, 0}, {"violins together, cellos outside", losses, 2, -7, 12, 345}};
    ScoreResult *result = score_result_new();
    CU_ASSERT_PTR_NOT_NULL_FATAL(result);
    MovementResult first = {"A \"quoted\" title\t\xC3\xA9", {SPZ_JUDGED, SPZ_FIRM, 0.123456789, seats[0].name, true}, 120, true, false, true, true, seats, 2, 1786, 6789};
    MovementResult second = {"", {SPZ_WITHOUT_VIOLINS, SPZ_OPEN, 0, NULL, false}, 7, false, true, false, false, seats, 0, 0, 1};
    ResultMessage doubt = {.severity = SPZ_DOUBT, .line = 33, .part = "Violino", .fault = SPZ_FAULT_REPEAT_COUNT, .name = "two \"or\" so"};
    ResultMessage said = {.severity = SPZ_NOTE, .text = "words"};
    CU_ASSERT_TRUE(array_push(&result->movements, first) && array_push(&result->movements, second));
    CU_ASSERT_TRUE(array_push(&result->messages, doubt) && array_push(&result->messages, said));
    return result;
}

static LineHead sample_head(const char *file)
{
    LineHead head = {.file = file};
    memset(head.terms, 'a', SHA256_TEXT - 1);
    memset(head.content, 'b', SHA256_TEXT - 1);
    return head;
}

static bool same_text(const char *a, const char *b)
{
    return a && b ? strcmp(a, b) == 0 : a == b;
}

static bool same_loss(const spz_loss *a, const spz_loss *b)
{
    bool same = a->kind == b->kind && a->sides[0] == b->sides[0] && a->sides[1] == b->sides[1] && a->throughout == b->throughout &&
                a->basis.bar_count == b->basis.bar_count;
    for (size_t i = 0; same && i < a->basis.bar_count; i++) {
        const spz_bars *left = &a->basis.bars[i], *right = &b->basis.bars[i];
        same = left->first == right->first && left->last == right->last && same_text(left->first_bar, right->first_bar) &&
               same_text(left->last_bar, right->last_bar);
    }
    return same;
}

static bool same_seat(const SeatingResult *a, const SeatingResult *b)
{
    bool same = strcmp(a->name, b->name) == 0 && a->points == b->points && a->loss_count == b->loss_count && a->lost_bars == b->lost_bars && a->lost_tenths == b->lost_tenths;
    for (size_t i = 0; same && i < a->loss_count; i++)
        same = same_loss(&a->losses[i], &b->losses[i]);
    return same;
}

/* The margin to the last bit: what comes from a line is what was written into it. */
static bool same_statement(const spz_statement *a, const spz_statement *b)
{
    return a->outcome == b->outcome && a->confidence == b->confidence && memcmp(&a->margin, &b->margin, sizeof a->margin) == 0 &&
           same_text(a->arrangement, b->arrangement) && a->by_year == b->by_year;
}

static bool same_movement(const MovementResult *a, const MovementResult *b)
{
    bool same = strcmp(a->title, b->title) == 0 && same_statement(&a->statement, &b->statement) && a->bars == b->bars && a->thirds == b->thirds &&
                a->strings == b->strings && a->two_orchestras == b->two_orchestras && a->chamber == b->chamber && a->tenths == b->tenths && a->year == b->year && a->seat_count == b->seat_count;
    for (size_t i = 0; same && i < a->seat_count; i++)
        same = same_seat(&a->seats[i], &b->seats[i]);
    return same;
}

static bool same_message(const ResultMessage *a, const ResultMessage *b)
{
    return a->severity == b->severity && a->line == b->line && same_text(a->part, b->part) && same_text(a->bar, b->bar) && a->fault == b->fault &&
           same_text(a->name, b->name) && same_text(a->other, b->other) && a->count == b->count && same_text(a->text, b->text);
}

static bool same_result(const ScoreResult *a, const ScoreResult *b)
{
    bool same = a->status == b->status && a->movements.count == b->movements.count && a->messages.count == b->messages.count;
    for (size_t i = 0; same && i < a->movements.count; i++)
        same = same_movement(&a->movements.at[i], &b->movements.at[i]);
    for (size_t i = 0; same && i < a->messages.count; i++)
        same = same_message(&a->messages.at[i], &b->messages.at[i]);
    return same;
}

static void a_score_comes_back_from_its_lines_as_it_was(void)
{
    ScoreResult *result = sample(), *again = score_result_new();
    LineHead head = sample_head("");
    Buffer text;
    buffer_init(&text);
    lines_write(&text, &head, result);
    CU_ASSERT_TRUE(lines_read_result(text.text, text.length, &head, again));
    CU_ASSERT_TRUE(same_result(result, again));
    buffer_free(&text);
    score_result_free(result);
    score_result_free(again);
}

static void a_score_that_could_not_be_read_comes_back_as_that(void)
{
    ScoreResult *result = score_result_new(), *again = score_result_new();
    LineHead head = sample_head("");
    ResultMessage message = {.severity = SPZ_ERROR, .line = 2, .text = "cut off"};
    Buffer text;
    result->status = SPZ_NOT_XML;
    CU_ASSERT_TRUE(array_push(&result->messages, message));
    buffer_init(&text);
    lines_write(&text, &head, result);
    CU_ASSERT_TRUE(lines_read_result(text.text, text.length, &head, again));
    CU_ASSERT_TRUE(same_result(result, again));
    buffer_free(&text);
    score_result_free(result);
    score_result_free(again);
}

/* A store of its own for each test, in memory. */
static Store *own_store(void)
{
    Store *store = NULL;
    CU_ASSERT_EQUAL_FATAL(store_open(NULL, STORE_PASSING, NULL, &store), SPZ_OK);
    return store;
}

static void the_store_gives_back_what_was_kept_and_nothing_for_other_terms(void)
{
    Store *store = own_store();
    ScoreResult *result = sample();
    LineHead head = sample_head("x.musicxml"), other = head;
    CU_ASSERT_PTR_NULL(results_find(store, &head));
    results_keep(store, &head, result);
    results_keep(store, &head, result); /* as two runs at once do */
    ScoreResult *again = results_find(store, &head);
    CU_ASSERT_PTR_NOT_NULL_FATAL(again);
    CU_ASSERT_TRUE(same_result(result, again));
    other.terms[0] = 'c';
    CU_ASSERT_PTR_NULL(results_find(store, &other));
    other = head;
    other.content[63] = 'c';
    CU_ASSERT_PTR_NULL(results_find(store, &other));
    score_result_free(again);
    score_result_free(result);
    store_close(store);
}

/* The lines in a file: the second, where it comes first; something between; then both, or the first alone. */
static void write_lines_of(const char *path, const LineHead *head, const ScoreResult *result, bool second_first, const char *between, bool first_alone)
{
    Buffer text;
    buffer_init(&text);
    lines_write(&text, head, result);
    size_t first = (size_t)(strchr(text.text, '\n') + 1 - text.text);
    FILE *file = fopen(path, "wb");
    CU_ASSERT_PTR_NOT_NULL_FATAL(file);
    if (second_first)
        fwrite(text.text + first, 1, text.length - first, file);
    fputs(between, file);
    fwrite(text.text, 1, first_alone ? first : text.length, file);
    fclose(file);
    buffer_free(&text);
}

static void lines_of_a_score_are_put_together_whatever_their_order(void)
{
    const char *path = own_file("season-lines.tmp");
    Store *store = own_store();
    ScoreResult *result = sample();
    LineHead head = sample_head("a/b.mxl"), other = head;
    write_lines_of(path, &head, result, true, "{\"kind\": \"something else\"}\nnot a line\n", false); /* the second movement twice */
    CU_ASSERT_EQUAL(results_read_lines(store, path, NULL), SPZ_OK);
    ScoreResult *again = results_find(store, &head);
    CU_ASSERT_PTR_NOT_NULL_FATAL(again);
    CU_ASSERT_TRUE(same_result(result, again));
    other.content[0] = 'c';
    CU_ASSERT_PTR_NULL(results_find(store, &other)); /* the score has changed since */
    score_result_free(again);
    score_result_free(result);
    store_close(store);
    unlink(path);
}

static void a_score_of_which_a_line_is_missing_is_not_taken(void)
{
    const char *path = own_file("season-lines.tmp");
    Store *store = own_store();
    ScoreResult *result = sample();
    LineHead head = sample_head("a/b.mxl");
    write_lines_of(path, &head, result, false, "", true);
    CU_ASSERT_EQUAL(results_read_lines(store, path, NULL), SPZ_OK);
    CU_ASSERT_PTR_NULL(results_find(store, &head));
    score_result_free(result);
    store_close(store);
    unlink(path);
}

static void movements_of_a_folder_are_taken_in_the_order_people_expect(void)
{
    static const char *const names[] = {"Air 1", "air 2", "air 10", "air 10b", "suite-01", "suite-1", "suite-2"};
    for (size_t i = 0; i < COUNT(names); i++)
        for (size_t j = 0; j < COUNT(names); j++) {
            int order = names_compare(names[i], names[j]);
            CU_ASSERT_TRUE(i < j ? order < 0 : i > j ? order > 0 : order == 0);
        }
}

static void check_losses(const SeatingResult *kept, const spz_ranked *read)
{
    CU_ASSERT_EQUAL_FATAL(kept->loss_count, read->loss_count);
    for (size_t i = 0; i < kept->loss_count; i++)
        CU_ASSERT_TRUE(same_loss(&kept->losses[i], &read->losses[i]));
}

/* The bars that a season names are those of a reading by itself, which are those of the edition. */
static void a_season_prints_the_numbers_of_the_edition(void)
{
    static const char path[] = "corpus/brelisk-balconies-1.musicxml";
    spz_settings *settings = evening_settings("[bars brelisk-balconies-1.musicxml]\nfirst = 101\n");
    ScoreResult *result = score_result_new();
    spz_reading *reading = NULL;
    char *data;
    size_t size, losses = 0;
    CU_ASSERT_EQUAL_FATAL(score_file_read(path, &data, &size), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(score_result_make(data, size, path, settings, 0, result), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_reading_make(path, settings, 0, SPZ_TO_SEATING, NULL, &reading), SPZ_OK);
    const spz_verdict *verdict = spz_reading_at(reading, 0).verdict;
    CU_ASSERT_EQUAL_FATAL(result->movements.at[0].seat_count, spz_verdict_count(verdict));
    for (size_t i = 0; i < spz_verdict_count(verdict); i++) {
        check_losses(&result->movements.at[0].seats[i], spz_verdict_ranked(verdict, i));
        losses += result->movements.at[0].seats[i].loss_count;
    }
    CU_ASSERT_TRUE_FATAL(losses > 0);
    const SeatingResult *last = &result->movements.at[0].seats[spz_verdict_count(verdict) - 1];
    CU_ASSERT_EQUAL(atol(last->losses[0].basis.bars[0].first_bar), (long)last->losses[0].basis.bars[0].first + 101);
    spz_reading_free(reading);
    score_result_free(result);
    memory_free(data);
    spz_settings_free(settings);
}

/* What is said of a file by its name is not said of a copy under another. */
static void the_same_score_under_another_name_has_its_own_terms(void)
{
    static const struct { const char *settings; bool alike; } cases[] = {
        {"", true}, {"[bars]\nfirst = 0\n", true}, {"[bars one.mxl]\nfirst = 0\n", false}, {"[passages one.mxl]\n9-12 = no\n", false},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        spz_settings *settings = evening_settings(cases[i].settings);
        char name[SHA256_TEXT], one[SHA256_TEXT], moved[SHA256_TEXT], two[SHA256_TEXT];
        terms_of_settings(settings, name);
        terms_of_score(name, settings, "here/one.mxl", 0, one);
        terms_of_score(name, settings, "there/one.mxl", 0, moved);
        terms_of_score(name, settings, "here/two.mxl", 0, two);
        CU_ASSERT_STRING_EQUAL(one, moved);
        CU_ASSERT_EQUAL(strcmp(one, two) == 0, cases[i].alike);
        spz_settings_free(settings);
    }
}

static const struct Statement statements[] = {
    STATEMENT(content_is_named_by_the_published_sums),
    STATEMENT(well_formed_lines_are_read),
    STATEMENT(damaged_lines_are_refused),
    STATEMENT(a_score_comes_back_from_its_lines_as_it_was),
    STATEMENT(a_score_that_could_not_be_read_comes_back_as_that),
    STATEMENT(the_store_gives_back_what_was_kept_and_nothing_for_other_terms),
    STATEMENT(lines_of_a_score_are_put_together_whatever_their_order),
    STATEMENT(a_score_of_which_a_line_is_missing_is_not_taken),
    STATEMENT(a_season_prints_the_numbers_of_the_edition),
    STATEMENT(the_same_score_under_another_name_has_its_own_terms),
    STATEMENT(movements_of_a_folder_are_taken_in_the_order_people_expect),
};

void suite_season_keep(void)
{
    suite_of("what a season keeps", statements, COUNT(statements));
}
