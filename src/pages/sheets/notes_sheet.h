/* notes_sheet.h - the writer's notes in their three forms. */
#ifndef PAGES_SHEETS_NOTES_SHEET_H
#define PAGES_SHEETS_NOTES_SHEET_H
#include "pages/sheets/sheet_out.h"
#include "wording/notes_language.h"

typedef struct NotesForm {
    void (*begin)(SheetOut *sheet, const NotesLanguage *language);
    void (*movement)(SheetOut *sheet, const NotesLanguage *language, const MovementNotes *notes, size_t number); /* number: from 0 */
} NotesForm;
extern const NotesForm notes_text, notes_markdown, notes_csv;
#endif
