#include "pages/growing_report.h"
#include "analysis/passages/rulings.h"
#include "writing/document.h"
#include "writing/text_layout.h"
#include "support/memory.h"
#include "support/path.h"
#include <stdio.h>
#include <string.h>

enum { FORMATS = SPZ_AS_HTML + 1 };

typedef struct Kind {
    spz_depth depth; /* how far a reading must go */
    const Form *forms[FORMATS];
} Kind;

static const Kind kinds[SPZ_REPORT_KIND_COUNT] = {
    [SPZ_REPORT_MOVEMENTS] = {SPZ_TO_SEATING, {&text_movements, &json_movements, &csv_movements, &html_movements}},
    [SPZ_REPORT_SECTIONS] = {SPZ_TO_SECTIONS, {&text_sections, &json_sections, &csv_sections}},
    [SPZ_REPORT_STREAMS] = {SPZ_TO_SECTIONS, {&text_streams, &json_streams, &csv_streams}},
    [SPZ_REPORT_PASSAGES] = {SPZ_TO_PASSAGES, {&text_passages, &json_passages, &csv_passages}},
    [SPZ_REPORT_SEATING] = {SPZ_TO_SEATING, {&text_seating, &json_seating, &csv_seating}},
    [SPZ_REPORT_CORRECTIONS] = {SPZ_TO_SECTIONS, {&text_corrections}},
    [SPZ_REPORT_CONSIDERED] = {SPZ_TO_PASSAGES, {&text_considered}},
};

static spz_report_options sensible(const spz_report_options *options)
{
    spz_report_options usual = options ? *options : SPZ_REPORT_USUAL;
    if (usual.width == 0)
        usual.width = LAYOUT_USUAL_WIDTH;
    if (usual.width < LAYOUT_LEAST_WIDTH)
        usual.width = LAYOUT_LEAST_WIDTH;
    if (usual.width > LAYOUT_MOST_WIDTH)
        usual.width = LAYOUT_MOST_WIDTH;
    return usual;
}

spz_status spz_report_open(spz_report_kind kind, spz_format format, const spz_report_options *options, spz_report **out)
{
    *out = NULL;
    if ((int)kind < 0 || kind >= SPZ_REPORT_KIND_COUNT || (int)format < 0 || (int)format >= FORMATS || !kinds[kind].forms[format])
        return SPZ_BAD_ARGUMENT;
    spz_report *report = memory_get(sizeof *report);
    if (!report)
        return SPZ_NO_MEMORY;
    *report = (spz_report){.form = kinds[kind].forms[format], .depth = kinds[kind].depth, .options = sensible(options)};
    buffer_init(&report->out);
    buffer_init(&report->work_told);
    facts_begin(&report->facts, &report->out);
    markup_begin(&report->html, &report->out);
    report->form->begin(report);
    *out = report;
    return SPZ_OK;
}

char *ruling_section(const ShownMovement *shown, char *out, size_t size)
{
    char name[RULING_SECTION];
    snprintf(out, size, "%s", ruling_section_of(shown->file, shown->of > 1 ? shown->number : 0, name));
    return out;
}

bool report_shows(const spz_report_options *options, const spz_passage *passage)
{
    if (options->kinds && !(options->kinds & 1u << passage->kind))
        return false;
    return spz_passage_standing(passage) >= options->strength;
}

static bool deep_enough(const spz_movement_reading *reading, spz_depth depth)
{
    return reading->sections && (depth < SPZ_TO_PASSAGES || reading->findings) && (depth < SPZ_TO_SEATING || reading->verdict);
}

ShownMovement shown_movement(const spz_reading *reading, size_t index)
{
    ShownMovement shown = {.reading = spz_reading_at(reading, index), .number = index + 1, .of = spz_reading_count(reading)};
    const char *title = spz_movement_title(shown.reading.movement);
    shown.path = spz_score_file(spz_reading_score(reading));
    shown.file = path_name(shown.path);
    shown.title = *title ? title : shown.file;
    return shown;
}

spz_status spz_report_add(spz_report *report, const spz_reading *reading)
{
    size_t count = spz_reading_count(reading);
    for (size_t i = 0; i < count; i++) {
        spz_movement_reading movement = spz_reading_at(reading, i);
        if (!deep_enough(&movement, report->depth))
            return SPZ_BAD_ARGUMENT;
    }
    buffer_go_on(&report->out); /* what failed outside the report is not its business */
    for (size_t i = 0; i < count; i++) {
        ShownMovement shown = shown_movement(reading, i);
        report->form->movement(report, &shown);
        report->movements++;
    }
    report->out.failed = report->out.failed || buffer_in_doubt(&report->out);
    return buffer_failed(&report->out) ? SPZ_NO_MEMORY : SPZ_OK;
}

void spz_report_set_work(spz_report *report, const spz_verdict *work)
{
    report->work = work;
}

spz_status spz_report_close(spz_report *report, spz_document **out)
{
    buffer_go_on(&report->out);
    report->form->end(report);
    facts_finish(&report->facts);
    markup_end(&report->html);
    return document_take(&report->out, out);
}

void spz_report_free(spz_report *report)
{
    if (!report)
        return;
    buffer_free(&report->facts.words);
    buffer_free(&report->work_told);
    buffer_free(&report->out);
    memory_free(report);
}

static spz_status whole_report(spz_report_kind kind, const spz_reading *const *readings, size_t count, spz_format format,
                               const spz_report_options *options, spz_document **out)
{
    spz_report *report;
    *out = NULL;
    spz_status status = spz_report_open(kind, format, options, &report);
    for (size_t i = 0; i < count && !status; i++)
        status = spz_report_add(report, readings[i]);
    if (!status)
        status = spz_report_close(report, out);
    spz_report_free(report);
    return status;
}

spz_status spz_report_movements(const spz_reading *const *readings, size_t count, spz_format format, spz_document **out)
{
    return whole_report(SPZ_REPORT_MOVEMENTS, readings, count, format, NULL, out);
}

spz_status spz_report_sections(const spz_reading *const *readings, size_t count, spz_format format, spz_document **out)
{
    return whole_report(SPZ_REPORT_SECTIONS, readings, count, format, NULL, out);
}

spz_status spz_report_streams(const spz_reading *const *readings, size_t count, bool played, spz_format format, spz_document **out)
{
    spz_report_options options = SPZ_REPORT_USUAL;
    options.played = played;
    return whole_report(SPZ_REPORT_STREAMS, readings, count, format, &options, out);
}

spz_status spz_report_passages(const spz_reading *const *readings, size_t count, spz_format format, spz_document **out)
{
    return whole_report(SPZ_REPORT_PASSAGES, readings, count, format, NULL, out);
}

spz_status spz_report_seating(const spz_reading *const *readings, size_t count, spz_format format, spz_document **out)
{
    return whole_report(SPZ_REPORT_SEATING, readings, count, format, NULL, out);
}
