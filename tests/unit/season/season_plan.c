/* The season of the corpus planned as a whole: however it is read, the plan is the same. */
#include "spezzato/season.h"
#include "support/memory.h"
#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static const char plan_file[] = "corpus/season.csv";

typedef struct Watch {
    spz_progress last;
    size_t calls, stop_after; /* scores read; 0: never */
} Watch;

static void note_progress(void *context, const spz_progress *progress)
{
    Watch *watch = context;
    watch->last = *progress;
    watch->calls++;
}

static bool wants_to_stop(void *context)
{
    const Watch *watch = context;
    return watch->stop_after && watch->last.files_done >= watch->stop_after;
}

static spz_season_options watched(Watch *watch)
{
    *watch = (Watch){0};
    return (spz_season_options){.jobs = 1, .progress = note_progress, .stop = wants_to_stop, .context = watch};
}

static spz_document *plan_as_json(const spz_season_options *options)
{
    spz_season *season = NULL;
    spz_document *document = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_season_plan(plan_file, options, NULL, &season), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_report_season(season, SPZ_AS_JSON, NULL, &document), SPZ_OK);
    spz_season_free(season);
    return document;
}

static bool same_text(const spz_document *a, const spz_document *b)
{
    size_t left, right;
    const char *first = spz_document_text(a, &left), *second = spz_document_text(b, &right);
    return left == right && memcmp(first, second, left) == 0;
}

static char *own_folder(void)
{
    static char folder[] = "/tmp/spezzato-plan-XXXXXX";
    memcpy(folder + strlen(folder) - 6, "XXXXXX", 6);
    CU_ASSERT_PTR_NOT_NULL_FATAL(mkdtemp(folder));
    return folder;
}

static void remove_folder(const char *folder)
{
    char command[200];
    snprintf(command, sizeof command, "rm -rf '%s'", folder);
    CU_ASSERT_EQUAL(system(command), 0);
}

static void the_plan_does_not_depend_on_how_many_scores_are_read_at_a_time(void)
{
    spz_season_options one = {.jobs = 1}, three = {.jobs = 3};
    spz_document *alone = plan_as_json(&one), *together = plan_as_json(&three);
    CU_ASSERT_TRUE(same_text(alone, together));
    spz_document_free(alone);
    spz_document_free(together);
}

static void scores_that_did_not_change_are_read_once(void)
{
    Watch watch;
    spz_season_options options = watched(&watch);
    char *folder = own_folder();
    char library[64];
    snprintf(library, sizeof library, "%s/library", folder);
    options.library = library;
    spz_document *first = plan_as_json(&options);
    CU_ASSERT_EQUAL(watch.last.files_kept, 0);
    CU_ASSERT_TRUE(watch.last.bars > 0);
    spz_document *second = plan_as_json(&options);
    CU_ASSERT_EQUAL(watch.last.files_kept, watch.last.files);
    CU_ASSERT_EQUAL(watch.last.files_done, watch.last.files);
    CU_ASSERT_EQUAL(watch.last.bars, 0);
    CU_ASSERT_TRUE(same_text(first, second));
    spz_document_free(first);
    spz_document_free(second);
    remove_folder(folder);
}

static void other_weights_are_another_verdict(void)
{
    Watch watch;
    spz_season_options options = watched(&watch);
    spz_settings *settings;
    char *folder = own_folder();
    char library[64];
    snprintf(library, sizeof library, "%s/library", folder);
    options.library = library;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    options.settings = settings;
    spz_document_free(plan_as_json(&options));
    CU_ASSERT_EQUAL(spz_settings_set(settings, "concert.price at interval", "30", NULL), SPZ_OK);
    CU_ASSERT_EQUAL(spz_settings_set(settings, "house.language", "de", NULL), SPZ_OK);
    spz_document_free(plan_as_json(&options)); /* the price of changes is no matter of a score, nor is the language */
    CU_ASSERT_EQUAL(watch.last.files_kept, watch.last.files);
    CU_ASSERT_EQUAL(spz_settings_set(settings, "weights.ensemble", "21", NULL), SPZ_OK);
    spz_document_free(plan_as_json(&options));
    CU_ASSERT_EQUAL(watch.last.files_kept, 0);
    spz_settings_free(settings);
    remove_folder(folder);
}

static void an_interrupted_season_goes_on_where_it_stopped(void)
{
    Watch watch;
    spz_season_options options = watched(&watch);
    char *folder = own_folder();
    spz_season *season = NULL;
    char library[64];
    snprintf(library, sizeof library, "%s/library", folder);
    options.library = library;
    watch.stop_after = 5;
    CU_ASSERT_EQUAL(spz_season_plan(plan_file, &options, NULL, &season), SPZ_INTERRUPTED);
    CU_ASSERT_PTR_NULL(season);
    CU_ASSERT_EQUAL(watch.last.files_done, 5);
    watch.stop_after = 0;
    spz_document *resumed = plan_as_json(&options);
    CU_ASSERT_EQUAL(watch.last.files_kept, 5);
    spz_season_options fresh = {.jobs = 1};
    spz_document *whole = plan_as_json(&fresh);
    CU_ASSERT_TRUE(same_text(whole, resumed));
    spz_document_free(resumed);
    spz_document_free(whole);
    remove_folder(folder);
}

static void write_share(int share, int shares, const char *path)
{
    spz_season_options options = {.jobs = 1, .share = share, .shares = shares};
    spz_document *lines = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_season_lines(plan_file, &options, NULL, &lines), SPZ_OK);
    CU_ASSERT_EQUAL(spz_document_save(lines, path, NULL), SPZ_OK);
    spz_document_free(lines);
}

static void shares_of_the_work_make_the_same_plan(void)
{
    const char *const files[] = {own_file("season-share-2.tmp"), own_file("season-share-1.tmp"), own_file("season-share-3.tmp")};
    Watch watch;
    spz_season_options options = watched(&watch), fresh = {.jobs = 1};
    write_share(2, 3, files[0]);
    write_share(1, 3, files[1]);
    write_share(3, 3, files[2]);
    options.lines = files;
    options.line_files = 3;
    spz_document *merged = plan_as_json(&options), *whole = plan_as_json(&fresh);
    CU_ASSERT_TRUE(same_text(whole, merged));
    CU_ASSERT_EQUAL(watch.last.files_kept, watch.last.files); /* nothing was read twice */
    options.line_files = 2; /* a share is missing: its scores are read here */
    spz_document *mended = plan_as_json(&options);
    CU_ASSERT_TRUE(same_text(whole, mended));
    CU_ASSERT_TRUE(watch.last.files_kept > 0 && watch.last.files_kept < watch.last.files);
    for (size_t i = 0; i < COUNT(files); i++)
        unlink(files[i]);
    spz_document_free(merged);
    spz_document_free(whole);
    spz_document_free(mended);
}

static spz_season *planned(void)
{
    spz_season_options options = {.jobs = 2};
    spz_season *season = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_season_plan(plan_file, &options, NULL, &season), SPZ_OK);
    return season;
}

static double sum_of_losses(const spz_planned_concert *concert)
{
    double sum = 0;
    for (size_t w = 0; w < concert->work_count; w++)
        for (size_t m = 0; m < concert->works[w].movement_count; m++)
            sum += concert->works[w].movements[m].points;
    return sum;
}

static double sum_of_prices(const spz_planned_concert *concert)
{
    double sum = concert->setup ? concert->setup->price : 0;
    for (size_t i = 0; i < concert->change_count; i++)
        sum += concert->changes[i].price;
    return sum;
}

static void the_sums_of_a_concert_are_the_sums_of_its_parts(void)
{
    spz_season *season = planned();
    CU_ASSERT_TRUE(spz_season_concerts(season) >= 3);
    for (size_t i = 0; i < spz_season_concerts(season); i++) {
        const spz_planned_concert *concert = spz_season_concert(season, i);
        CU_ASSERT_EQUAL(concert->problem, SPZ_CONCERT_PLANNED);
        CU_ASSERT_DOUBLE_EQUAL(concert->points, sum_of_losses(concert), 1e-6);
        CU_ASSERT_DOUBLE_EQUAL(concert->price, sum_of_prices(concert), 1e-6);
    }
    spz_season_free(season);
}

static void no_plan_that_was_not_taken_is_better(void)
{
    spz_season *season = planned();
    for (size_t i = 0; i < spz_season_concerts(season); i++) {
        const spz_planned_concert *concert = spz_season_concert(season, i);
        double sum = concert->points + concert->price;
        if (concert->unchanged.possible)
            CU_ASSERT_TRUE(concert->unchanged.points + concert->unchanged.price >= sum - 1e-6);
        if (concert->one_more.possible) {
            CU_ASSERT_TRUE(concert->one_more.points < concert->points);
            CU_ASSERT_TRUE(concert->one_more.changes <= (int)concert->change_count + 1);
        }
        if (concert->two_more.possible) {
            CU_ASSERT_FALSE(concert->one_more.possible);
            CU_ASSERT_TRUE(concert->two_more.points < concert->points);
        }
        if (concert->other_order.possible)
            CU_ASSERT_TRUE(concert->other_order.changes < (int)concert->change_count); /* one that is dictated is not counted as spared */
    }
    spz_season_free(season);
}

/* The next change in which the seating is another afterwards; those that only make one orchestra two are passed over. */
static size_t next_seating(const spz_planned_concert *concert, size_t place)
{
    while (place < concert->change_count && strcmp(concert->changes[place].from, concert->changes[place].to) == 0) {
        CU_ASSERT_NOT_EQUAL(concert->changes[place].two_before, concert->changes[place].two_after);
        CU_ASSERT_DOUBLE_EQUAL(concert->changes[place].price, 0, 0);
        place++;
    }
    return place;
}

static void seatings_differ_just_where_a_change_is_listed(void)
{
    spz_season *season = planned();
    for (size_t i = 0; i < spz_season_concerts(season); i++) {
        const spz_planned_concert *concert = spz_season_concert(season, i);
        const char *before = NULL;
        size_t listed = next_seating(concert, 0);
        for (size_t w = 0; w < concert->work_count; w++)
            for (size_t m = 0; m < concert->works[w].movement_count; m++) {
                const char *here = concert->works[w].movements[m].seating;
                if (before && strcmp(before, here) != 0) {
                    CU_ASSERT_TRUE_FATAL(listed < concert->change_count);
                    CU_ASSERT_STRING_EQUAL(concert->changes[listed].from, before);
                    CU_ASSERT_STRING_EQUAL(concert->changes[listed].to, here);
                    CU_ASSERT_EQUAL(concert->changes[listed].work, w);
                    listed = next_seating(concert, listed + 1);
                }
                before = here;
            }
        CU_ASSERT_EQUAL(listed, concert->change_count);
    }
    spz_season_free(season);
}

/* The second concert of the corpus: winds alone, a work for two orchestras, the interval, a work for one. */
static void two_orchestras_are_set_up_before_the_concert_and_cleared_at_the_interval(void)
{
    spz_season *season = planned();
    const spz_planned_concert *concert = spz_season_concert(season, 1);
    CU_ASSERT_TRUE(concert->works[0].two_orchestras && concert->works[1].two_orchestras && !concert->works[2].two_orchestras);
    CU_ASSERT_PTR_NOT_NULL_FATAL(concert->setup);
    CU_ASSERT_TRUE(concert->setup->two_after && !concert->setup->two_before);
    CU_ASSERT_EQUAL_FATAL(concert->change_count, 1);
    CU_ASSERT_EQUAL(concert->changes[0].gap, SPZ_AT_INTERVAL);
    CU_ASSERT_TRUE(concert->changes[0].two_before && !concert->changes[0].two_after);
    CU_ASSERT_TRUE(concert->changes[0].chairs > 0 && concert->changes[0].chairs <= 14 + 12 + 10 + 8 + 6);
    spz_season_free(season);
}

static void one_concert_of_the_corpus_changes_at_the_interval(void)
{
    spz_season *season = planned();
    size_t at_interval = 0;
    for (size_t i = 0; i < spz_season_concerts(season); i++)
        for (size_t c = 0; c < spz_season_concert(season, i)->change_count; c++)
            at_interval += spz_season_concert(season, i)->changes[c].gap == SPZ_AT_INTERVAL;
    CU_ASSERT_TRUE(at_interval >= 1);
    spz_season_free(season);
}

/* The movement read again by itself, under the settings of its hall. */
static void check_movement(const spz_planned_concert *concert, const spz_planned_work *work, const spz_planned_movement *movement)
{
    spz_settings *settings;
    spz_reading *reading = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    CU_ASSERT_EQUAL(spz_settings_read(settings, concert->hall_settings, NULL), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_reading_make(movement->file, settings, work->year, SPZ_TO_SEATING, NULL, &reading), SPZ_OK);
    const spz_verdict *verdict = spz_reading_at(reading, movement->number - 1).verdict;
    for (size_t i = 0; i < spz_verdict_count(verdict); i++)
        if (strcmp(spz_verdict_ranked(verdict, i)->name, movement->seating) == 0)
            CU_ASSERT_DOUBLE_EQUAL(spz_verdict_ranked(verdict, i)->lost, movement->points, 0.0101);
    CU_ASSERT_EQUAL(spz_verdict_count(verdict) > 0, movement->judged);
    spz_reading_free(reading);
    spz_settings_free(settings);
}

static void what_is_given_up_is_what_the_movement_alone_loses(void)
{
    spz_season *season = planned();
    for (size_t i = 0; i < spz_season_concerts(season); i++) {
        const spz_planned_concert *concert = spz_season_concert(season, i);
        for (size_t w = 0; w < concert->work_count; w++)
            for (size_t m = 0; m < concert->works[w].movement_count; m++)
                check_movement(concert, &concert->works[w], &concert->works[w].movements[m]);
    }
    spz_season_free(season);
}

static void every_report_has_its_forms_and_no_others(void)
{
    static const spz_format plan[] = {SPZ_AS_TEXT, SPZ_AS_JSON, SPZ_AS_CSV, SPZ_AS_HTML};
    spz_season *season = planned();
    spz_document *document = NULL;
    for (size_t i = 0; i < COUNT(plan); i++) {
        CU_ASSERT_EQUAL(spz_report_season(season, plan[i], NULL, &document), SPZ_OK);
        size_t length;
        CU_ASSERT_TRUE(strlen(spz_document_text(document, &length)) == length && length > 100);
        spz_document_free(document);
    }
    CU_ASSERT_EQUAL(spz_report_season(season, SPZ_AS_SVG, NULL, &document), SPZ_BAD_ARGUMENT);
    CU_ASSERT_EQUAL(spz_report_calendar(season, SPZ_AS_HTML, NULL, &document), SPZ_BAD_ARGUMENT);
    CU_ASSERT_EQUAL(spz_report_changes(season, 99, SPZ_AS_TEXT, NULL, &document), SPZ_BAD_ARGUMENT);
    CU_ASSERT_PTR_NULL(document);
    spz_season_free(season);
}

/* A plan of a few rows in a file of its own; `settings` NULL: the usual. */
static spz_season *plan_rows(const char *rows, const spz_settings *settings)
{
    const char *path = own_file("season-rows.tmp");
    spz_season_options options = {.settings = settings, .jobs = 1};
    spz_season *season = NULL;
    FILE *file = fopen(path, "w");
    CU_ASSERT_PTR_NOT_NULL_FATAL(file);
    fprintf(file, "concert,work,score,fixed seating\n%s", rows);
    fclose(file);
    CU_ASSERT_EQUAL_FATAL(spz_season_plan(path, &options, NULL, &season), SPZ_OK);
    unlink(path);
    return season;
}

static void a_work_that_could_not_be_read_says_why(void)
{
    spz_season *season = plan_rows("A,One,nowhere.xml,\nA,Two,README.md,\nA,Three,corpus/brelisk-balconies-1.musicxml,\n", NULL);
    const spz_planned_concert *concert = spz_season_concert(season, 0);
    CU_ASSERT_EQUAL_FATAL(concert->work_count, 3);
    CU_ASSERT_EQUAL(concert->works[0].problem, SPZ_WORK_WITHOUT_SCORE);
    CU_ASSERT_EQUAL(concert->works[1].problem, SPZ_WORK_UNREADABLE);
    CU_ASSERT_EQUAL(concert->works[1].cause, SPZ_NOT_XML);
    CU_ASSERT_EQUAL(concert->works[2].problem, SPZ_WORK_READ);
    CU_ASSERT_EQUAL(concert->works[2].cause, SPZ_OK);
    spz_season_free(season);
}

/* Two seatings fixed one after the other, between works: without a change there it can't be planned, and no single seating will do. */
static void fixed_seatings_ask_for_a_change(void)
{
    static const char rows[] = "A,One,corpus/brelisk-balconies-1.musicxml,\"violins together, violas outside\"\n"
                               "A,Two,corpus/brelisk-balconies-2.musicxml,\"violins opposed, cellos inside left\"\n";
    spz_settings *settings;
    spz_season *season = plan_rows(rows, NULL);
    const spz_planned_concert *concert = spz_season_concert(season, 0);
    CU_ASSERT_EQUAL(concert->problem, SPZ_CONCERT_PLANNED);
    CU_ASSERT_FALSE(concert->unchanged.possible);
    CU_ASSERT_EQUAL_FATAL(concert->change_count, 1);
    CU_ASSERT_FALSE(concert->changes[0].not_allowed);
    CU_ASSERT_EQUAL(concert->changes[0].violins, SPZ_VIOLINS_AS_BEFORE);
    spz_season_free(season);
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    CU_ASSERT_EQUAL(spz_settings_set(settings, "concert.change between works", "no", NULL), SPZ_OK);
    season = plan_rows(rows, settings);
    CU_ASSERT_EQUAL(spz_season_concert(season, 0)->problem, SPZ_CONCERT_FIXED);
    spz_season_free(season);
    spz_settings_free(settings);
}

/* The work in the middle wants the other seating: there and back is what two changes more would be, with their places and cost. */
static void changes_that_were_not_made_are_listed_with_their_place_and_cost(void)
{
    spz_settings *settings;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    CU_ASSERT_EQUAL(spz_settings_set(settings, "concert.change between works", "no", NULL), SPZ_OK);
    spz_season *season = plan_rows("A,First,corpus/brelisk-balconies-1.musicxml,\nA,Odd,corpus/tolvesk-ecluses-1.musicxml,\n"
                                   "A,Last,corpus/brelisk-balconies-4.musicxml,\n", settings);
    const spz_other_plan *other = &spz_season_concert(season, 0)->two_more;
    CU_ASSERT_TRUE(other->possible);
    CU_ASSERT_EQUAL_FATAL(other->list_count, 2);
    CU_ASSERT_STRING_EQUAL(other->list[0].after, "First");
    CU_ASSERT_STRING_EQUAL(other->list[0].before, "Odd");
    CU_ASSERT_STRING_EQUAL(other->list[1].after, "Odd");
    CU_ASSERT_STRING_EQUAL(other->list[1].before, "Last");
    CU_ASSERT_STRING_NOT_EQUAL(other->list[0].to, other->list[1].to);
    for (size_t i = 0; i < other->list_count; i++) {
        CU_ASSERT_EQUAL(other->list[i].gap, SPZ_BETWEEN_WORKS);
        CU_ASSERT_FALSE(other->list[i].allowed);
        CU_ASSERT_TRUE(other->list[i].minutes > 1);
    }
    spz_season_free(season);
    CU_ASSERT_EQUAL(spz_settings_set(settings, "concert.change between works", "yes", NULL), SPZ_OK);
    CU_ASSERT_EQUAL(spz_settings_set(settings, "concert.price between works", "1", NULL), SPZ_OK);
    CU_ASSERT_EQUAL(spz_settings_set(settings, "concert.price of a minute", "0", NULL), SPZ_OK);
    season = plan_rows("A,First,corpus/brelisk-balconies-1.musicxml,\nA,Odd,corpus/tolvesk-ecluses-1.musicxml,\n"
                       "A,Last,corpus/brelisk-balconies-4.musicxml,\n", settings);
    const spz_other_plan *order = &spz_season_concert(season, 0)->other_order; /* the odd one first or last */
    CU_ASSERT_TRUE(order->possible);
    CU_ASSERT_EQUAL_FATAL(order->order_count, 3);
    CU_ASSERT_STRING_NOT_EQUAL(order->order[1], "Odd");
    spz_season_free(season);
    spz_settings_free(settings);
}

static void places_and_gaps_have_names_in_data(void)
{
    CU_ASSERT_STRING_EQUAL(spz_gap_name(SPZ_AT_INTERVAL), "at the interval");
    CU_ASSERT_STRING_EQUAL(spz_gap_name(SPZ_GAP_COUNT), "");
    CU_ASSERT_STRING_EQUAL(spz_stage_place_name(SPZ_PLACE_BACK_MIDDLE), "back middle");
    CU_ASSERT_STRING_EQUAL(spz_stage_place_name(SPZ_PLACE_COUNT), "");
}

/* Starved of memory at the first request, the second, ... until it gets through: it says so each time, and loses nothing. */
static void a_season_without_memory_says_so(void)
{
    const char *small_plan = own_file("season-small.tmp");
    char *folder = own_folder();
    char library[64];
    snprintf(library, sizeof library, "%s/library", folder);
    spz_season_options options = {.jobs = 1, .library = library};
    FILE *file = fopen(small_plan, "w");
    CU_ASSERT_PTR_NOT_NULL_FATAL(file);
    fputs("concert,work,score,interval after\nA,March,corpus/aldersquay-lock-keepers-march.musicxml,yes\n"
          "A,Barcarolle,corpus/vercassine-barcarolle.musicxml,\n", file);
    fclose(file);
    spz_status status = SPZ_NO_MEMORY;
    long request = 0;
    for (; status == SPZ_NO_MEMORY && request < 100000; request += request < 400 ? 1 : 37) {
        spz_season *season = NULL;
        spz_document *document = NULL;
        memory_starve_after(request + 1);
        status = spz_season_plan(small_plan, &options, NULL, &season);
        if (status == SPZ_OK)
            status = spz_report_season(season, SPZ_AS_HTML, NULL, &document);
        memory_starve_after(0);
        spz_document_free(document);
        spz_season_free(season);
        if (request == 0) { /* from now on the scores are in the library */
            CU_ASSERT_EQUAL(spz_season_plan(small_plan, &options, NULL, &season), SPZ_OK);
            spz_season_free(season);
        }
    }
    CU_ASSERT_EQUAL(status, SPZ_OK);
    CU_ASSERT_TRUE(request > 50);
    unlink(small_plan);
    remove_folder(folder);
}

static const struct Statement statements[] = {
    STATEMENT(the_plan_does_not_depend_on_how_many_scores_are_read_at_a_time),
    STATEMENT(scores_that_did_not_change_are_read_once),
    STATEMENT(other_weights_are_another_verdict),
    STATEMENT(an_interrupted_season_goes_on_where_it_stopped),
    STATEMENT(shares_of_the_work_make_the_same_plan),
    STATEMENT(the_sums_of_a_concert_are_the_sums_of_its_parts),
    STATEMENT(no_plan_that_was_not_taken_is_better),
    STATEMENT(seatings_differ_just_where_a_change_is_listed),
    STATEMENT(two_orchestras_are_set_up_before_the_concert_and_cleared_at_the_interval),
    STATEMENT(one_concert_of_the_corpus_changes_at_the_interval),
    STATEMENT(what_is_given_up_is_what_the_movement_alone_loses),
    STATEMENT(every_report_has_its_forms_and_no_others),
    STATEMENT(a_work_that_could_not_be_read_says_why),
    STATEMENT(fixed_seatings_ask_for_a_change),
    STATEMENT(changes_that_were_not_made_are_listed_with_their_place_and_cost),
    STATEMENT(places_and_gaps_have_names_in_data),
    STATEMENT(a_season_without_memory_says_so),
};

void suite_season_plan(void)
{
    suite_of("season's plan", statements, COUNT(statements));
}
