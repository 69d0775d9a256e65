/* Passages as data. */
#include "pages/data/movement_forms.h"
#include "support/numbers.h"
#include "support/ticks.h"
#include "wording/passage_words.h"
#include <stdint.h>
#include <stdio.h>

static const Field of_passage[] = {
    {"kind", IN_BOTH, "exchange, hocket, split-line, imitation, div2, div3 (three or more), coupling"},
    {"caller", IN_CSV, "the first of `sections`"},
    {"responder", IN_CSV, "the second of them; empty for a divided section"},
    {"sections", IN_JSON, "caller and responder, of Vn I, Vn II, Vn III, Va, Vc, Db, Violins, Strings, Winds; one for a divided section"},
    {"groups", IN_JSON, "the same by the names of single bodies of players ('Va 2', 'Vn I (orchestra 2)')"},
    {"first_bar", IN_BOTH, "as printed, a text"},
    {"last_bar", IN_BOTH, "as printed, a text"},
    {"first_index", IN_BOTH, "the bar's place in the file, from 0"},
    {"last_index", IN_BOTH, "the same of the last bar"},
    {"rehearsal", IN_BOTH, "letter and bars after it, 'B+3'; \"\""},
    {"strength", IN_BOTH, "0 to 1, cut to two decimals; below 0.5 marginal, from 0.5 clear, from 0.8 striking"},
    {"strength_word", IN_BOTH, "that word"},
    {"ruling", IN_BOTH, "what the conductor says of it in [passages] of the settings: vetoed (its strength is then 0), weighted; \"\""},
    {"ruling_reason", IN_BOTH, "why, in her words; \"\""},
    {"strength_found", IN_BOTH, "its strength before she said so"},
    {"turns", IN_BOTH, "entries of the chain; lines of a divided section"},
    {"chain", IN_BOTH, "all sections in order of entry, where there are more than the two"},
    {"reason", IN_BOTH, "one sentence"},
    {"parts_exchanged", IN_JSON, "whether, under its first answer, the caller has what the answerer had under the call"},
    {"foreground", IN_JSON, "0 to 1: how much of what is heard the passage is"},
    {"links", IN_JSON, "all who have the gesture, in order of entry (below)"},
    {"entries", IN_JSON, "calls and answers (below)"},
};
const FieldTable passage_fields = FIELD_TABLE("passage", of_passage);
const Columns passages_columns = {"passages", IN_CSV, {&movement_fields, &passage_fields}};

static const Field of_link[] = {
    {"bar", IN_JSON, "where it first comes in, as printed"},
    {"sections", IN_JSON, "who plays it together"},
};
const FieldTable link_fields = FIELD_TABLE("link", of_link);

static const Field of_entry[] = {
    {"bar", IN_JSON, "as printed"},
    {"beat", IN_JSON, "'2', '5/2'"},
    {"section", IN_JSON, "the first of those who enter together"},
    {"sections", IN_JSON, "all who enter together"},
    {"link", IN_JSON, "its place in `links`, from 1; null"},
    {"first", IN_JSON, "its first pitch"},
    {"last", IN_JSON, "its last pitch"},
    {"part_in_it", IN_JSON, "call, answer"},
    {"interval", IN_JSON, "semitones from its call"},
    {"inverted", IN_JSON, "whether it is upside down"},
    {"stretch", IN_JSON, "1 in notes twice as long, -1 half as long, 0"},
};
const FieldTable entry_fields = FIELD_TABLE("entry", of_entry);

/* The bodies of players in a set, as a list of names. */
static void give_players(Facts *facts, const char *name, const ShownMovement *shown, spz_players players)
{
    spz_group bodies[16];
    size_t count = spz_players_named(shown->reading.sections, players, bodies, sizeof bodies / sizeof *bodies);
    if (!fact_list(facts, name))
        return;
    for (size_t i = 0; i < count; i++) {
        char text[WORDS_TEXT];
        json_text(&facts->out->json, words_body(SPZ_ENGLISH, &bodies[i], text));
    }
    facts_end_list(facts);
}

static void give_links(Facts *passage, const spz_passage *about, const ShownMovement *shown)
{
    if (!fact_array(passage, "links"))
        return;
    for (size_t i = 0; i < about->link_count; i++) {
        Facts facts = facts_line(passage->out, &link_fields);
        fact_text(&facts, "bar", spz_movement_bar_number(shown->reading.movement, about->links[i].bar));
        give_players(&facts, "sections", shown, about->links[i].players);
        facts_close(&facts);
    }
    facts_end_list(passage);
}

static void give_entry(FactsOut *out, const spz_entry *entry, const ShownMovement *shown)
{
    char beat[TICKS_TEXT], pitch[SPZ_PITCH_TEXT];
    bool winds = entry->leader == SIZE_MAX;
    Facts facts = facts_line(out, &entry_fields);
    fact_text(&facts, "bar", spz_movement_bar_number(shown->reading.movement, entry->bar));
    fact_text(&facts, "beat", ticks_text(entry->beat.over, entry->beat.under, beat));
    fact_text(&facts, "section", winds ? spz_section_name(SPZ_WINDS) : spz_sections_group(shown->reading.sections, entry->leader)->name);
    give_players(&facts, "sections", shown, entry->players);
    fact_integer(&facts, "link", (long long)entry->link + 1);
    fact_text(&facts, "first", spz_pitch_text(entry->first, pitch));
    fact_text(&facts, "last", spz_pitch_text(entry->last, pitch));
    fact_text(&facts, "part_in_it", entry->answer ? "answer" : "call");
    fact_integer(&facts, "interval", entry->change.semitones);
    fact_flag(&facts, "inverted", entry->change.inverted);
    fact_integer(&facts, "stretch", entry->change.stretch);
    facts_close(&facts);
}

static void give_entries(Facts *passage, const spz_passage *about, const ShownMovement *shown)
{
    if (!fact_array(passage, "entries"))
        return;
    for (size_t i = 0; i < about->entry_count; i++)
        give_entry(passage->out, &about->entries[i], shown);
    facts_end_list(passage);
}

static void give_sides(Facts *facts, const spz_passage *passage, const ShownMovement *shown)
{
    char name[WORDS_TEXT];
    Speaker speaker = data_speaker(shown);
    Json *json = &facts->out->json;
    fact_text(facts, "caller", spz_section_name(passage->sides[0].section));
    fact_text(facts, "responder", spz_section_name(passage->sides[1].section));
    if (fact_list(facts, "sections")) {
        for (int side = 0; side < 2; side++)
            if (passage->sides[side].section != SPZ_NO_SECTION)
                json_text(json, spz_section_name(passage->sides[side].section));
        facts_end_list(facts);
    }
    if (fact_list(facts, "groups")) {
        for (int side = 0; side < 2; side++)
            if (passage->sides[side].section != SPZ_NO_SECTION)
                json_text(json, words_side(&speaker, &passage->sides[side], name));
        facts_end_list(facts);
    }
}

static void give_bars(Facts *facts, const spz_passage *passage)
{
    char letter[WORDS_TEXT];
    fact_text(facts, "first_bar", passage->first_bar);
    fact_text(facts, "last_bar", passage->last_bar);
    fact_integer(facts, "first_index", (long long)passage->first);
    fact_integer(facts, "last_index", (long long)passage->last);
    fact_text(facts, "rehearsal", words_letter(passage, letter));
}

static void give_passage(FactsOut *out, const spz_passage *passage, const ShownMovement *shown)
{
    Speaker speaker = data_speaker(shown);
    Facts facts = facts_of(out, &passage_fields);
    fact_text(&facts, "kind", spz_kind_name(passage->kind));
    give_sides(&facts, passage, shown);
    give_bars(&facts, passage);
    fact_number(&facts, "strength", shown_strength(passage->strength), 2); /* never a number of a higher word */
    fact_text(&facts, "strength_word", spz_weight_name(spz_weight_of(passage->strength)));
    bool ruled = passage->ruling.kind != SPZ_AS_FOUND;
    fact_text(&facts, "ruling", spz_ruling_name(passage->ruling.kind));
    fact_text(&facts, "ruling_reason", ruled ? passage->ruling.reason : "");
    fact_number(&facts, "strength_found", shown_strength(ruled ? passage->ruling.heard : passage->strength), 2);
    fact_integer(&facts, "turns", passage->turns);
    words_links(&speaker, passage, &out->words);
    fact_said(&facts, "chain", "");
    words_told(&speaker, passage, &out->words);
    fact_said(&facts, "reason", "");
    fact_flag(&facts, "parts_exchanged", spz_kind_is_antiphony(passage->kind) && passage->kind != SPZ_SPLIT_LINE && passage->told.gesture.swapped);
    fact_number(&facts, "foreground", passage->foreground, 2);
    give_links(&facts, passage, shown);
    give_entries(&facts, passage, shown);
    facts_done(&facts);
}

void give_passages(spz_report *report, const ShownMovement *shown)
{
    const spz_findings *findings = shown->reading.findings;
    json_put_array(&report->facts.json, "passages");
    for (size_t i = 0; i < spz_findings_count(findings); i++) {
        if (!report_shows(&report->options, spz_findings_at(findings, i)))
            continue;
        json_object(&report->facts.json);
        give_passage(&report->facts, spz_findings_at(findings, i), shown);
        json_end(&report->facts.json);
    }
    json_end(&report->facts.json);
}

static void json_movement(spz_report *report, const ShownMovement *shown)
{
    json_object(&report->facts.json);
    give_movement(&report->facts, shown);
    give_passages(report, shown);
    json_end(&report->facts.json);
}

static void begin_rows(spz_report *report)
{
    facts_columns(&report->facts, &passages_columns);
}

static void rows(spz_report *report, const ShownMovement *shown)
{
    const spz_findings *findings = shown->reading.findings;
    for (size_t i = 0; i < spz_findings_count(findings); i++) {
        if (!report_shows(&report->options, spz_findings_at(findings, i)))
            continue;
        give_movement(&report->facts, shown);
        give_passage(&report->facts, spz_findings_at(findings, i), shown);
        facts_end_row(&report->facts);
    }
}

const Form json_passages = {data_begin, json_movement, data_end};
const Form csv_passages = {begin_rows, rows, rows_end};
