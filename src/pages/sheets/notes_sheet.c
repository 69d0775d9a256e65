#include "pages/sheets/notes_timeline.h"
#include "editing/score_files.h"
#include "writing/document.h"

static const NotesForm *form_of(spz_format format, bool listeners, size_t movements)
{
    if (listeners)
        return format == SPZ_AS_HTML ? &timeline_html : format == SPZ_AS_SVG && movements == 1 ? &timeline_svg : NULL;
    switch (format) {
    case SPZ_AS_TEXT: return &notes_text;
    case SPZ_AS_MARKDOWN: return &notes_markdown;
    case SPZ_AS_CSV: return &notes_csv;
    case SPZ_AS_HTML: return &notes_html;
    case SPZ_AS_JSON: return &notes_json;
    case SPZ_AS_ODT: return &notes_odt;
    default: return NULL;
    }
}

static const char *as_text(SheetOut *sheet)
{
    sheet->text.failed = sheet->text.failed || buffer_failed(&sheet->line);
    return sheet->line.text && !buffer_failed(&sheet->line) ? sheet->line.text : "";
}

const char *said_of_all(SheetOut *sheet, SayOfAll *say_it, const MovementNotes *notes)
{
    buffer_clear(&sheet->line);
    say_it(&sheet->line, sheet->language, notes);
    return as_text(sheet);
}

const char *said_of_one(SheetOut *sheet, SayOfOne *say_it, const MovementNotes *notes, const Citation *citation)
{
    buffer_clear(&sheet->line);
    say_it(&sheet->line, sheet->language, notes, citation);
    return as_text(sheet);
}

static spz_status add_movement(const spz_movement_reading *reading, const spz_note_options *options, const NotesForm *form, NotesRun *run,
                               SheetOut *sheet)
{
    MovementNotes notes;
    spz_status status = notes_of(reading, options, run, &notes);
    if (!status)
        form->movement(sheet, &notes);
    notes_free(&notes);
    return status;
}

spz_status spz_sheet_notes(const spz_reading *const *readings, size_t count, const spz_note_options *options, spz_format format,
                           spz_document **out)
{
    spz_note_options usual = SPZ_NOTES_USUAL;
    const spz_note_options *wanted = options ? options : &usual;
    size_t movements = 0;
    for (size_t i = 0; i < count; i++)
        movements += spz_reading_count(readings[i]);
    const NotesForm *form = form_of(format, wanted->listeners, movements);
    NotesRun run = {0};
    SheetOut sheet;
    spz_status status = SPZ_OK;
    *out = NULL;
    if (!form || (unsigned)wanted->language >= SPZ_LANGUAGE_COUNT || !judged_all(readings, count))
        return SPZ_BAD_ARGUMENT;
    sheet_begin(&sheet, wanted->language);
    form->begin(&sheet);
    for (size_t i = 0; i < count && !status; i++)
        for (size_t m = 0; m < spz_reading_count(readings[i]) && !status; m++) {
            spz_movement_reading reading = spz_reading_at(readings[i], m);
            status = add_movement(&reading, wanted, form, &run, &sheet);
        }
    form->end(&sheet);
    if (!status)
        status = document_take(&sheet.text, out);
    sheet_end(&sheet);
    return status;
}
