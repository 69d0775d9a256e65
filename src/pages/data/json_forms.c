/* The JSON of the reports. Fields once written stay; docs/output.md lists them. */
#include "support/numbers.h"
#include "pages/data/seating_forms.h"
#include "wording/passage_words.h"
#include "wording/section_words.h"
#include <inttypes.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

static void begin(spz_report *report)
{
    json_object(&report->json);
    json_key(&report->json, "movements");
    json_array(&report->json);
}

static void end(spz_report *report)
{
    json_end(&report->json);
    json_end(&report->json);
}

/* The numbers that JSON shows for a strength never belong to a higher word. */
static void put_strength(Json *json, double strength)
{
    json_put_number(json, "strength", shown_strength(strength), 2);
    json_put_text(json, "strength_word", spz_weight_name(spz_weight_of(strength)));
}

static void put_movement(Json *json, const ShownMovement *shown)
{
    json_put_text(json, "file", shown->file);
    json_put_text(json, "title", shown->title);
    json_put_integer(json, "movement", (long long)shown->number);
    json_put_integer(json, "bars", (long long)spz_movement_bars(shown->reading.movement));
    json_key(json, "year");
    if (spz_movement_year(shown->reading.movement))
        json_integer(json, spz_movement_year(shown->reading.movement));
    else
        json_text(json, NULL);
}

static void put_groups(Json *json, const spz_sections *sections)
{
    json_key(json, "groups");
    json_list(json);
    for (size_t i = 0; i < spz_sections_groups(sections); i++)
        json_text(json, spz_sections_group(sections, i)->name);
    json_end(json);
}

static void put_clues(Json *json, const spz_line *line)
{
    Buffer because;
    buffer_init(&because);
    say_clues(&because, SPZ_ENGLISH, line);
    json_put_text(json, "because", because.text);
    json_key(json, "clues");
    json_list(json);
    for (size_t i = 0; i < line->clue_count; i++) {
        json_row(json);
        json_put_text(json, "kind", clue_name(line->clues[i].kind));
        json_put_text(json, "text", line->clues[i].text);
        json_put_integer(json, "number", line->clues[i].number);
        json_end(json);
    }
    json_end(json);
    json->out->failed = json->out->failed || buffer_failed(&because);
    buffer_free(&because);
}

static void put_line(Json *json, const ShownMovement *shown, size_t index)
{
    const spz_line *line = spz_sections_line(shown->reading.sections, index);
    json_object(json);
    json_put_text(json, "part", spz_movement_part_name(shown->reading.movement, line->part));
    json_put_integer(json, "part_index", (long long)line->part);
    json_put_integer(json, "staff", line->staff);
    json_put_text(json, "voice", line->voice);
    json_put_text(json, "family", spz_family_name(line->family));
    json_put_text(json, "section", spz_section_name(line->section));
    json_put_text(json, "also", spz_section_name(line->also));
    json_put_integer(json, "orchestra", line->orchestra);
    json_put_integer(json, "number", line->number);
    json_put_integer(json, "division", line->division);
    json_put_text(json, "role", spz_role_name(line->role));
    json_put_text(json, "desk", line->desk);
    json_put_flag(json, "left_out", line->left_out);
    put_clues(json, line);
    json_put_text(json, "advice", spz_sections_advice(shown->reading.sections, index));
    json_end(json);
}

/* The bodies of players in a set, as a list of names. */
static void put_players(Json *json, const char *key, const ShownMovement *shown, spz_players players)
{
    spz_group bodies[16];
    size_t count = spz_players_named(shown->reading.sections, players, bodies, sizeof bodies / sizeof *bodies);
    json_key(json, key);
    json_list(json);
    for (size_t i = 0; i < count; i++) {
        char name[WORDS_TEXT];
        json_text(json, words_body(SPZ_ENGLISH, &bodies[i], name));
    }
    json_end(json);
}

static void put_links(Json *json, const spz_passage *passage, const ShownMovement *shown)
{
    json_key(json, "links");
    json_array(json);
    for (size_t i = 0; i < passage->link_count; i++) {
        json_row(json);
        json_put_text(json, "bar", spz_movement_bar_number(shown->reading.movement, passage->links[i].bar));
        put_players(json, "sections", shown, passage->links[i].players);
        json_end(json);
    }
    json_end(json);
}

static void put_beat(Json *json, spz_fraction beat)
{
    char text[48];
    if (beat.under == 1)
        snprintf(text, sizeof text, "%" PRId64, beat.over);
    else
        snprintf(text, sizeof text, "%" PRId64 "/%" PRId64, beat.over, beat.under);
    json_put_text(json, "beat", text);
}

static void put_entries(Json *json, const spz_passage *passage, const ShownMovement *shown)
{
    json_key(json, "entries");
    json_array(json);
    for (size_t i = 0; i < passage->entry_count; i++) {
        const spz_entry *entry = &passage->entries[i];
        char pitch[SPZ_PITCH_TEXT];
        bool winds = entry->leader == SIZE_MAX;
        json_row(json);
        json_put_text(json, "bar", spz_movement_bar_number(shown->reading.movement, entry->bar));
        put_beat(json, entry->beat);
        json_put_text(json, "section", winds ? spz_section_name(SPZ_WINDS) : spz_sections_group(shown->reading.sections, entry->leader)->name);
        put_players(json, "sections", shown, entry->players);
        json_put_integer(json, "link", (long long)entry->link + 1);
        json_put_text(json, "first", spz_pitch_text(entry->first, pitch));
        json_put_text(json, "last", spz_pitch_text(entry->last, pitch));
        json_put_text(json, "part_in_it", entry->answer ? "answer" : "call");
        json_put_integer(json, "interval", entry->change.semitones);
        json_put_flag(json, "inverted", entry->change.inverted);
        json_put_integer(json, "stretch", entry->change.stretch);
        json_end(json);
    }
    json_end(json);
}

static void put_sides(Json *json, const spz_passage *passage, const ShownMovement *shown)
{
    char name[WORDS_TEXT];
    Speaker speaker = data_speaker(shown);
    json_key(json, "sections");
    json_list(json);
    for (int side = 0; side < 2; side++)
        if (passage->sides[side].section != SPZ_NO_SECTION)
            json_text(json, spz_section_name(passage->sides[side].section));
    json_end(json);
    json_key(json, "groups");
    json_list(json);
    for (int side = 0; side < 2; side++)
        if (passage->sides[side].section != SPZ_NO_SECTION)
            json_text(json, words_side(&speaker, &passage->sides[side], name));
    json_end(json);
}

/* What it tells, in words: `chain` is empty where there are two links or fewer. */
static void put_told(Json *json, const spz_passage *passage, const ShownMovement *shown)
{
    Speaker speaker = data_speaker(shown);
    Buffer words;
    buffer_init(&words);
    words_told(&speaker, passage, &words);
    json_put_text(json, "reason", words.length ? words.text : "");
    buffer_clear(&words);
    words_links(&speaker, passage, &words);
    json_put_text(json, "chain", words.length ? words.text : "");
    buffer_free(&words);
}

static void put_passage(Json *json, const spz_passage *passage, const ShownMovement *shown)
{
    char letter[WORDS_TEXT];
    json_object(json);
    json_put_text(json, "kind", spz_kind_name(passage->kind));
    put_sides(json, passage, shown);
    json_put_text(json, "first_bar", passage->first_bar);
    json_put_text(json, "last_bar", passage->last_bar);
    json_put_integer(json, "first_index", (long long)passage->first);
    json_put_integer(json, "last_index", (long long)passage->last);
    put_strength(json, passage->strength);
    json_put_integer(json, "turns", passage->turns);
    json_put_text(json, "rehearsal", words_letter(passage, letter));
    put_told(json, passage, shown);
    json_put_number(json, "foreground", passage->foreground, 2);
    put_links(json, passage, shown);
    put_entries(json, passage, shown);
    json_end(json);
}

static void put_passages(spz_report *report, const ShownMovement *shown)
{
    const spz_findings *findings = shown->reading.findings;
    json_key(&report->json, "passages");
    json_array(&report->json);
    for (size_t i = 0; i < spz_findings_count(findings); i++)
        if (report_shows(&report->options, spz_findings_at(findings, i)))
            put_passage(&report->json, spz_findings_at(findings, i), shown);
    json_end(&report->json);
}

static void end_with_cautions(spz_report *report)
{
    json_end(&report->json);
    if (report->work) {
        json_key(&report->json, "work");
        json_object(&report->json);
        json_put_verdict(&report->json, report->work);
        json_end(&report->json);
    }
    json_put_text(&report->json, "cautions", report_cautions(SPZ_ENGLISH));
    json_end(&report->json);
}

static void sections_movement(spz_report *report, const ShownMovement *shown)
{
    Json *json = &report->json;
    const spz_sections *sections = shown->reading.sections;
    json_object(json);
    put_movement(json, shown);
    put_groups(json, sections);
    json_key(json, "lines");
    json_array(json);
    for (size_t i = 0; i < spz_sections_lines(sections); i++)
        put_line(json, shown, i);
    json_end(json);
    json_end(json);
}

static void passages_movement(spz_report *report, const ShownMovement *shown)
{
    json_object(&report->json);
    put_movement(&report->json, shown);
    put_passages(report, shown);
    json_end(&report->json);
}

static void seating_movement(spz_report *report, const ShownMovement *shown)
{
    json_object(&report->json);
    put_movement(&report->json, shown);
    json_put_verdict(&report->json, shown->reading.verdict);
    json_end(&report->json);
}

static void whole_movement(spz_report *report, const ShownMovement *shown)
{
    json_object(&report->json);
    put_movement(&report->json, shown);
    put_groups(&report->json, shown->reading.sections);
    json_put_verdict(&report->json, shown->reading.verdict);
    put_passages(report, shown);
    json_end(&report->json);
}

const Form json_movements = {begin, whole_movement, end_with_cautions};
const Form json_sections = {begin, sections_movement, end};
const Form json_passages = {begin, passages_movement, end};
const Form json_seating = {begin, seating_movement, end_with_cautions};
