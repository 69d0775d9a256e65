#include "pages/sheets/notes_sheet.h"
#include "writing/document.h"
#include "editing/score_files.h"

static const NotesLanguage *const languages[SPZ_LANGUAGE_COUNT] = {
    [SPZ_ENGLISH] = &notes_english, [SPZ_GERMAN] = &notes_german, [SPZ_FRENCH] = &notes_french};

static const NotesForm *form_of(spz_format format)
{
    return format == SPZ_AS_TEXT ? &notes_text : format == SPZ_AS_MARKDOWN ? &notes_markdown : format == SPZ_AS_CSV ? &notes_csv : NULL;
}

static spz_status add_movement(const spz_movement_reading *reading, const spz_note_options *options, const NotesForm *form, size_t number,
                               SheetOut *sheet)
{
    MovementNotes notes;
    double lasts = options->lasts && number < options->lasts_count ? options->lasts[number] : 0;
    spz_status status = notes_of(reading, options, lasts, &notes);
    if (!status)
        form->movement(sheet, languages[options->language], &notes, number);
    notes_free(&notes);
    return status;
}

spz_status spz_sheet_notes(const spz_reading *const *readings, size_t count, const spz_note_options *options, spz_format format,
                           spz_document **out)
{
    spz_note_options usual = SPZ_NOTES_USUAL;
    const spz_note_options *wanted = options ? options : &usual;
    const NotesForm *form = form_of(format);
    SheetOut sheet;
    size_t number = 0;
    spz_status status = SPZ_OK;
    *out = NULL;
    if (!form || (unsigned)wanted->language >= SPZ_LANGUAGE_COUNT || !judged_all(readings, count))
        return SPZ_BAD_ARGUMENT;
    sheet_begin(&sheet, wanted->language);
    form->begin(&sheet, languages[wanted->language]);
    for (size_t i = 0; i < count && !status; i++)
        for (size_t m = 0; m < spz_reading_count(readings[i]) && !status; m++) {
            spz_movement_reading reading = spz_reading_at(readings[i], m);
            status = add_movement(&reading, wanted, form, number++, &sheet);
        }
    if (!status)
        status = document_take(&sheet.text, out);
    buffer_free(&sheet.text);
    return status;
}
