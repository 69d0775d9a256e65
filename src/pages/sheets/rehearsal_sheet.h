/* rehearsal_sheet.h - the rehearsal sheet in its forms. */
#ifndef PAGES_SHEETS_REHEARSAL_SHEET_H
#define PAGES_SHEETS_REHEARSAL_SHEET_H
#include "pages/sheets/sheet_out.h"
#include "wording/papers/rehearsal_words.h"

typedef struct RehearsalPage { /* one movement */
    const spz_movement *movement;
    const spz_findings *findings;
    const RehearsalPlan *plan;
    const char *file, *title;
    Speaker speaker;
    size_t number; /* in the document, from 0 */
} RehearsalPage;

typedef struct RehearsalForm {
    SheetStep *begin;
    void (*movement)(SheetOut *sheet, const RehearsalPage *page);
    SheetStep *end;
    bool data; /* in English */
} RehearsalForm;
extern const RehearsalForm rehearsal_text, rehearsal_html, rehearsal_json, rehearsal_csv;
extern const FieldTable rehearsal_movement_fields, call_fields, rehearsal_item_fields;
extern const Columns rehearsal_columns;

/* What the sheet is about: seating, and how times were counted. */
void rehearsal_about(const RehearsalPage *page, Buffer *out);
#endif
