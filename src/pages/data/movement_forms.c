/* The movement in all data, and the data of the page: a verdict and its passages; as a table, a row a movement. */
#include "pages/data/movement_forms.h"
#include "pages/data/seating_forms.h"

static const Field of_movement[] = {
    {"file", IN_BOTH | IN_SUMMARY, "the score's file name without its folder"},
    {"title", IN_BOTH | IN_SUMMARY, "'Work: II. movement', its number where the score says it; the file name where the score gives no title"},
    {"movement", IN_JSON, "place in its file, from 1"},
    {"bars", IN_JSON | IN_SUMMARY, "number of bars"},
    {"year", IN_JSON | IN_SUMMARY, "of composition, as the score says; null"},
};
const FieldTable movement_fields = FIELD_TABLE("movement", of_movement);

static const Field of_summary[] = {
    {"recommended", IN_SUMMARY, "the arrangement's name; empty where nothing could be judged"},
    {"order", IN_SUMMARY, "from house left to house right"},
    {"margin", IN_SUMMARY, "0 to 1, to the best arrangement with the violins placed the other way"},
    {"confidence", IN_SUMMARY, "firm, leaning, open"},
    {"statement", IN_SUMMARY, "one sentence"},
    {"striking", IN_SUMMARY, "how many passages in which sections answer each other are striking"},
    {"clear", IN_SUMMARY, "how many are clear"},
    {"marginal", IN_SUMMARY, "how many are marginal"},
};
const FieldTable summary_fields = FIELD_TABLE("summary", of_summary);
const Columns movements_columns = {"page", IN_SUMMARY, {&movement_fields, &summary_fields}};

void give_movement(FactsOut *out, const ShownMovement *shown)
{
    Facts facts = facts_of(out, &movement_fields);
    int year = spz_movement_year(shown->reading.movement);
    fact_text(&facts, "file", shown->file);
    fact_text(&facts, "title", shown->title);
    fact_integer(&facts, "movement", (long long)shown->number);
    fact_integer(&facts, "bars", (long long)spz_movement_bars(shown->reading.movement));
    fact_some(&facts, "year", year != 0, year);
    facts_done(&facts);
}

void give_all_movements(FactsOut *out, const char *title)
{
    Facts facts = facts_of(out, &movement_fields);
    fact_text(&facts, "file", "");
    fact_text(&facts, "title", title);
    facts_done(&facts);
}

void give_groups(FactsOut *out, const spz_sections *sections)
{
    Json *json = &out->json;
    json_key(json, "groups");
    json_list(json);
    for (size_t i = 0; i < spz_sections_groups(sections); i++)
        json_text(json, spz_sections_group(sections, i)->name);
    json_end(json);
}

void data_begin(spz_report *report)
{
    Json *json = &report->facts.json;
    json_object(json);
    json_put_array(json, "movements");
}

void data_end(spz_report *report)
{
    json_end(&report->facts.json);
    json_end(&report->facts.json);
}

void data_end_with_cautions(spz_report *report)
{
    Json *json = &report->facts.json;
    json_end(json);
    if (report->work) {
        json_key(json, "work");
        json_object(json);
        give_verdict(&report->facts, report->work);
        json_end(json);
    }
    json_put_text(json, "cautions", report_cautions(SPZ_ENGLISH));
    json_end(json);
}

void rows_end(spz_report *report)
{
    (void)report;
}

static void whole_movement(spz_report *report, const ShownMovement *shown)
{
    json_object(&report->facts.json);
    give_movement(&report->facts, shown);
    give_groups(&report->facts, shown->reading.sections);
    give_verdict(&report->facts, shown->reading.verdict);
    give_passages(report, shown);
    json_end(&report->facts.json);
}

static void begin_summaries(spz_report *report)
{
    facts_columns(&report->facts, &movements_columns);
}

static void count_weights(const spz_report *report, const spz_findings *findings, long counts[SPZ_WEIGHT_COUNT])
{
    for (size_t i = 0; i < spz_findings_count(findings); i++) {
        const spz_passage *passage = spz_findings_at(findings, i);
        if (report_shows(&report->options, passage) && passage->ruling.kind != SPZ_VETOED && spz_kind_is_antiphony(passage->kind))
            counts[spz_weight_of(passage->strength)]++;
    }
}

static void summary(spz_report *report, const ShownMovement *shown)
{
    const spz_verdict *verdict = shown->reading.verdict;
    const spz_ranked *best = spz_verdict_count(verdict) ? spz_verdict_ranked(verdict, 0) : NULL;
    long counts[SPZ_WEIGHT_COUNT] = {0};
    count_weights(report, shown->reading.findings, counts);
    give_movement(&report->facts, shown);
    Facts facts = facts_of(&report->facts, &summary_fields);
    fact_text(&facts, "recommended", best ? best->name : NULL);
    if (best)
        data_order(&report->facts.words, best->order);
    fact_said(&facts, "order", NULL);
    fact_number(&facts, "margin", spz_verdict_margin(verdict), 2);
    fact_text(&facts, "confidence", spz_confidence_name(spz_verdict_confidence(verdict)));
    data_statement(&report->facts.words, verdict);
    fact_said(&facts, "statement", NULL);
    fact_integer(&facts, "striking", counts[SPZ_STRIKING]);
    fact_integer(&facts, "clear", counts[SPZ_CLEAR]);
    fact_integer(&facts, "marginal", counts[SPZ_MARGINAL]);
    facts_done(&facts);
    facts_end_row(&report->facts);
}

const Form json_movements = {data_begin, whole_movement, data_end_with_cautions};
const Form csv_movements = {begin_summaries, summary, rows_end};
