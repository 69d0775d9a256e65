/* The lines of a score and the sections they were taken for, as data. */
#include "pages/data/movement_forms.h"
#include "wording/section_words.h"

static const Field of_line[] = {
    {"part", IN_BOTH, "the part's name in the score"},
    {"part_index", IN_JSON, "its place in the file, from 0"},
    {"staff", IN_BOTH, "0: all"},
    {"voice", IN_BOTH, "null: all"},
    {"family", IN_BOTH, "strings, woodwind, brass, percussion, keyboard, plucked, voices, not known"},
    {"section", IN_BOTH, "Vn I, Vn II, Vn III, Va, Vc, Db; \"\""},
    {"also", IN_BOTH, "a second section that reads the same notes; \"\""},
    {"orchestra", IN_BOTH, "1 or 2 where there are two; 0"},
    {"number", IN_BOTH, "of the body of players, 'Va 2'; 0"},
    {"division", IN_BOTH, "of a section that is written on several lines; 0"},
    {"role", IN_BOTH, "tutti, desk, solo, continuo"},
    {"desk", IN_BOTH, "as printed; \"\""},
    {"left_out", IN_BOTH, "whether it is not looked at"},
    {"because", IN_BOTH, "what told, in words"},
    {"clues", IN_JSON, "the same as facts (below)"},
    {"advice", IN_JSON, "the entry of a settings file that says the same"},
};
const FieldTable line_fields = FIELD_TABLE("line", of_line);
const Columns sections_columns = {"sections", IN_CSV, {&movement_fields, &line_fields}};

static const Field of_clue[] = {
    {"kind", IN_JSON, "what kind of clue"},
    {"text", IN_JSON, "as the file has it"},
    {"number", IN_JSON, "its figure; 0"},
};
const FieldTable clue_fields = FIELD_TABLE("clue", of_clue);

static void give_clues(Facts *facts, const spz_line *line)
{
    say_clues(&facts->out->words, SPZ_ENGLISH, line);
    fact_said(facts, "because", NULL);
    if (!fact_list(facts, "clues"))
        return;
    for (size_t i = 0; i < line->clue_count; i++) {
        Facts clue = facts_line(facts->out, &clue_fields);
        fact_text(&clue, "kind", clue_name(line->clues[i].kind));
        fact_text(&clue, "text", line->clues[i].text);
        fact_integer(&clue, "number", line->clues[i].number);
        facts_close(&clue);
    }
    facts_end_list(facts);
}

static void give_line(FactsOut *out, const ShownMovement *shown, size_t index)
{
    const spz_line *line = spz_sections_line(shown->reading.sections, index);
    Facts facts = facts_of(out, &line_fields);
    fact_text(&facts, "part", spz_movement_part_name(shown->reading.movement, line->part));
    fact_integer(&facts, "part_index", (long long)line->part);
    fact_integer(&facts, "staff", line->staff);
    fact_text(&facts, "voice", line->voice);
    fact_text(&facts, "family", spz_family_name(line->family));
    fact_text(&facts, "section", spz_section_name(line->section));
    fact_text(&facts, "also", spz_section_name(line->also));
    fact_integer(&facts, "orchestra", line->orchestra);
    fact_integer(&facts, "number", line->number);
    fact_integer(&facts, "division", line->division);
    fact_text(&facts, "role", spz_role_name(line->role));
    fact_text(&facts, "desk", line->desk);
    fact_flag(&facts, "left_out", line->left_out);
    give_clues(&facts, line);
    fact_text(&facts, "advice", spz_sections_advice(shown->reading.sections, index));
    facts_done(&facts);
}

static void json_movement(spz_report *report, const ShownMovement *shown)
{
    Json *json = &report->facts.json;
    const spz_sections *sections = shown->reading.sections;
    json_object(json);
    give_movement(&report->facts, shown);
    give_groups(&report->facts, sections);
    json_put_array(json, "lines");
    for (size_t i = 0; i < spz_sections_lines(sections); i++) {
        json_object(json);
        give_line(&report->facts, shown, i);
        json_end(json);
    }
    json_end(json);
    json_end(json);
}

static void begin_rows(spz_report *report)
{
    facts_columns(&report->facts, &sections_columns);
}

static void rows(spz_report *report, const ShownMovement *shown)
{
    for (size_t i = 0; i < spz_sections_lines(shown->reading.sections); i++) {
        give_movement(&report->facts, shown);
        give_line(&report->facts, shown, i);
        facts_end_row(&report->facts);
    }
}

const Form json_sections = {data_begin, json_movement, data_end};
const Form csv_sections = {begin_rows, rows, rows_end};
