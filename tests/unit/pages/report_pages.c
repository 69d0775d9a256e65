/* Whole reports about small scores. */
#include "support/text/utf8.h"
#include "spezzato/spezzato.h"
#include "support/memory.h"
#include "support/notation/notation.h"
#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static const char answers[] = "title: Answers\ncomposed: 1790\ntime: 4/4  tempo: q=120\n"
                              "Violin I:   c5:e d5 e5 f5 g5:h | R | a4:e b4 c5 d5 e5:h | R | [A] c5:w |]\n"
                              "Violin II:  R | c5:e d5 e5 f5 g5:h | R | a4:e b4 c5 d5 e5:h | e4:w |]\n"
                              "Viola:      g4:w | g4:w | e4:w | e4:w | g4:w |]\n"
                              "Cello:      c3:w | c3:w | a2:w | a2:w | c3:w |]\n";
static const char winds[] = "title: Winds alone\ntime: 2/4\nFlute: c5:q d5 | e5:h |]\nOboe: R | c5:h |]\n";
static const char quartet_less[] = "title: One violin section\ntime: 2/4\nViolin: c5:q d5 | e5:h |]\nViola: R | c4:h |]\nCello: c3:h | c3:h |]\n";
/* A title with an escape of ISO 6429 in one character, one that turns the writing round, and marks of web pages and tables. */
static const char hostile[] = "title: \xc2\x9b"
                              "2J\xe2\x80\xae<script>\"x\",=1\ntime: 2/4\nViolin I: c5:q d5 | e5:h |]\nViolin II: R | c5:h |]\n";

static char path[128];

static bool write_score(const char *notation)
{
    char fault[200] = "";
    size_t length = 0;
    char *xml = notation_to_musicxml(notation, &length, fault, sizeof fault);
    snprintf(path, sizeof path, "/tmp/spezzato-page-XXXXXX");
    int file = xml ? mkstemp(path) : -1;
    bool good = file >= 0 && write(file, xml, length) == (ssize_t)length;
    if (file >= 0)
        close(file);
    free(xml);
    if (!good)
        printf("  %s\n", fault);
    return good;
}

static spz_reading *read_score(const char *notation, spz_depth depth)
{
    spz_reading *reading = NULL;
    CU_ASSERT_FATAL(write_score(notation));
    CU_ASSERT_EQUAL(spz_reading_make(path, NULL, 0, depth, NULL, &reading), SPZ_OK);
    unlink(path);
    CU_ASSERT_PTR_NOT_NULL_FATAL(reading);
    return reading;
}

typedef spz_status (*Report)(const spz_reading *const *, size_t, spz_format, spz_document **);

static spz_status written_streams(const spz_reading *const *readings, size_t count, spz_format format, spz_document **out)
{
    return spz_report_streams(readings, count, false, format, out);
}

static spz_status played_streams(const spz_reading *const *readings, size_t count, spz_format format, spz_document **out)
{
    return spz_report_streams(readings, count, true, format, out);
}

static const Report reports[] = {spz_report_movements, spz_report_sections, written_streams, played_streams, spz_report_passages, spz_report_seating};

static spz_document *report_of(Report report, const spz_reading *reading, spz_format format)
{
    const spz_reading *readings[] = {reading};
    spz_document *document = NULL;
    CU_ASSERT_EQUAL(report(readings, 1, format, &document), SPZ_OK);
    CU_ASSERT_PTR_NOT_NULL_FATAL(document);
    return document;
}

static bool holds(const spz_document *document, const char *words)
{
    return strstr(spz_document_text(document, NULL), words) != NULL;
}

static void the_page_names_title_sections_and_seating(void)
{
    spz_reading *reading = read_score(answers, SPZ_TO_SEATING);
    spz_document *page = report_of(spz_report_movements, reading, SPZ_AS_TEXT);
    CU_ASSERT(strncmp(spz_document_text(page, NULL), "Answers\n=======\n", 16) == 0);
    CU_ASSERT(holds(page, "5 bars, composed 1790"));
    CU_ASSERT(holds(page, "Vn I, Vn II, Va, Vc."));
    CU_ASSERT(holds(page, "From house left to house right: "));
    CU_ASSERT(holds(page, "exits and sight"));
    spz_document_free(page);
    spz_reading_free(reading);
}

static void no_line_is_longer_than_the_page_is_wide(void)
{
    spz_reading *reading = read_score(answers, SPZ_TO_SEATING);
    static const int widths[] = {60, 80, 96, 200};
    for (size_t i = 0; i < COUNT(widths); i++) {
        spz_report *report = NULL;
        spz_document *page = NULL;
        spz_report_options options = SPZ_REPORT_USUAL;
        options.width = widths[i];
        options.all = true;
        CU_ASSERT_EQUAL_FATAL(spz_report_open(SPZ_REPORT_SEATING, SPZ_AS_TEXT, &options, &report), SPZ_OK);
        CU_ASSERT_EQUAL(spz_report_add(report, reading), SPZ_OK);
        CU_ASSERT_EQUAL_FATAL(spz_report_close(report, &page), SPZ_OK);
        spz_report_free(report);
        for (const char *line = spz_document_text(page, NULL); *line; line += strcspn(line, "\n") + 1)
            CU_ASSERT(utf8_columns(line, strcspn(line, "\n")) <= (size_t)widths[i]);
        spz_document_free(page);
    }
    spz_reading_free(reading);
}

/* German has the longest names of seatings: the overview of the narrowest page. */
static void the_overview_fits_the_narrowest_page_in_every_language(void)
{
    spz_reading *reading = read_score(answers, SPZ_TO_SEATING);
    for (int language = 0; language < SPZ_LANGUAGE_COUNT; language++) {
        spz_report *report = NULL;
        spz_document *page = NULL;
        spz_report_options options = SPZ_REPORT_USUAL;
        options.width = 60;
        options.brief = true;
        options.language = (spz_language)language;
        CU_ASSERT_EQUAL_FATAL(spz_report_open(SPZ_REPORT_MOVEMENTS, SPZ_AS_TEXT, &options, &report), SPZ_OK);
        CU_ASSERT_EQUAL(spz_report_add(report, reading), SPZ_OK);
        CU_ASSERT_EQUAL_FATAL(spz_report_close(report, &page), SPZ_OK);
        spz_report_free(report);
        for (const char *line = spz_document_text(page, NULL); *line; line += strcspn(line, "\n") + 1)
            CU_ASSERT(utf8_columns(line, strcspn(line, "\n")) <= 60);
        spz_document_free(page);
    }
    spz_reading_free(reading);
}

static void a_score_without_violins_gets_a_statement_and_no_ranking(void)
{
    static const char *const scores[] = {winds, quartet_less};
    for (size_t i = 0; i < COUNT(scores); i++) {
        spz_reading *reading = read_score(scores[i], SPZ_TO_SEATING);
        spz_document *page = report_of(spz_report_movements, reading, SPZ_AS_TEXT);
        spz_document *json = report_of(spz_report_seating, reading, SPZ_AS_JSON);
        CU_ASSERT(holds(page, "\nSEATING\n"));
        CU_ASSERT(!holds(page, "ARRANGEMENTS"));
        CU_ASSERT(holds(json, "\"recommended\": null"));
        CU_ASSERT(holds(json, "\"ranked\": []"));
        CU_ASSERT_EQUAL(spz_verdict_statement(spz_reading_at(reading, 0).verdict).outcome, i ? SPZ_WITHOUT_VIOLINS : SPZ_WITHOUT_STRINGS);
        spz_document_free(page);
        spz_document_free(json);
        spz_reading_free(reading);
    }
}

static void a_hostile_title_harms_neither_terminal_nor_reader(void)
{
    spz_reading *reading = read_score(hostile, SPZ_TO_SEATING);
    for (size_t i = 0; i < COUNT(reports); i++)
        for (int format = SPZ_AS_TEXT; format <= SPZ_AS_CSV; format++) {
            spz_document *document = report_of(reports[i], reading, (spz_format)format);
            CU_ASSERT(!holds(document, "\xc2\x9b"));
            CU_ASSERT(!holds(document, "\xe2\x80\xae"));
            spz_document_free(document);
        }
    spz_document *web = report_of(spz_report_movements, reading, SPZ_AS_HTML);
    CU_ASSERT(holds(web, "2J&lt;script&gt;"));
    CU_ASSERT(!holds(web, "\xc2\x9b") && !holds(web, "\xe2\x80\xae"));
    spz_document_free(web);
    spz_document *page = report_of(spz_report_movements, reading, SPZ_AS_TEXT);
    CU_ASSERT(strncmp(spz_document_text(page, NULL), "2J<script>\"x\",=1\n", 17) == 0);
    spz_document_free(page);
    spz_reading_free(reading);
}

static void a_reading_that_stops_early_is_refused_and_the_report_goes_on(void)
{
    spz_reading *shallow = read_score(answers, SPZ_TO_SECTIONS), *deep = read_score(answers, SPZ_TO_SEATING);
    spz_report *report = NULL;
    spz_document *document = NULL, *alone = report_of(spz_report_seating, deep, SPZ_AS_JSON);
    CU_ASSERT_EQUAL_FATAL(spz_report_open(SPZ_REPORT_SEATING, SPZ_AS_JSON, NULL, &report), SPZ_OK);
    CU_ASSERT_EQUAL(spz_report_add(report, shallow), SPZ_BAD_ARGUMENT);
    CU_ASSERT_EQUAL(spz_report_add(report, deep), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_report_close(report, &document), SPZ_OK);
    CU_ASSERT_STRING_EQUAL(spz_document_text(document, NULL), spz_document_text(alone, NULL));
    CU_ASSERT_PTR_NULL(spz_reading_at(deep, 1).movement);
    spz_document_free(document);
    spz_document_free(alone);
    spz_report_free(report);
    spz_reading_free(shallow);
    spz_reading_free(deep);
}

static void a_form_that_does_not_exist_is_refused(void)
{
    spz_document *document = NULL;
    spz_report *report = NULL;
    CU_ASSERT_EQUAL(spz_report_movements(NULL, 0, SPZ_AS_SVG, &document), SPZ_BAD_ARGUMENT);
    CU_ASSERT_PTR_NULL(document);
    CU_ASSERT_EQUAL(spz_report_open(SPZ_REPORT_KIND_COUNT, SPZ_AS_TEXT, NULL, &report), SPZ_BAD_ARGUMENT);
    CU_ASSERT_PTR_NULL(report);
}

static void the_same_score_gives_the_same_bytes(void)
{
    spz_reading *one = read_score(answers, SPZ_TO_SEATING);
    for (size_t i = 0; i < COUNT(reports); i++)
        for (int format = SPZ_AS_TEXT; format <= SPZ_AS_CSV; format++) {
            spz_document *a = report_of(reports[i], one, (spz_format)format), *b = report_of(reports[i], one, (spz_format)format);
            CU_ASSERT_STRING_EQUAL(spz_document_text(a, NULL), spz_document_text(b, NULL));
            spz_document_free(a);
            spz_document_free(b);
        }
    spz_reading_free(one);
}

/* The 1st, 2nd, 3rd ... request for memory fails, until the report gets through; never more than a status comes of it. */
static void starve(Report report, const spz_reading *reading, spz_format format)
{
    const spz_reading *readings[] = {reading};
    spz_status status = SPZ_NO_MEMORY;
    for (long request = 1; status == SPZ_NO_MEMORY && request < 100000; request++) {
        spz_document *document = NULL;
        memory_starve_after(request);
        status = report(readings, 1, format, &document);
        memory_starve_after(0);
        CU_ASSERT(status == SPZ_NO_MEMORY || status == SPZ_OK);
        CU_ASSERT((document != NULL) == (status == SPZ_OK));
        spz_document_free(document);
    }
    CU_ASSERT_EQUAL(status, SPZ_OK);
}

/* One request alone fails: the report is refused, or it is the whole one; a piece that is missing can't hide. */
static void refuse_each_request(Report report, const spz_reading *reading, spz_format format)
{
    const spz_reading *readings[] = {reading};
    spz_document *whole = report_of(report, reading, format), *document = NULL;
    bool failed = true;
    for (long request = 1; failed && request < 100000; request++) {
        document = NULL;
        memory_refuse_once(request);
        spz_status status = report(readings, 1, format, &document);
        failed = memory_refuse_once(0);
        CU_ASSERT(status == SPZ_NO_MEMORY || status == SPZ_OK);
        CU_ASSERT((document != NULL) == (status == SPZ_OK));
        if (document && strcmp(spz_document_text(document, NULL), spz_document_text(whole, NULL)) != 0) {
            printf("  format %d: request %ld was refused, and another page came of it\n", (int)format, request);
            CU_FAIL("another page");
        }
        spz_document_free(document);
    }
    CU_ASSERT_FALSE(failed);
    spz_document_free(whole);
}

static spz_status report_corrections(const spz_reading *const *readings, size_t count, spz_format format, spz_document **out)
{
    spz_report *report = NULL;
    spz_status status = spz_report_open(SPZ_REPORT_CORRECTIONS, format, NULL, &report);
    for (size_t i = 0; i < count && status == SPZ_OK; i++)
        status = spz_report_add(report, readings[i]);
    if (status == SPZ_OK)
        status = spz_report_close(report, out);
    spz_report_free(report);
    return status;
}

static void no_report_hides_that_memory_was_short(void)
{
    spz_reading *reading = read_score(answers, SPZ_TO_SEATING);
    for (size_t i = 0; i < COUNT(reports); i++)
        for (int format = SPZ_AS_TEXT; format <= SPZ_AS_CSV; format++)
            refuse_each_request(reports[i], reading, (spz_format)format);
    refuse_each_request(spz_report_movements, reading, SPZ_AS_HTML);
    refuse_each_request(report_corrections, reading, SPZ_AS_TEXT);
    spz_reading_free(reading);
}

static void every_report_survives_every_shortage_of_memory(void)
{
    spz_reading *reading = read_score(answers, SPZ_TO_SEATING);
    for (size_t i = 0; i < COUNT(reports); i++)
        for (int format = SPZ_AS_TEXT; format <= SPZ_AS_CSV; format++)
            starve(reports[i], reading, (spz_format)format);
    starve(spz_report_movements, reading, SPZ_AS_HTML);
    starve(report_corrections, reading, SPZ_AS_TEXT);
    spz_reading_free(reading);
}

/* From the file to the verdict. */
static void a_reading_survives_every_shortage_of_memory(void)
{
    spz_settings *settings = NULL;
    spz_status status = SPZ_NO_MEMORY;
    CU_ASSERT_FATAL(write_score(answers));
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    for (long request = 1; status != SPZ_OK && request < 20000; request++) {
        spz_reading *reading = NULL;
        memory_starve_after(request);
        status = spz_reading_make(path, settings, 0, SPZ_TO_SEATING, NULL, &reading);
        memory_starve_after(0);
        CU_ASSERT(status == SPZ_NO_MEMORY || status == SPZ_OK);
        CU_ASSERT((reading != NULL) == (status == SPZ_OK));
        spz_reading_free(reading);
    }
    CU_ASSERT_EQUAL(status, SPZ_OK);
    spz_settings_free(settings);
    unlink(path);
}

static void the_settings_come_back_from_their_own_report(void)
{
    static const spz_format formats[] = {SPZ_AS_TEXT, SPZ_AS_JSON, SPZ_AS_CSV};
    spz_settings *settings = NULL, *again = NULL;
    spz_document *document = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&again), SPZ_OK);
    CU_ASSERT_EQUAL(spz_settings_set(settings, "stage.width", "15.5", NULL), SPZ_OK);
    for (size_t i = 0; i < COUNT(formats); i++) {
        CU_ASSERT_EQUAL_FATAL(spz_report_settings(settings, formats[i], &document), SPZ_OK);
        CU_ASSERT(holds(document, "15.5"));
        if (formats[i] == SPZ_AS_TEXT) {
            snprintf(path, sizeof path, "/tmp/spezzato-page-XXXXXX");
            int file = mkstemp(path);
            CU_ASSERT_FATAL(file >= 0);
            close(file);
            CU_ASSERT_EQUAL(spz_document_save(document, path, NULL), SPZ_OK);
            CU_ASSERT_EQUAL(spz_settings_read(again, path, NULL), SPZ_OK);
            unlink(path);
        }
        spz_document_free(document);
    }
    CU_ASSERT_EQUAL(spz_report_settings(settings, SPZ_AS_SVG, &document), SPZ_BAD_ARGUMENT);
    for (size_t i = 0; i < spz_setting_count(); i++) {
        char name[128];
        snprintf(name, sizeof name, "%s.%s", spz_setting_at(i)->section, spz_setting_at(i)->key);
        CU_ASSERT_STRING_EQUAL(spz_settings_text(again, name), spz_settings_text(settings, name));
    }
    spz_settings_free(settings);
    spz_settings_free(again);
}

void suite_report_pages(void)
{
    static const struct Statement statements[] = {
        STATEMENT(the_page_names_title_sections_and_seating),
        STATEMENT(no_line_is_longer_than_the_page_is_wide),
        STATEMENT(the_overview_fits_the_narrowest_page_in_every_language),
        STATEMENT(a_score_without_violins_gets_a_statement_and_no_ranking),
        STATEMENT(a_hostile_title_harms_neither_terminal_nor_reader),
        STATEMENT(a_reading_that_stops_early_is_refused_and_the_report_goes_on),
        STATEMENT(a_form_that_does_not_exist_is_refused),
        STATEMENT(the_same_score_gives_the_same_bytes),
        STATEMENT(every_report_survives_every_shortage_of_memory),
        STATEMENT(no_report_hides_that_memory_was_short),
        STATEMENT(a_reading_survives_every_shortage_of_memory),
        STATEMENT(the_settings_come_back_from_their_own_report),
    };
    suite_of("report: pages", statements, COUNT(statements));
}
