#include "pages/sheets/sheet_out.h"
#include "model/movement.h"
#include "pages/growing_report.h"
#include "writing/document.h"

static void sheet_begin(SheetOut *sheet, spz_language language)
{
    *sheet = (SheetOut){.language = language};
    buffer_init(&sheet->text);
    markup_begin(&sheet->html, &sheet->text);
    facts_begin(&sheet->facts, &sheet->text);
}

bool judged_all(const spz_reading *const *readings, size_t count)
{
    for (size_t i = 0; i < count; i++)
        for (size_t m = 0; m < spz_reading_count(readings[i]); m++)
            if (!spz_reading_at(readings[i], m).verdict)
                return false;
    return true;
}

spz_status sheet_write(const SheetRun *run, const spz_reading *const *readings, size_t count, spz_document **out)
{
    SheetOut sheet;
    spz_status status = SPZ_OK;
    *out = NULL;
    if (!run->begin || !judged_all(readings, count))
        return SPZ_BAD_ARGUMENT;
    sheet_begin(&sheet, run->language);
    run->begin(&sheet);
    for (size_t i = 0; i < count && !status; i++)
        for (size_t m = 0; m < spz_reading_count(readings[i]) && !status; m++, sheet.number++)
            status = run->movement(&sheet, readings[i], m, run->context);
    run->end(&sheet);
    facts_finish(&sheet.facts);
    if (!status)
        status = document_take(&sheet.text, out);
    buffer_free(&sheet.text);
    buffer_free(&sheet.line);
    return status;
}

const char *sheet_title(const spz_movement *movement)
{
    const char *title = spz_movement_title(movement);
    return *title ? title : movement_score_name(movement);
}

void sheet_nothing(SheetOut *sheet)
{
    (void)sheet;
}

void sheet_page_begin(SheetOut *sheet, PageHead head, const char *within)
{
    sheet->head = head;
    sheet->within = within;
    markup_page_begin(&sheet->html, &sheet->head);
    if (within)
        markup_open(&sheet->html, within);
    markup_line_end(&sheet->html);
}

void sheet_page_end(SheetOut *sheet)
{
    if (sheet->within)
        markup_close(&sheet->html);
    markup_page_end(&sheet->html, &sheet->head);
    markup_end(&sheet->html);
}

void sheet_json_begin(SheetOut *sheet)
{
    json_object(&sheet->facts.json);
    json_put_array(&sheet->facts.json, "movements");
}

void sheet_json_end(SheetOut *sheet)
{
    json_end(&sheet->facts.json);
    json_end(&sheet->facts.json);
}

void sheet_json_end_cautioned(SheetOut *sheet)
{
    json_end(&sheet->facts.json);
    json_put_text(&sheet->facts.json, "cautions", report_cautions(SPZ_ENGLISH));
    json_end(&sheet->facts.json);
}

void sheet_put_line(SheetOut *sheet, const char *element, const char *class)
{
    markup_element(&sheet->html, element, class, buffer_text(&sheet->line));
    sheet->text.failed = sheet->text.failed || buffer_failed(&sheet->line);
    buffer_clear(&sheet->line);
}
