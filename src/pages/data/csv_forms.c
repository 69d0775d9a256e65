/* The CSV of the reports: one table each, its columns in docs/output.md. */
#include "support/numbers.h"
#include "pages/data/seating_forms.h"
#include "wording/passage_words.h"
#include "wording/section_words.h"
#include <string.h>

static void end(spz_report *report)
{
    (void)report;
}

static void movement_cells(CsvRow *row, const ShownMovement *shown)
{
    csv_text(row, shown->file);
    csv_text(row, shown->title);
}

static void begin_movements(spz_report *report)
{
    csv_header(&report->row, "file,title,bars,year,recommended,order,margin,confidence,statement,striking,clear,marginal");
}

/* Clear passages and so on, the striking ones first. */
static void count_weights(const spz_report *report, const spz_findings *findings, long counts[SPZ_WEIGHT_COUNT])
{
    for (size_t i = 0; i < spz_findings_count(findings); i++) {
        const spz_passage *passage = spz_findings_at(findings, i);
        if (report_shows(&report->options, passage) && spz_kind_is_antiphony(passage->kind))
            counts[SPZ_STRIKING - spz_weight_of(passage->strength)]++;
    }
}

static void movements_movement(spz_report *report, const ShownMovement *shown)
{
    CsvRow *row = &report->row;
    const spz_verdict *verdict = shown->reading.verdict;
    const spz_ranked *best = spz_verdict_count(verdict) ? spz_verdict_ranked(verdict, 0) : NULL;
    long counts[SPZ_WEIGHT_COUNT] = {0};
    Buffer words;
    buffer_init(&words);
    count_weights(report, shown->reading.findings, counts);
    movement_cells(row, shown);
    csv_integer(row, (long long)spz_movement_bars(shown->reading.movement));
    if (spz_movement_year(shown->reading.movement))
        csv_integer(row, spz_movement_year(shown->reading.movement));
    else
        csv_text(row, "");
    csv_text(row, best ? best->name : "");
    if (best)
        data_order(&words, best->order);
    csv_text(row, words.length ? words.text : "");
    buffer_clear(&words);
    csv_number(row, spz_verdict_margin(verdict), 2);
    csv_text(row, spz_confidence_name(spz_verdict_confidence(verdict)));
    data_statement(&words, verdict);
    csv_text(row, words.text);
    report->out.failed = report->out.failed || buffer_failed(&words);
    buffer_free(&words);
    for (int i = 0; i < SPZ_WEIGHT_COUNT; i++)
        csv_integer(row, counts[i]);
    csv_end(row);
}

static void begin_sections(spz_report *report)
{
    csv_header(&report->row, "file,title,part,staff,voice,family,section,also,orchestra,number,division,role,desk,left_out,because");
}

static void sections_movement(spz_report *report, const ShownMovement *shown)
{
    CsvRow *row = &report->row;
    for (size_t i = 0; i < spz_sections_lines(shown->reading.sections); i++) {
        const spz_line *line = spz_sections_line(shown->reading.sections, i);
        movement_cells(row, shown);
        csv_text(row, spz_movement_part_name(shown->reading.movement, line->part));
        csv_integer(row, line->staff);
        csv_text(row, line->voice);
        csv_text(row, spz_family_name(line->family));
        csv_text(row, spz_section_name(line->section));
        csv_text(row, spz_section_name(line->also));
        csv_integer(row, line->orchestra);
        csv_integer(row, line->number);
        csv_integer(row, line->division);
        csv_text(row, spz_role_name(line->role));
        csv_text(row, line->desk);
        csv_integer(row, line->left_out);
        Buffer because;
        buffer_init(&because);
        say_clues(&because, SPZ_ENGLISH, line);
        csv_text(row, because.text);
        report->out.failed = report->out.failed || buffer_failed(&because);
        buffer_free(&because);
        csv_end(row);
    }
}

static void begin_passages(spz_report *report)
{
    csv_header(&report->row, "file,title,kind,caller,responder,first_bar,last_bar,first_index,last_index,rehearsal,strength,strength_word,"
                             "turns,chain,reason");
}

static void passage_line(CsvRow *row, const spz_passage *passage, const ShownMovement *shown)
{
    char letter[WORDS_TEXT];
    Speaker speaker = data_speaker(shown);
    Buffer words;
    buffer_init(&words);
    movement_cells(row, shown);
    csv_text(row, spz_kind_name(passage->kind));
    csv_text(row, spz_section_name(passage->sides[0].section));
    csv_text(row, spz_section_name(passage->sides[1].section));
    csv_text(row, passage->first_bar);
    csv_text(row, passage->last_bar);
    csv_integer(row, (long long)passage->first);
    csv_integer(row, (long long)passage->last);
    csv_text(row, words_letter(passage, letter));
    csv_number(row, shown_strength(passage->strength), 2);
    csv_text(row, spz_weight_name(spz_weight_of(passage->strength)));
    csv_integer(row, passage->turns);
    words_links(&speaker, passage, &words);
    csv_text(row, words.length ? words.text : "");
    buffer_clear(&words);
    words_told(&speaker, passage, &words);
    csv_text(row, words.length ? words.text : "");
    buffer_free(&words);
    csv_end(row);
}

static void passages_movement(spz_report *report, const ShownMovement *shown)
{
    const spz_findings *findings = shown->reading.findings;
    for (size_t i = 0; i < spz_findings_count(findings); i++)
        if (report_shows(&report->options, spz_findings_at(findings, i)))
            passage_line(&report->row, spz_findings_at(findings, i), shown);
}

const Form csv_movements = {begin_movements, movements_movement, end};
const Form csv_sections = {begin_sections, sections_movement, end};
const Form csv_passages = {begin_passages, passages_movement, end};
