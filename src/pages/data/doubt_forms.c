/* The doubts about score files: as a list to be worked through, as JSON, as CSV. */
#include "writing/csv_text.h"
#include "writing/document.h"
#include "writing/json.h"
#include "writing/text_layout.h"
#include "wording/doubt_words.h"
#include "wording/phrase.h"
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

/* What was put together as one line; `line` is empty afterwards. */
static void end_line(Buffer *out, Buffer *line)
{
    layout_words(out, line->text ? line->text : "");
    buffer_putc(out, '\n');
    out->failed = out->failed || buffer_failed(line);
    buffer_clear(line);
}

static void text_doubt(Buffer *out, spz_language language, const spz_doubt *doubt)
{
    bool row = strcmp(doubt->bar, doubt->last_bar) != 0;
    buffer_puts(out, "  ");
    if (doubt->severity == SPZ_NOTE)
        buffer_puts(out, phrase_text(language, PHRASE_DOUBT_NOTE));
    if (*doubt->part)
        buffer_printf(out, "%s, ", doubt->part);
    if (*doubt->bar)
        SAY(out, language, row ? PHRASE_DOUBT_BARS : PHRASE_DOUBT_BAR, slot_text("bar", doubt->bar), slot_text("last", doubt->last_bar));
    else if (*doubt->part)
        buffer_puts(out, phrase_text(language, PHRASE_DOUBT_THROUGHOUT));
    say_doubt(out, language, doubt);
    if (doubt->line > 0)
        SAY(out, language, PHRASE_DOUBT_LINE, slot_number("line", doubt->line));
}

static void text_list(Buffer *out, spz_language language, const spz_doubts *doubts)
{
    size_t grave = spz_doubts_grave(doubts);
    Buffer line;
    buffer_init(&line);
    SAY(&line, language, grave ? PHRASE_DOUBT_SOME : PHRASE_DOUBT_NONE, slot_text("file", spz_doubts_file(doubts)), slot_number("n", (long)grave));
    end_line(out, &line);
    const char *title = "";
    for (size_t i = 0; i < spz_doubts_count(doubts); i++) {
        const spz_doubt *doubt = spz_doubts_at(doubts, i);
        if (strcmp(title, doubt->title) != 0)
            buffer_printf(&line, "  %s", doubt->title);
        if (line.length)
            end_line(out, &line);
        title = doubt->title;
        text_doubt(&line, language, doubt);
        end_line(out, &line);
    }
    buffer_free(&line);
}

/* In data a doubt has one text for its bars and one sentence, in English. */
typedef struct DoubtTexts {
    Buffer bars, text;
} DoubtTexts;

static void begin_texts(DoubtTexts *texts, const spz_doubt *doubt)
{
    buffer_init(&texts->bars);
    buffer_init(&texts->text);
    say_doubt_bars(&texts->bars, doubt);
    say_doubt(&texts->text, SPZ_ENGLISH, doubt);
}

static void end_texts(DoubtTexts *texts, Buffer *out)
{
    out->failed = out->failed || buffer_failed(&texts->bars) || buffer_failed(&texts->text);
    buffer_free(&texts->bars);
    buffer_free(&texts->text);
}

static void csv_doubt(CsvRow *row, const char *file, const spz_doubt *doubt)
{
    DoubtTexts texts;
    begin_texts(&texts, doubt);
    csv_text(row, file);
    csv_text(row, doubt->title);
    csv_text(row, spz_doubt_kind_name(doubt->kind));
    csv_text(row, doubt->severity == SPZ_NOTE ? "note" : "doubt");
    csv_text(row, doubt->part);
    csv_text(row, texts.bars.text);
    csv_integer(row, doubt->line);
    csv_text(row, texts.text.text);
    csv_end(row);
    end_texts(&texts, row->out);
}

/* '7/2'; null where the fault has no such length. */
static void put_fraction(Json *json, const char *key, spz_fraction fraction)
{
    char text[48];
    snprintf(text, sizeof text, fraction.under == 1 ? "%" PRId64 : "%" PRId64 "/%" PRId64, fraction.over, fraction.under);
    json_put_text(json, key, fraction.under ? text : NULL);
}

static void put_figures(Json *json, const spz_doubt *doubt)
{
    char pitch[SPZ_PITCH_TEXT];
    bool ranged = doubt->fault == SPZ_FAULT_OUT_OF_RANGE, pitched = ranged || doubt->kind == SPZ_DOUBT_TIE;
    json_put_text(json, "name", *doubt->name ? doubt->name : NULL);
    json_put_integer(json, "number", doubt->count);
    json_put_integer(json, "of", doubt->of);
    put_fraction(json, "holds", doubt->holds);
    put_fraction(json, "asks", doubt->asks);
    json_put_text(json, "pitch", pitched ? spz_pitch_text(doubt->pitch, pitch) : NULL);
    json_put_text(json, "instrument", ranged ? spz_range_at(doubt->range)->name : NULL);
}

static void json_doubt(Json *json, const spz_doubt *doubt)
{
    DoubtTexts texts;
    begin_texts(&texts, doubt);
    json_row(json);
    json_put_text(json, "kind", spz_doubt_kind_name(doubt->kind));
    json_put_text(json, "severity", doubt->severity == SPZ_NOTE ? "note" : "doubt");
    json_put_integer(json, "movement", (long long)doubt->movement);
    json_put_text(json, "title", doubt->title);
    json_put_text(json, "part", doubt->part);
    json_put_text(json, "bar", texts.bars.text ? texts.bars.text : "");
    json_put_integer(json, "line", doubt->line);
    json_put_text(json, "fault", spz_fault_name(doubt->fault));
    put_figures(json, doubt);
    json_put_text(json, "text", texts.text.text ? texts.text.text : "");
    json_end(json);
    end_texts(&texts, json->out);
}

static void json_list_of(Json *json, const spz_doubts *doubts)
{
    json_object(json);
    json_put_text(json, "file", spz_doubts_file(doubts));
    json_put_integer(json, "count", (long long)spz_doubts_grave(doubts));
    json_key(json, "doubts");
    json_array(json);
    for (size_t i = 0; i < spz_doubts_count(doubts); i++)
        json_doubt(json, spz_doubts_at(doubts, i));
    json_end(json);
    json_end(json);
}

static void as_text(const spz_doubts *const *lists, size_t count, spz_language language, Buffer *out)
{
    for (size_t i = 0; i < count; i++)
        text_list(out, language, lists[i]);
}

static void as_json(const spz_doubts *const *lists, size_t count, spz_language language, Buffer *out)
{
    Json json;
    (void)language;
    json_begin(&json, out);
    json_object(&json);
    json_key(&json, "files");
    json_array(&json);
    for (size_t i = 0; i < count; i++)
        json_list_of(&json, lists[i]);
    json_end(&json);
    json_end(&json);
    json_finish(&json);
}

static void as_csv(const spz_doubts *const *lists, size_t count, spz_language language, Buffer *out)
{
    CsvRow row;
    (void)language;
    csv_begin(&row, out);
    csv_header(&row, "file,movement,kind,severity,part,bar,line,text");
    for (size_t i = 0; i < count; i++)
        for (size_t d = 0; d < spz_doubts_count(lists[i]); d++)
            csv_doubt(&row, spz_doubts_file(lists[i]), spz_doubts_at(lists[i], d));
}

spz_status spz_report_doubts(const spz_doubts *const *lists, size_t count, spz_format format, spz_language language, spz_document **out)
{
    static void (*const forms[])(const spz_doubts *const *, size_t, spz_language, Buffer *) = {
        [SPZ_AS_TEXT] = as_text, [SPZ_AS_JSON] = as_json, [SPZ_AS_CSV] = as_csv};
    Buffer text;
    *out = NULL;
    if ((int)format < 0 || (size_t)format >= sizeof forms / sizeof forms[0])
        return SPZ_BAD_ARGUMENT;
    buffer_init(&text);
    forms[format](lists, count, language, &text);
    spz_status status = document_take(&text, out);
    buffer_free(&text);
    return status;
}
