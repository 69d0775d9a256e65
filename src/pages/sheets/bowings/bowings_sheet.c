#include "pages/sheets/bowings/bowings_sheet.h"
#include "pages/growing_report.h"
#include "editing/score_files.h"
#include "writing/document.h"
#include "writing/text_layout.h"

static void nothing(SheetOut *sheet)
{
    (void)sheet;
}

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

const BowingsForm bowings_text = {nothing, text_movement, nothing, false};

static const BowingsForm *form_of(spz_format format)
{
    switch (format) {
    case SPZ_AS_TEXT: return &bowings_text;
    case SPZ_AS_HTML: return &bowings_html;
    case SPZ_AS_JSON: return &bowings_json;
    case SPZ_AS_CSV: return &bowings_csv;
    default: return NULL;
    }
}

static spz_status add_movement(SheetOut *sheet, const BowingsForm *form, const spz_movement_reading *reading, const spz_sheet_options *options, size_t number)
{
    BowingList list;
    spz_status status = bowings_find(reading, options, &list);
    const char *title = spz_movement_title(reading->movement);
    BowingsPage page = {reading, &list, movement_score_name(reading->movement), NULL, {form->data ? SPZ_ENGLISH : options->language, reading->sections}, number};
    page.title = *title ? title : page.file;
    if (!status)
        form->movement(sheet, &page);
    bowings_free(&list);
    return status;
}

spz_status spz_sheet_bowings(const spz_reading *const *readings, size_t count, const spz_settings *settings, const spz_sheet_options *options, spz_format format,
                             spz_document **out)
{
    spz_sheet_options usual = SPZ_SHEET_USUAL;
    const BowingsForm *form = form_of(format);
    SheetOut sheet;
    size_t number = 0;
    spz_status status = SPZ_OK;
    (void)settings;
    *out = NULL;
    if (!form || !judged_all(readings, count))
        return SPZ_BAD_ARGUMENT;
    sheet_begin(&sheet, options ? options->language : usual.language);
    form->begin(&sheet);
    for (size_t i = 0; i < count && !status; i++)
        for (size_t m = 0; m < spz_reading_count(readings[i]) && !status; m++) {
            spz_movement_reading reading = spz_reading_at(readings[i], m);
            status = add_movement(&sheet, form, &reading, options ? options : &usual, number++);
        }
    form->end(&sheet);
    facts_finish(&sheet.facts);
    if (!status)
        status = document_take(&sheet.text, out);
    sheet_end(&sheet);
    return status;
}
