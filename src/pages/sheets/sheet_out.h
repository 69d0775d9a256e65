/* sheet_out.h - a sheet under way, and the writers over it; a form uses one of them. */
#ifndef PAGES_SHEETS_SHEET_OUT_H
#define PAGES_SHEETS_SHEET_OUT_H
#include "spezzato/language.h"
#include "writing/facts.h"
#include "writing/markup.h"

typedef struct SheetOut {
    Buffer text;
    Markup html;
    FactsOut facts;
    Buffer line; /* what is being said just now */
    spz_language language;
    const Buffer *pictures; /* of what is being written just now, one each; NULL for none */
} SheetOut;

static inline void sheet_begin(SheetOut *sheet, spz_language language)
{
    sheet->language = language;
    sheet->pictures = NULL;
    buffer_init(&sheet->text);
    buffer_init(&sheet->line);
    markup_begin(&sheet->html, &sheet->text);
    facts_begin(&sheet->facts, &sheet->text);
}

static inline void sheet_end(SheetOut *sheet)
{
    buffer_free(&sheet->facts.words);
    buffer_free(&sheet->text);
    buffer_free(&sheet->line);
}
#endif
