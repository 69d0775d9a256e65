/* The rehearsal sheet, and its form as text. */
#include "pages/sheets/rehearsal_sheet.h"
#include "pages/growing_report.h"
#include "wording/seatings/seating_words.h"
#include "wording/section_words.h"
#include "writing/text_layout.h"

enum { INDENT = 2 };

void rehearsal_about(const RehearsalPage *page, Buffer *out)
{
    spz_language language = page->speaker.language;
    buffer_puts(out, phrase_text(language, PHRASE_REHEARSAL_ABOUT));
    if (*page->plan->seating) {
        buffer_putc(out, ' ');
        SAY(out, language, PHRASE_REHEARSAL_SEATING, slot_text("seating", words_arrangement(language, page->plan->seating)));
    }
    if (!page->plan->tempo_given)
        buffer_printf(out, " %s", phrase_text(language, PHRASE_REHEARSAL_NO_TEMPO));
}

static void text_row(Table *table, const RehearsalPage *page, const RehearsalItem *item)
{
    const spz_passage *p = item->passage;
    spz_language language = page->speaker.language;
    char bars[WORDS_TEXT], letter[WORDS_TEXT], kind[WORDS_TEXT], standing[WORDS_TEXT];
    Buffer lasts = {0}, note = {0};
    say_lasts(&lasts, language, item);
    table_row(table, (const char *const[]){words_bars(language, p, bars), words_letter(p, letter), buffer_text(&lasts), words_kind(language, p, kind),
                                           words_standing(language, p, standing)});
    say_to_rehearse(&note, &page->speaker, item);
    buffer_puts(&note, ". ");
    say_listening(&note, language, item);
    table_note(table, note.text);
    buffers_let_go(table, &lasts, &note);
}

static void text_call(SheetOut *sheet, const RehearsalPage *page, const RehearsalCall *call)
{
    spz_language language = page->speaker.language;
    const char *const heads[] = {phrase_text(language, PHRASE_HEAD_BARS), phrase_text(language, PHRASE_HEAD_LETTER), phrase_text(language, PHRASE_REHEARSAL_HEAD_LASTS),
                                 phrase_text(language, PHRASE_HEAD_KIND), phrase_text(language, PHRASE_HEAD_STRENGTH)};
    static const int most[] = {14, 10, 16, 14, 0};
    Table table;
    buffer_clear(&sheet->line);
    say_call(&sheet->line, &page->speaker, call);
    buffer_putc(&sheet->text, '\n');
    layout_heading(&sheet->text, buffer_text(&sheet->line), '-', LAYOUT_USUAL_WIDTH);
    table_begin(&table, 5, heads, most);
    for (size_t i = 0; i < call->count; i++)
        text_row(&table, page, &page->plan->items.at[call->first + i]);
    table_end(&table, &sheet->text, INDENT, LAYOUT_USUAL_WIDTH);
}

static void text_movement(SheetOut *sheet, const RehearsalPage *page)
{
    Buffer *out = &sheet->text;
    char source[SOURCE_TEXT];
    if (page->number)
        buffer_putc(out, '\n');
    layout_heading(out, page->title, '=', LAYOUT_USUAL_WIDTH);
    layout_paragraph(out, 0, "", words_source(page->movement, page->file, source), LAYOUT_USUAL_WIDTH);
    buffer_clear(&sheet->line);
    rehearsal_about(page, &sheet->line);
    layout_paragraph(out, 0, "", buffer_text(&sheet->line), LAYOUT_USUAL_WIDTH);
    for (size_t i = 0; i < page->plan->calls.count; i++)
        text_call(sheet, page, &page->plan->calls.at[i]);
    if (page->plan->calls.count == 0)
        buffer_printf(out, "\n%s\n", phrase_text(page->speaker.language, PHRASE_REHEARSAL_NONE));
    if (*page->plan->seating) {
        buffer_putc(out, '\n');
        layout_paragraph(out, 0, "", report_cautions(page->speaker.language), LAYOUT_USUAL_WIDTH);
    }
    out->failed = out->failed || buffer_failed(&sheet->line);
}

const RehearsalForm rehearsal_text = {sheet_nothing, text_movement, sheet_nothing, false};

static const RehearsalForm *const forms[SHEET_FORMATS] = {[SPZ_AS_TEXT] = &rehearsal_text, [SPZ_AS_HTML] = &rehearsal_html, [SPZ_AS_JSON] = &rehearsal_json, [SPZ_AS_CSV] = &rehearsal_csv};

typedef struct Under { /* a sheet under way */
    const RehearsalForm *form;
    const spz_settings *settings;
    const spz_sheet_options *options;
} Under;

static spz_status add_movement(SheetOut *sheet, const spz_reading *of, size_t movement, void *context)
{
    const Under *under = context;
    spz_movement_reading reading = spz_reading_at(of, movement);
    RehearsalPlan plan;
    spz_status status = rehearsal_plan(&reading, under->settings, under->options, &plan);
    spz_language language = under->form->data ? SPZ_ENGLISH : sheet->language;
    RehearsalPage page = {reading.movement, reading.findings, &plan, movement_score_name(reading.movement), sheet_title(reading.movement), {language, reading.sections}, sheet->number};
    if (!status)
        under->form->movement(sheet, &page);
    rehearsal_free(&plan);
    return status;
}

spz_status spz_sheet_rehearsal(const spz_reading *const *readings, size_t count, const spz_settings *settings, const spz_sheet_options *options,
                               spz_format format, spz_document **out)
{
    const spz_sheet_options usual = SPZ_SHEET_USUAL;
    Under under = {(unsigned)format < SHEET_FORMATS ? forms[format] : NULL, settings, options ? options : &usual};
    SheetRun run = {under.form ? under.form->begin : NULL, under.form ? under.form->end : NULL, add_movement, &under, under.options->language};
    return sheet_write(&run, readings, count, out);
}
