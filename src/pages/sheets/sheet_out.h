/* sheet_out.h - a sheet under way, and the writers over it; a form uses one of them. */
#ifndef PAGES_SHEETS_SHEET_OUT_H
#define PAGES_SHEETS_SHEET_OUT_H
#include "spezzato/language.h"
#include "writing/csv_text.h"
#include "writing/markup.h"

typedef struct SheetOut {
    Buffer text;
    CsvRow row;
    Html html;
    spz_language language;
} SheetOut;

static inline void sheet_begin(SheetOut *sheet, spz_language language)
{
    sheet->language = language;
    buffer_init(&sheet->text);
    csv_begin(&sheet->row, &sheet->text);
    html_begin(&sheet->html, &sheet->text);
}
#endif
