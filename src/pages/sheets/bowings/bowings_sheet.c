#include "pages/sheets/bowings/bowings_sheet.h"
#include "pages/growing_report.h"
#include "writing/text_layout.h"

static void flow(SheetOut *sheet, int indent, const char *label)
{
    layout_flow(&sheet->text, indent, label, &sheet->line, LAYOUT_USUAL_WIDTH);
    buffer_clear(&sheet->line);
}

static void text_difference(SheetOut *sheet, const BowingsPage *page, const BowingMeeting *meeting, const BowingDifference *difference)
{
    Buffer bars = {0}, what = {0};
    say_bowing_bars(&bars, &page->speaker, difference);
    say_bowing_difference(&what, &page->speaker, page->list, meeting, difference);
    SAY(&sheet->line, page->speaker.language, PHRASE_BOWINGS_DIFFER, slot_text("bars", bars.text), slot_number("n", difference->bars[1] != difference->bars[0] ? 2 : 1), slot_text("sign", words_bowing_sign(page->speaker.language, difference->sign)),
        slot_text("what", what.text));
    buffers_let_go(&sheet->text, &bars, &what);
    flow(sheet, 2, "");
}

static void text_meeting(SheetOut *sheet, const BowingsPage *page, const BowingMeeting *meeting)
{
    buffer_putc(&sheet->text, '\n');
    say_meeting(&sheet->line, &page->speaker, meeting);
    flow(sheet, 0, "");
    if (!meeting->count)
        layout_paragraph(&sheet->text, 2, "", phrase_text(page->speaker.language, PHRASE_BOWINGS_AS_ONE), LAYOUT_USUAL_WIDTH);
    for (size_t i = 0; i < meeting->count; i++)
        text_difference(sheet, page, meeting, &page->list->differences.at[meeting->first + i]);
}

static void text_movement(SheetOut *sheet, const BowingsPage *page)
{
    if (page->number)
        buffer_putc(&sheet->text, '\n');
    layout_heading(&sheet->text, page->title, '=', LAYOUT_USUAL_WIDTH);
    layout_paragraph(&sheet->text, 0, "", page->file, LAYOUT_USUAL_WIDTH);
    layout_paragraph(&sheet->text, 0, "", phrase_text(page->speaker.language, PHRASE_BOWINGS_ABOUT), LAYOUT_USUAL_WIDTH);
    say_bowings(&sheet->line, &page->speaker, page->list);
    flow(sheet, 0, "");
    for (size_t i = 0; i < page->list->meetings.count; i++)
        text_meeting(sheet, page, &page->list->meetings.at[i]);
    sheet->text.failed = sheet->text.failed || buffer_failed(&sheet->line);
}

const BowingsForm bowings_text = {sheet_nothing, text_movement, sheet_nothing, false};

static const BowingsForm *const forms[SHEET_FORMATS] = {[SPZ_AS_TEXT] = &bowings_text, [SPZ_AS_HTML] = &bowings_html, [SPZ_AS_JSON] = &bowings_json, [SPZ_AS_CSV] = &bowings_csv};

typedef struct Under { /* a sheet under way */
    const BowingsForm *form;
    const spz_sheet_options *options;
} Under;

static spz_status add_movement(SheetOut *sheet, const spz_reading *of, size_t movement, void *context)
{
    const Under *under = context;
    spz_movement_reading reading = spz_reading_at(of, movement);
    BowingList list;
    spz_status status = bowings_find(&reading, under->options, &list);
    spz_language language = under->form->data ? SPZ_ENGLISH : sheet->language;
    BowingsPage page = {&reading, &list, movement_score_name(reading.movement), sheet_title(reading.movement), {language, reading.sections}, sheet->number};
    if (!status)
        under->form->movement(sheet, &page);
    bowings_free(&list);
    return status;
}

spz_status spz_sheet_bowings(const spz_reading *const *readings, size_t count, const spz_settings *settings, const spz_sheet_options *options, spz_format format,
                             spz_document **out)
{
    const spz_sheet_options usual = SPZ_SHEET_USUAL;
    Under under = {(unsigned)format < SHEET_FORMATS ? forms[format] : NULL, options ? options : &usual};
    SheetRun run = {under.form ? under.form->begin : NULL, under.form ? under.form->end : NULL, add_movement, &under, under.options->language};
    (void)settings;
    return sheet_write(&run, readings, count, out);
}
