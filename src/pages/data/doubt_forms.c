/* The doubts about score files: as a list to be worked through, as JSON, as CSV. */
#include "writing/csv_text.h"
#include "writing/document.h"
#include "spezzato/check.h"
#include <string.h>

static void text_doubt(Buffer *out, const spz_doubt *doubt)
{
    buffer_puts(out, doubt->severity == SPZ_NOTE ? "  note: " : "  ");
    if (*doubt->part)
        buffer_printf(out, "%s, ", doubt->part);
    if (*doubt->bar)
        buffer_printf(out, "%s %s: ", strchr(doubt->bar, '-') ? "bars" : "bar", doubt->bar);
    else if (*doubt->part)
        buffer_puts(out, "throughout: ");
    buffer_puts(out, doubt->text);
    if (doubt->line > 0)
        buffer_printf(out, " (line %ld)", doubt->line);
    buffer_putc(out, '\n');
}

static void text_list(Buffer *out, const spz_doubts *doubts)
{
    size_t grave = spz_doubts_grave(doubts);
    if (grave == 0)
        buffer_printf(out, "%s: no doubts\n", spz_doubts_file(doubts));
    else
        buffer_printf(out, "%s: %zu %s\n", spz_doubts_file(doubts), grave, grave == 1 ? "doubt" : "doubts");
    const char *title = "";
    for (size_t i = 0; i < spz_doubts_count(doubts); i++) {
        const spz_doubt *doubt = spz_doubts_at(doubts, i);
        if (strcmp(title, doubt->title) != 0)
            buffer_printf(out, "  %s\n", doubt->title);
        title = doubt->title;
        text_doubt(out, doubt);
    }
}

static void csv_list(Buffer *out, const spz_doubts *doubts)
{
    for (size_t i = 0; i < spz_doubts_count(doubts); i++) {
        const spz_doubt *doubt = spz_doubts_at(doubts, i);
        CsvRow row;
        csv_begin(&row, out);
        csv_text(&row, spz_doubts_file(doubts));
        csv_text(&row, doubt->title);
        csv_text(&row, spz_doubt_kind_name(doubt->kind));
        csv_text(&row, doubt->severity == SPZ_NOTE ? "note" : "doubt");
        csv_text(&row, doubt->part);
        csv_text(&row, doubt->bar);
        csv_integer(&row, doubt->line);
        csv_text(&row, doubt->text);
        csv_end(&row);
    }
}

static void json_pair(Buffer *out, const char *name, const char *value)
{
    buffer_printf(out, "\"%s\":", name);
    buffer_json(out, value);
}

static void json_list(Buffer *out, const spz_doubts *doubts, bool first)
{
    buffer_puts(out, first ? "{" : ",{");
    json_pair(out, "file", spz_doubts_file(doubts));
    buffer_printf(out, ",\"count\":%zu,\"doubts\":[", spz_doubts_grave(doubts));
    for (size_t i = 0; i < spz_doubts_count(doubts); i++) {
        const spz_doubt *doubt = spz_doubts_at(doubts, i);
        buffer_puts(out, i ? ",{" : "{");
        json_pair(out, "kind", spz_doubt_kind_name(doubt->kind));
        buffer_putc(out, ',');
        json_pair(out, "severity", doubt->severity == SPZ_NOTE ? "note" : "doubt");
        buffer_printf(out, ",\"movement\":%zu,", doubt->movement);
        json_pair(out, "title", doubt->title);
        buffer_putc(out, ',');
        json_pair(out, "part", doubt->part);
        buffer_putc(out, ',');
        json_pair(out, "bar", doubt->bar);
        buffer_printf(out, ",\"line\":%ld,", doubt->line);
        json_pair(out, "text", doubt->text);
        buffer_putc(out, '}');
    }
    buffer_puts(out, "]}");
}

spz_status spz_report_doubts(const spz_doubts *const *lists, size_t count, spz_format format, spz_document **out)
{
    Buffer text;
    *out = NULL;
    if (format != SPZ_AS_TEXT && format != SPZ_AS_JSON && format != SPZ_AS_CSV)
        return SPZ_BAD_ARGUMENT;
    buffer_init(&text);
    if (format == SPZ_AS_CSV)
        csv_header(&text, "file,movement,kind,severity,part,bar,line,text");
    if (format == SPZ_AS_JSON)
        buffer_puts(&text, "{\"files\":[");
    for (size_t i = 0; i < count; i++)
        if (format == SPZ_AS_TEXT)
            text_list(&text, lists[i]);
        else if (format == SPZ_AS_CSV)
            csv_list(&text, lists[i]);
        else
            json_list(&text, lists[i], i == 0);
    if (format == SPZ_AS_JSON)
        buffer_puts(&text, "]}\n");
    return document_take(&text, out);
}
