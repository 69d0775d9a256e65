/* bowings_sheet.h - the bowing committee's sheet in its forms, movement by movement. */
#ifndef PAGES_SHEETS_BOWINGS_SHEET_H
#define PAGES_SHEETS_BOWINGS_SHEET_H
#include "pages/sheets/sheet_out.h"
#include "wording/papers/bowing_words.h"

typedef struct BowingsPage { /* one movement */
    const spz_movement_reading *reading;
    const BowingList *list;
    const char *file, *title;
    Speaker speaker;
    size_t number; /* in the document, from 0 */
} BowingsPage;

typedef struct BowingsForm {
    SheetStep *begin;
    void (*movement)(SheetOut *sheet, const BowingsPage *page);
    SheetStep *end;
    bool data; /* in English */
} BowingsForm;
extern const BowingsForm bowings_text, bowings_html, bowings_json, bowings_csv;
extern const FieldTable bowings_movement_fields, gesture_fields, gesture_section_fields, bowing_difference_fields;
extern const Columns bowings_columns;
#endif
