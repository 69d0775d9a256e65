/* The doubts about score files: as a list to be worked through, as JSON, as CSV. */
#include "writing/csv_text.h"
#include "writing/document.h"
#include "wording/doubt_words.h"
#include "wording/phrase.h"
#include <string.h>

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
    buffer_putc(out, '\n');
}

static void text_list(Buffer *out, spz_language language, const spz_doubts *doubts)
{
    size_t grave = spz_doubts_grave(doubts);
    SAY(out, language, grave ? PHRASE_DOUBT_SOME : PHRASE_DOUBT_NONE, slot_text("file", spz_doubts_file(doubts)), slot_number("n", (long)grave));
    buffer_putc(out, '\n');
    const char *title = "";
    for (size_t i = 0; i < spz_doubts_count(doubts); i++) {
        const spz_doubt *doubt = spz_doubts_at(doubts, i);
        if (strcmp(title, doubt->title) != 0)
            buffer_printf(out, "  %s\n", doubt->title);
        title = doubt->title;
        text_doubt(out, language, doubt);
    }
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

static void csv_list(Buffer *out, const spz_doubts *doubts)
{
    for (size_t i = 0; i < spz_doubts_count(doubts); i++) {
        const spz_doubt *doubt = spz_doubts_at(doubts, i);
        CsvRow row;
        DoubtTexts texts;
        begin_texts(&texts, doubt);
        csv_begin(&row, out);
        csv_text(&row, spz_doubts_file(doubts));
        csv_text(&row, doubt->title);
        csv_text(&row, spz_doubt_kind_name(doubt->kind));
        csv_text(&row, doubt->severity == SPZ_NOTE ? "note" : "doubt");
        csv_text(&row, doubt->part);
        csv_text(&row, texts.bars.text);
        csv_integer(&row, doubt->line);
        csv_text(&row, texts.text.text);
        csv_end(&row);
        end_texts(&texts, out);
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
        DoubtTexts texts;
        begin_texts(&texts, doubt);
        buffer_puts(out, i ? ",{" : "{");
        json_pair(out, "kind", spz_doubt_kind_name(doubt->kind));
        buffer_putc(out, ',');
        json_pair(out, "severity", doubt->severity == SPZ_NOTE ? "note" : "doubt");
        buffer_printf(out, ",\"movement\":%zu,", doubt->movement);
        json_pair(out, "title", doubt->title);
        buffer_putc(out, ',');
        json_pair(out, "part", doubt->part);
        buffer_putc(out, ',');
        json_pair(out, "bar", texts.bars.text ? texts.bars.text : "");
        buffer_printf(out, ",\"line\":%ld,", doubt->line);
        json_pair(out, "fault", spz_fault_name(doubt->fault));
        buffer_putc(out, ',');
        json_pair(out, "text", texts.text.text ? texts.text.text : "");
        buffer_putc(out, '}');
        end_texts(&texts, out);
    }
    buffer_puts(out, "]}");
}

spz_status spz_report_doubts(const spz_doubts *const *lists, size_t count, spz_format format, spz_language language, spz_document **out)
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
            text_list(&text, language, lists[i]);
        else if (format == SPZ_AS_CSV)
            csv_list(&text, lists[i]);
        else
            json_list(&text, lists[i], i == 0);
    if (format == SPZ_AS_JSON)
        buffer_puts(&text, "]}\n");
    return document_take(&text, out);
}
