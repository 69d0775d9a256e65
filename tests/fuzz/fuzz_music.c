/* Scores that are music, taken through everything: read, checked, heard, seated, every form of every report, notes, parts; marked, read again,
 * and the marks taken out again, which gives the bytes back. */
#define _GNU_SOURCE
#include "fuzz/score_mutator.h"
#include "spezzato/check.h"
#include "spezzato/sheets.h"
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

static void all_reports(const spz_reading *reading)
{
    static const spz_format formats[] = {SPZ_AS_TEXT, SPZ_AS_JSON, SPZ_AS_CSV, SPZ_AS_HTML};
    for (int kind = 0; kind < SPZ_REPORT_KIND_COUNT; kind++)
        for (size_t f = 0; f < sizeof formats / sizeof *formats; f++) {
            spz_report_options options = SPZ_REPORT_USUAL;
            spz_report *report;
            spz_document *document = NULL;
            options.bar = "2";
            options.language = (spz_language)(f % SPZ_LANGUAGE_COUNT);
            if (spz_report_open((spz_report_kind)kind, formats[f], &options, &report) != SPZ_OK)
                continue;
            if (spz_report_add(report, reading) != SPZ_OK)
                abort();
            spz_status status = spz_report_close(report, &document);
            whole(status, document);
            spz_report_free(report);
        }
}

static void all_sheets(const spz_reading *reading, const spz_settings *settings)
{
    const spz_reading *readings[] = {reading};
    spz_document *document = NULL;
    spz_sheet_options parts = SPZ_SHEET_USUAL;
    parts.strength = 0;
    for (int format = SPZ_AS_TEXT; format <= SPZ_AS_HTML; format++) {
        spz_note_options notes = SPZ_NOTES_USUAL;
        if (format != SPZ_AS_JSON)
            whole(spz_sheet_parts(readings, 1, settings, &parts, (spz_format)format, &document), document);
        notes.citations = 0;
        notes.language = (spz_language)(format % SPZ_LANGUAGE_COUNT);
        whole(spz_sheet_notes(readings, 1, &notes, (spz_format)format, &document), document);
    }
}

/* Marked and unmarked it is the score that it was; a score that can be read can be read when it is marked. */
static void there_and_back(const uint8_t *data, size_t size, const spz_settings *settings)
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
    all_reports(reading);
    all_sheets(reading, settings);
    spz_reading_free(reading);
    there_and_back(data, size, settings);
    return 0;
}
