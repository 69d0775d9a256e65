/* notes_sheet.h - the writer's notes in their forms. */
#ifndef PAGES_SHEETS_NOTES_SHEET_H
#define PAGES_SHEETS_NOTES_SHEET_H
#include "pages/sheets/sheet_out.h"
#include "wording/papers/notes_words.h"

typedef struct NotesForm {
    SheetStep *begin;
    void (*movement)(SheetOut *sheet, const MovementNotes *notes);
    SheetStep *end;
} NotesForm;
extern const NotesForm notes_text, notes_markdown;           /* notes_forms.c */
extern const NotesForm notes_json, notes_csv;                /* notes_data.c, with the tables of their fields */
extern const FieldTable noted_movement_fields, citation_fields, heard_fields;
extern const Columns notes_columns;
extern const NotesForm notes_html, notes_odt;

/* What one of the speakers of notes_words.h says, as a text of its own until the next one; marks the sheet as failed where it failed. */
typedef void SayOfAll(Buffer *out, spz_language language, const MovementNotes *notes);
typedef void SayOfOne(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation);
const char *said_of_all(SheetOut *sheet, SayOfAll *say_it, const MovementNotes *notes);
const char *said_of_one(SheetOut *sheet, SayOfOne *say_it, const MovementNotes *notes, const Citation *citation);
const char *said_of_entry(SheetOut *sheet, const MovementNotes *notes, const Citation *citation, size_t line);
#endif
