/* Note streams as CSV, JSON and text: one row a sound, tied notes joined. */
#include "pages/data/movement_forms.h"
#include "pages/report_streams.h"
#include "support/text/utf8.h"
#include <stdio.h>
#include <string.h>

static const Field of_sound[] = {
    {"part_name", IN_BOTH, "the part's name in the score"},
    {"staff", IN_BOTH, "from 1"},
    {"voice", IN_BOTH, "as the file numbers it"},
    {"section", IN_BOTH, "both where two read the same notes: `Vc+Db`"},
    {"bar", IN_BOTH, "as printed, on paper, also with `--played`"},
    {"bar_index", IN_BOTH, "the bar's place in the file, from 0"},
    {"beat", IN_BOTH, "on paper"},
    {"onset", IN_BOTH, "in crotchets from the start, exact (`7/2`, `3`); with `--played` from the start of the performance"},
    {"duration", IN_BOTH, "in crotchets, exact"},
    {"pitch", IN_BOTH, "sounding; middle C is C4"},
    {"midi", IN_BOTH, "the same as a number, middle C is 60; nothing for unpitched notes"},
    {"grace", IN_BOTH, "1 for a grace note, 0"},
    {"dynamic", IN_BOTH, "in force"},
};
const FieldTable sound_fields = FIELD_TABLE("sound", of_sound);
const Columns streams_columns = {"streams", IN_CSV, {&sound_fields}};

static const Field of_source[] = {
    {"file", IN_CSV, "the score's file name without its folder"},
    {"movement", IN_CSV, "place in its file, from 1"},
};
const FieldTable source_fields = FIELD_TABLE("source", of_source);
const Columns named_streams_columns = {"streams of several movements", IN_CSV, {&sound_fields, &source_fields}};

/* What a row shows, in the order of its columns. */
typedef struct Cells {
    const char *part, *voice, *section, *bar, *beat, *onset, *duration, *pitch, *dynamic;
    int staff, bar_index, midi, grace;
} Cells;

typedef struct CellText { /* memory behind Cells */
    char section[32], beat[TICKS_TEXT], onset[TICKS_TEXT], duration[TICKS_TEXT], pitch[PITCH_TEXT];
} CellText;

static const char *section_of(const SectionMap *map, const Sound *sound, char text[32])
{
    const spz_line *line = streams_line(map, sound);
    if (!line)
        return "";
    if (!line->also)
        return spz_section_name(line->section);
    snprintf(text, 32, "%s+%s", spz_section_name(line->section), spz_section_name(line->also));
    return text;
}

/* Bar and beat are those on paper, also where repeats are unfolded. */
static Cells cells_of(const SectionMap *map, const Sound *row, CellText *text)
{
    const Movement *movement = map->movement;
    const Part *part = &movement->parts[row->part];
    int bar = row->note->bar;
    Cells cells = {
        .part = part->name,
        .voice = part->voices[row->note->voice],
        .section = section_of(map, row, text->section),
        .bar = movement->bars[bar].number,
        .beat = movement_beat_text(movement, row->note->onset, text->beat),
        .onset = ticks_text(row->onset, movement->per_crotchet, text->onset),
        .duration = ticks_text(row->duration, movement->per_crotchet, text->duration),
        .pitch = note_pitch_text(row->note, text->pitch),
        .dynamic = spz_dynamic_name((spz_dynamic)row->note->dynamic),
        .staff = row->note->staff,
        .bar_index = bar,
        .midi = row->note->midi,
        .grace = (row->note->flags & NOTE_GRACE) != 0,
    };
    return cells;
}

typedef void (*RowWriter)(spz_report *report, const ShownMovement *shown, const Cells *cells);

static void write_part(spz_report *report, const ShownMovement *shown, size_t part, RowWriter writer)
{
    const SectionMap *map = shown->reading.sections;
    SoundList rows = {0};
    spz_status status = report->options.played ? stream_of_part_played(map->movement, part, &rows) : stream_of_part(map->movement, part, &rows);
    if (status)
        report->out.failed = true;
    for (size_t i = 0; i < rows.count && !status; i++) {
        CellText text;
        Cells cells = cells_of(map, &rows.at[i], &text);
        writer(report, shown, &cells);
    }
    array_free(&rows);
}

static void write_movement(spz_report *report, const ShownMovement *shown, RowWriter writer)
{
    for (size_t part = 0; part < spz_movement_parts(shown->reading.movement); part++)
        write_part(report, shown, part, writer);
}

static void give_sound(FactsOut *out, const Cells *cells)
{
    Facts facts = facts_of(out, &sound_fields);
    fact_text(&facts, "part_name", cells->part);
    fact_integer(&facts, "staff", cells->staff);
    fact_text(&facts, "voice", cells->voice);
    fact_text(&facts, "section", cells->section);
    fact_text(&facts, "bar", cells->bar);
    fact_integer(&facts, "bar_index", cells->bar_index);
    fact_text(&facts, "beat", cells->beat);
    fact_text(&facts, "onset", cells->onset);
    fact_text(&facts, "duration", cells->duration);
    fact_text(&facts, "pitch", cells->pitch);
    fact_some(&facts, "midi", cells->midi >= 0, cells->midi);
    fact_integer(&facts, "grace", cells->grace);
    fact_text(&facts, "dynamic", cells->dynamic);
    facts_done(&facts);
}

static void csv_row(spz_report *report, const ShownMovement *shown, const Cells *cells)
{
    give_sound(&report->facts, cells);
    if (report->named) {
        Facts whose = facts_of(&report->facts, &source_fields);
        fact_text(&whose, "file", shown->file);
        fact_integer(&whose, "movement", (long long)shown->number);
        facts_done(&whose);
    }
    facts_end_row(&report->facts);
}

static void csv_heads(spz_report *report)
{
    facts_columns(&report->facts, report->named ? &named_streams_columns : &streams_columns);
}

/* The columns are known once the first movement is. */
static void csv_movement(spz_report *report, const ShownMovement *shown)
{
    if (report->movements == 0) {
        report->named = report->options.named || shown->of > 1;
        csv_heads(report);
    }
    write_movement(report, shown, csv_row);
}

static void json_row_of(spz_report *report, const ShownMovement *shown, const Cells *cells)
{
    (void)shown;
    json_row(&report->facts.json);
    give_sound(&report->facts, cells);
    json_end(&report->facts.json);
}

static void json_movement(spz_report *report, const ShownMovement *shown)
{
    Json *json = &report->facts.json;
    json_object(json);
    give_movement(&report->facts, shown);
    json_put_flag(json, "played", report->options.played);
    json_put_array(json, "notes");
    write_movement(report, shown, json_row_of);
    json_end(json);
    json_end(json);
}

static void add_clean(Buffer *out, const char *text, size_t width)
{
    char clean[64];
    spz_text_clean(text, clean, sizeof clean);
    buffer_puts(out, clean);
    for (size_t columns = utf8_columns(clean, strlen(clean)); columns < width; columns++)
        buffer_putc(out, ' ');
}

static void text_row(spz_report *report, const ShownMovement *shown, const Cells *cells)
{
    Buffer *out = &report->out;
    (void)shown;
    add_clean(out, cells->part, 22);
    buffer_printf(out, "  %d/", cells->staff);
    add_clean(out, cells->voice, 3);
    add_clean(out, cells->section, 9);
    buffer_puts(out, "bar ");
    add_clean(out, cells->bar, 6);
    buffer_printf(out, "beat %-8s at %-10s for %-8s %-10s %s%s\n", cells->beat, cells->onset, cells->duration, cells->pitch, cells->dynamic,
                  cells->grace ? " grace" : "");
}

static void text_movement(spz_report *report, const ShownMovement *shown)
{
    char title[256];
    buffer_printf(&report->out, "%s%s (%s)\n", report->movements ? "\n" : "", spz_text_clean(shown->title, title, sizeof title),
                  report->options.played ? "repeats unfolded" : "as written");
    write_movement(report, shown, text_row);
}

static void nothing(spz_report *report)
{
    (void)report;
}

static void csv_end_streams(spz_report *report)
{
    if (report->movements == 0)
        csv_heads(report);
}

const Form csv_streams = {nothing, csv_movement, csv_end_streams};
const Form json_streams = {data_begin, json_movement, data_end};
const Form text_streams = {nothing, text_movement, nothing};
