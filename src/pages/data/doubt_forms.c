/* The doubts about score files: as a list to be worked through, as JSON, as CSV. */
#include "pages/data/fields.h"
#include "writing/document.h"
#include "writing/text_layout.h"
#include "wording/doubt_words.h"
#include "wording/phrase.h"
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

static const Field of_doubt[] = {
    {"file", IN_CSV, "the score's file name"},
    {"kind", IN_BOTH, "file (what the reader put right or left out), bar, length, tie, range, tempo, section, division, order"},
    {"severity", IN_BOTH, "doubt, or note for what is worth knowing and no fault"},
    {"movement", IN_BOTH, "place in its file, from 1"},
    {"title", IN_BOTH, "the movement's title"},
    {"part", IN_BOTH, "\"\" where all parts are meant"},
    {"bar", IN_BOTH, "as printed, `12-15` for a row of bars; \"\" where none is meant"},
    {"line", IN_BOTH, "in the XML; 0 where none is known"},
    {"fault", IN_JSON, "what is doubtful, for programs; include/spezzato/status.h lists the names, with a hyphen for each _"},
    {"name", IN_JSON, "what the fault names; null"},
    {"number", IN_JSON, "how many"},
    {"of", IN_JSON, "of how many"},
    {"holds", IN_JSON, "length that is there, in crotchets (`7/2`); null"},
    {"asks", IN_JSON, "length that is asked for, in crotchets; null"},
    {"pitch", IN_JSON, "the pitch in question; null"},
    {"instrument", IN_JSON, "the instrument whose range is meant (sources in src/checking/range_doubts.c); null"},
    {"text", IN_BOTH, "one sentence"},
};
const FieldTable doubt_fields = FIELD_TABLE("doubt", of_doubt);
const Columns doubts_columns = {"check", IN_CSV, {&doubt_fields}};

/* What was put together as one line; `line` is empty afterwards. */
static void end_line(Buffer *out, Buffer *line)
{
    layout_words(out, buffer_text(line));
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
    Buffer line = {0};
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

static const char *fraction_text(spz_fraction fraction, char text[48])
{
    snprintf(text, 48, fraction.under == 1 ? "%" PRId64 : "%" PRId64 "/%" PRId64, fraction.over, fraction.under);
    return fraction.under ? text : NULL;
}

static void give_figures(Facts *facts, const spz_doubt *doubt)
{
    char holds[48], asks[48], pitch[SPZ_PITCH_TEXT];
    bool ranged = doubt->fault == SPZ_FAULT_OUT_OF_RANGE, pitched = ranged || doubt->kind == SPZ_DOUBT_TIE;
    fact_text(facts, "name", *doubt->name ? doubt->name : NULL);
    fact_integer(facts, "number", doubt->count);
    fact_integer(facts, "of", doubt->of);
    fact_text(facts, "holds", fraction_text(doubt->holds, holds));
    fact_text(facts, "asks", fraction_text(doubt->asks, asks));
    fact_text(facts, "pitch", pitched ? spz_pitch_text(doubt->pitch, pitch) : NULL);
    fact_text(facts, "instrument", ranged ? spz_range_at(doubt->range)->name : NULL);
}

static void give_doubt(FactsOut *out, const char *file, const spz_doubt *doubt)
{
    Facts facts = facts_of(out, &doubt_fields);
    fact_text(&facts, "file", file);
    fact_text(&facts, "kind", spz_doubt_kind_name(doubt->kind));
    fact_text(&facts, "severity", doubt->severity == SPZ_NOTE ? "note" : "doubt");
    fact_integer(&facts, "movement", (long long)doubt->movement + 1);
    fact_text(&facts, "title", doubt->title);
    fact_text(&facts, "part", doubt->part);
    say_doubt_bars(&out->words, doubt);
    fact_said(&facts, "bar", "");
    fact_integer(&facts, "line", doubt->line);
    fact_text(&facts, "fault", spz_fault_name(doubt->fault));
    give_figures(&facts, doubt);
    say_doubt(&out->words, SPZ_ENGLISH, doubt);
    fact_said(&facts, "text", "");
    facts_done(&facts);
}

static void json_list_of(FactsOut *out, const spz_doubts *doubts)
{
    Json *json = &out->json;
    json_object(json);
    json_put_text(json, "file", spz_doubts_file(doubts));
    json_put_integer(json, "count", (long long)spz_doubts_grave(doubts));
    json_put_array(json, "doubts");
    for (size_t i = 0; i < spz_doubts_count(doubts); i++) {
        json_row(json);
        give_doubt(out, NULL, spz_doubts_at(doubts, i));
        json_end(json);
    }
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
    FactsOut facts;
    (void)language;
    facts_begin(&facts, out);
    json_object(&facts.json);
    json_put_array(&facts.json, "files");
    for (size_t i = 0; i < count; i++)
        json_list_of(&facts, lists[i]);
    json_end(&facts.json);
    json_end(&facts.json);
    facts_finish(&facts);
}

static void as_csv(const spz_doubts *const *lists, size_t count, spz_language language, Buffer *out)
{
    FactsOut facts;
    (void)language;
    facts_begin(&facts, out);
    facts_columns(&facts, &doubts_columns);
    for (size_t i = 0; i < count; i++)
        for (size_t d = 0; d < spz_doubts_count(lists[i]); d++) {
            give_doubt(&facts, spz_doubts_file(lists[i]), spz_doubts_at(lists[i], d));
            facts_end_row(&facts);
        }
    facts_finish(&facts);
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
    return document_take(&text, out);
}
