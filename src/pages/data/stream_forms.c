/* Note streams as CSV, JSON and text: one row a sound, tied notes joined. */
#include "pages/growing_report.h"
#include "pages/report_streams.h"
#include "support/utf8.h"
#include <stdio.h>
#include <string.h>

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

static void csv_row(spz_report *report, const ShownMovement *shown, const Cells *cells)
{
    CsvRow *row = &report->row;
    csv_text(row, cells->part);
    csv_integer(row, cells->staff);
    csv_text(row, cells->voice);
    csv_text(row, cells->section);
    csv_text(row, cells->bar);
    csv_integer(row, cells->bar_index);
    csv_text(row, cells->beat);
    csv_text(row, cells->onset);
    csv_text(row, cells->duration);
    csv_text(row, cells->pitch);
    if (cells->midi >= 0)
        csv_integer(row, cells->midi);
    else
        csv_text(row, "");
    csv_integer(row, cells->grace);
    csv_text(row, cells->dynamic);
    if (report->named) {
        csv_text(row, shown->file);
        csv_integer(row, (long long)shown->number);
    }
    csv_end(row);
}

static void csv_heads(spz_report *report)
{
    csv_header(&report->row, report->named ? "part_name,staff,voice,section,bar,bar_index,beat,onset,duration,pitch,midi,grace,dynamic,file,movement"
                                           : "part_name,staff,voice,section,bar,bar_index,beat,onset,duration,pitch,midi,grace,dynamic");
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
    Json *json = &report->json;
    (void)shown;
    json_row(json);
    json_put_text(json, "part_name", cells->part);
    json_put_integer(json, "staff", cells->staff);
    json_put_text(json, "voice", cells->voice);
    json_put_text(json, "section", cells->section);
    json_put_text(json, "bar", cells->bar);
    json_put_integer(json, "bar_index", cells->bar_index);
    json_put_text(json, "beat", cells->beat);
    json_put_text(json, "onset", cells->onset);
    json_put_text(json, "duration", cells->duration);
    json_put_text(json, "pitch", cells->pitch);
    json_key(json, "midi");
    if (cells->midi >= 0)
        json_integer(json, cells->midi);
    else
        json_text(json, NULL);
    json_put_integer(json, "grace", cells->grace);
    json_put_text(json, "dynamic", cells->dynamic);
    json_end(json);
}

static void json_begin_streams(spz_report *report)
{
    json_object(&report->json);
    json_key(&report->json, "movements");
    json_array(&report->json);
}

static void json_movement(spz_report *report, const ShownMovement *shown)
{
    Json *json = &report->json;
    json_object(json);
    json_put_text(json, "file", shown->file);
    json_put_text(json, "title", shown->title);
    json_put_integer(json, "movement", (long long)shown->number);
    json_put_flag(json, "played", report->options.played);
    json_key(json, "notes");
    json_array(json);
    write_movement(report, shown, json_row_of);
    json_end(json);
    json_end(json);
}

static void json_end_streams(spz_report *report)
{
    json_end(&report->json);
    json_end(&report->json);
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
const Form json_streams = {json_begin_streams, json_movement, json_end_streams};
const Form text_streams = {nothing, text_movement, nothing};
