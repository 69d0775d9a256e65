/* Scores that are music, taken through everything: read, checked, heard, seated, every form of every report, notes, parts; marked, read again,
 * and the marks taken out again, which gives the bytes back. */
#define _GNU_SOURCE
#include "fuzz/score_mutator.h"
#include "spezzato/spezzato.h"
#include <fcntl.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);
size_t LLVMFuzzerMutate(uint8_t *data, size_t size, size_t most);
size_t LLVMFuzzerCustomMutator(uint8_t *data, size_t size, size_t most, unsigned seed);

static unsigned long runs, judged, with_passages;
static char place[64], marked_place[64];

static void tell(void)
{
    fprintf(stderr, "music: %lu runs, %lu with a verdict, %lu with antiphony\n", runs, judged, with_passages);
    unlink(place);
    unlink(marked_place);
}

/* In memory where the system has a folder for that. */
static void prepare(void)
{
    const char *folder = access("/dev/shm", W_OK) == 0 ? "/dev/shm" : "/tmp";
    snprintf(place, sizeof place, "%s/spezzato-fuzz-%ld.musicxml", folder, (long)getpid());
    snprintf(marked_place, sizeof marked_place, "%s/spezzato-fuzz-%ld-marked.musicxml", folder, (long)getpid());
    atexit(tell);
}

static void save(const char *path, const void *bytes, size_t size)
{
    FILE *file = fopen(path, "wb");
    if (!file || fwrite(bytes, 1, size, file) != size || fclose(file))
        abort();
}

size_t LLVMFuzzerCustomMutator(uint8_t *data, size_t size, size_t most, unsigned seed)
{
    size_t changed = seed % 16 ? score_mutate(data, size, most, seed) : 0;
    return changed ? changed : LLVMFuzzerMutate(data, size, most);
}

/* A report that was asked for comes whole, or there is no memory; here there is. */
static void whole(spz_status status, spz_document *document)
{
    size_t length = 0;
    if (status != SPZ_OK || !document || !spz_document_text(document, &length))
        abort();
    spz_document_free(document);
}

/* Which of the many ways of looking at a score this run takes: by its bytes, so that the same score is always looked at the same way. */
static unsigned way_of(const uint8_t *data, size_t size)
{
    unsigned sum = 2166136261u;
    for (size_t i = 0; i < size; i++)
        sum = (sum ^ data[i]) * 16777619u;
    return sum ^ sum >> 15;
}

static void all_reports(const spz_reading *reading, const spz_settings *settings, unsigned way)
{
    static const spz_format formats[] = {SPZ_AS_TEXT, SPZ_AS_JSON, SPZ_AS_CSV, SPZ_AS_HTML};
    for (int kind = 0; kind < SPZ_REPORT_KIND_COUNT; kind++)
        for (size_t f = 0; f < sizeof formats / sizeof *formats; f++) {
            spz_report_options options = SPZ_REPORT_USUAL;
            spz_report *report;
            spz_document *document = NULL;
            options.bar = way & 1 ? "2" : "5";
            options.language = (spz_language)((f + way) % SPZ_LANGUAGE_COUNT);
            options.brief = (way >> 2) % 4 == 0;
            options.all = way & 16;
            options.played = way & 32;
            options.named = way & 64;
            options.strength = (way >> 7) % 4 == 0 ? 0.5 : 0;
            options.width = (way >> 9) % 4 == 0 ? 60 : 0;
            options.settings = way & 2048 ? settings : NULL;
            options.overview = way & 4096 ? "index.html" : NULL;
            if (spz_report_open((spz_report_kind)kind, formats[f], &options, &report) != SPZ_OK)
                continue;
            if (spz_report_add(report, reading) != SPZ_OK)
                abort();
            spz_status status = spz_report_close(report, &document);
            whole(status, document);
            spz_report_free(report);
        }
}

static void look_at_notes(const spz_reading *const *readings, unsigned way)
{
    static const spz_format forms[] = {SPZ_AS_TEXT, SPZ_AS_MARKDOWN, SPZ_AS_HTML, SPZ_AS_JSON, SPZ_AS_CSV, SPZ_AS_ODT};
    static const spz_note_anchor anchors[] = {{"1", 2}, {"3", 11.5}};
    static const double lasts[] = {95};
    spz_document *document = NULL;
    spz_note_options notes = SPZ_NOTES_USUAL;
    notes.citations = way & 1 ? 0 : 2;
    notes.strength = way & 2 ? 0 : 0.5;
    notes.notation = way & 4;
    notes.language = (spz_language)(way % SPZ_LANGUAGE_COUNT);
    if (way & 8)
        notes.lasts = lasts, notes.lasts_count = 1;
    if (way & 16)
        notes.anchors = anchors, notes.anchor_count = 1 + (way >> 5) % 2;
    for (size_t i = 0; i < sizeof forms / sizeof *forms; i++) /* anchors that contradict the score are refused */
        if (spz_sheet_notes(readings, 1, &notes, forms[i], &document) == SPZ_OK)
            whole(SPZ_OK, document);
        else if (!notes.anchors)
            abort();
    notes.listeners = true; /* the time line of each movement */
    for (int svg = 0; svg < 2; svg++)
        if (spz_sheet_notes(readings, 1, &notes, svg ? SPZ_AS_SVG : SPZ_AS_HTML, &document) == SPZ_OK)
            whole(SPZ_OK, document);
}

static void look_at_stage(const spz_reading *reading, const spz_settings *settings, unsigned way)
{
    spz_movement_reading movement = spz_reading_at(reading, 0);
    spz_section pair[2][2];
    size_t pairs = 0;
    spz_plan *plan = NULL;
    spz_laying *laying = NULL;
    spz_document *document = NULL;
    spz_forces forces = {{0}, {0}};
    spz_language language = (spz_language)(way % SPZ_LANGUAGE_COUNT);
    size_t count = spz_verdict_count(movement.verdict);
    if (!count)
        return;
    bool thirds = spz_verdict_thirds(movement.verdict), two = spz_verdict_orchestras(movement.verdict) == 2;
    const char *name = spz_verdict_ranked(movement.verdict, way % count)->name;
    while (pairs < 2 && spz_verdict_pair(movement.verdict, pairs, pair[pairs]))
        pairs++;
    if ((two ? spz_stage_plan_double : spz_stage_plan)(settings, name, thirds, NULL, &plan) != SPZ_OK)
        return;
    spz_forces_add(&forces, movement.sections);
    whole(spz_report_stage(plan, (const spz_section(*)[2])pair, pairs, way & 1 ? SPZ_AS_TEXT : SPZ_AS_SVG, language, &document), document);
    if (spz_laying_make(plan, &forces, settings, &laying) != SPZ_OK)
        abort();
    whole(spz_report_laying(laying, (const spz_section(*)[2])pair, pairs, way & 2 ? SPZ_AS_CSV : way & 4 ? SPZ_AS_HTML : SPZ_AS_SVG, language, &document), document);
    spz_laying_free(laying);
    spz_plan_free(plan);
}

/* One seating for the work that the score and itself once more are. */
static void look_at_work(const spz_reading *reading, const spz_settings *settings, unsigned way)
{
    static const char *const pages[] = {"score.html", "score.html"};
    const spz_verdict *verdicts[] = {spz_reading_at(reading, 0).verdict, spz_reading_at(reading, spz_reading_count(reading) - 1).verdict};
    spz_verdict *work = NULL;
    spz_document *document = NULL;
    if (spz_seating_judge_work(verdicts, 2, settings, NULL, &work) != SPZ_OK)
        abort();
    whole(spz_report_work(work, way & 1 ? pages : NULL, settings, (spz_language)(way % SPZ_LANGUAGE_COUNT), SPZ_AS_HTML, &document), document);
    for (int form = SPZ_AS_TEXT; form <= SPZ_AS_JSON; form++) {
        spz_report *report = NULL;
        document = NULL;
        if (spz_report_open(SPZ_REPORT_SEATING, (spz_format)form, NULL, &report) != SPZ_OK || spz_report_add(report, reading) != SPZ_OK)
            abort();
        spz_report_set_work(report, work);
        spz_status status = spz_report_close(report, &document);
        whole(status, document);
        spz_report_free(report);
    }
    spz_verdict_free(work);
}

static void all_sheets(const spz_reading *reading, const spz_settings *settings, unsigned way)
{
    const spz_reading *readings[] = {reading};
    spz_document *document = NULL;
    spz_sheet_options parts = SPZ_SHEET_USUAL;
    parts.strength = 0;
    for (int format = SPZ_AS_TEXT; format <= SPZ_AS_HTML; format++) {
        parts.language = (spz_language)((format + way) % SPZ_LANGUAGE_COUNT);
        if (format != SPZ_AS_JSON)
            whole(spz_sheet_parts(readings, 1, settings, &parts, (spz_format)format, &document), document);
        whole(spz_sheet_rehearsal(readings, 1, settings, &parts, (spz_format)format, &document), document);
        if (spz_sheet_bowings(readings, 1, settings, &parts, (spz_format)format, &document) == SPZ_OK)
            whole(SPZ_OK, document);
    }
    look_at_notes(readings, way);
}

/* Marked and unmarked it is the score that it was; a score that can be read can be read when it is marked. */
static void there_and_back(const uint8_t *data, size_t size, const spz_settings *settings, unsigned way)
{
    spz_document *marked = NULL, *plain = NULL;
    spz_score *again = NULL;
    spz_sheet_options options = SPZ_SHEET_USUAL;
    size_t count = 0, taken = 0, length;
    options.strength = 0;
    if (spz_score_mark(place, settings, &options, false, NULL, &marked, &count) != SPZ_OK)
        return;
    const char *text = spz_document_text(marked, &length);
    save(marked_place, text, length);
    if (spz_score_read(marked_place, NULL, &again) != SPZ_OK)
        abort();
    spz_score_free(again);
    if (spz_score_unmark(marked_place, false, NULL, &plain, &taken) != SPZ_OK || taken != count)
        abort();
    text = spz_document_text(plain, &length);
    bool own = memmem(data, size, "spezzato", 8) != NULL; /* marks that were there before are gone */
    if (!own && (length != size || memcmp(text, data, size) != 0))
        abort();
    spz_document_free(plain);
    plain = NULL;
    if (way % 4 == 0) { /* the marked score, packed: it can be read, and its marks are found again */
        size_t found = 0;
        if (spz_score_unmark(marked_place, true, NULL, &plain, &found) != SPZ_OK || found != count)
            abort();
        const char *packed = spz_document_text(plain, &length);
        if (spz_score_read_memory(packed, length, "packed", NULL, &again) != SPZ_OK)
            abort();
        spz_score_free(again);
        spz_document_free(plain);
    }
    spz_document_free(marked);
}

static bool has_antiphony(const spz_reading *reading)
{
    for (size_t m = 0; m < spz_reading_count(reading); m++) {
        spz_movement_reading movement = spz_reading_at(reading, m);
        for (size_t i = 0; i < spz_findings_count(movement.findings); i++)
            if (spz_kind_is_antiphony(spz_findings_at(movement.findings, i)->kind))
                return true;
    }
    return false;
}

static void check(const spz_settings *settings)
{
    spz_doubts *doubts = NULL;
    spz_document *document = NULL;
    if (spz_check(place, settings, NULL, &doubts) != SPZ_OK)
        return;
    const spz_doubts *lists[] = {doubts};
    whole(spz_report_doubts(lists, 1, SPZ_AS_JSON, SPZ_GERMAN, &document), document);
    spz_doubts_free(doubts);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static spz_settings *settings;
    spz_reading *reading = NULL;
    if (!settings) {
        if (spz_settings_new(&settings) != SPZ_OK)
            abort();
        prepare();
    }
    runs++;
    save(place, data, size);
    check(settings);
    if (spz_reading_make(place, settings, 0, SPZ_TO_SEATING, NULL, &reading) != SPZ_OK)
        return 0;
    judged += spz_verdict_count(spz_reading_at(reading, 0).verdict) > 0;
    with_passages += has_antiphony(reading);
    const unsigned way = way_of(data, size);
    all_reports(reading, settings, way);
    all_sheets(reading, settings, way);
    look_at_stage(reading, settings, way);
    look_at_work(reading, settings, way);
    spz_reading_free(reading);
    there_and_back(data, size, settings, way);
    return 0;
}
