#include "pages/sheets/notes/notes_pictures.h"
#include "pages/sheets/notes/notes_timeline.h"
#include "pages/sheets/notes/print_picture.h"
#include "model/movement.h"
#include "support/memory.h"
#include "writing/document.h"
#include <stdio.h>
#include <string.h>

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

const char *said_of_entry(SheetOut *sheet, const MovementNotes *notes, const Citation *citation, size_t line)
{
    buffer_clear(&sheet->line);
    say_entry(&sheet->line, sheet->language, notes, citation, line);
    return as_text(sheet);
}

static void free_pictures(Buffer *pictures, size_t count)
{
    for (size_t i = 0; pictures && i < count; i++)
        buffer_free(&pictures[i]);
    memory_free(pictures);
}

/* One for each citation; NULL where there are none, or memory ended. */
static Buffer *make_pictures(const spz_reading *reading, const spz_note_options *options, const MovementNotes *notes, spz_status *status)
{
    size_t count = notes->citations.count;
    Buffer *pictures = count ? memory_resize(NULL, count, sizeof *pictures) : NULL;
    for (size_t i = 0; pictures && i < count; i++)
        buffer_init(&pictures[i]);
    *status = count && !pictures ? SPZ_NO_MEMORY : count ? notes_pictures(spz_score_file(spz_reading_score(reading)), options, notes, pictures) : SPZ_OK;
    return pictures;
}

typedef struct Under { /* a sheet under way */
    const NotesForm *form;
    const spz_note_options *options;
    NotesRun run;
} Under;

static spz_status add_movement(SheetOut *sheet, const spz_reading *of, size_t movement, void *context)
{
    Under *under = context;
    MovementNotes notes;
    Buffer *pictures = NULL;
    spz_movement_reading reading = spz_reading_at(of, movement);
    spz_status status = notes_of(&reading, under->options, &under->run, &notes);
    if (!status && under->options->notation && under->form == &notes_html)
        pictures = make_pictures(of, under->options, &notes, &status);
    sheet->pictures = pictures;
    if (!status)
        under->form->movement(sheet, &notes);
    sheet->pictures = NULL;
    free_pictures(pictures, notes.citations.count);
    notes_free(&notes);
    return status;
}

spz_status spz_sheet_notes(const spz_reading *const *readings, size_t count, const spz_note_options *options, spz_format format,
                           spz_document **out)
{
    const spz_note_options usual = SPZ_NOTES_USUAL;
    Under under = {.options = options ? options : &usual};
    size_t movements = 0;
    for (size_t i = 0; i < count; i++)
        movements += spz_reading_count(readings[i]);
    under.form = (unsigned)under.options->language < SPZ_LANGUAGE_COUNT ? form_of(format, under.options->listeners, movements) : NULL;
    SheetRun run = {under.form ? under.form->begin : NULL, under.form ? under.form->end : NULL, add_movement, &under, under.options->language};
    return sheet_write(&run, readings, count, out);
}

/* 'symphony-1-66-71': the file, the movement where there are several, the bars; what can't stand in a file's name is left out. */
static void name_picture(const MovementNotes *notes, const Citation *citation, bool several, char *out, size_t size)
{
    size_t whole = strcspn(notes->file, ":"), stem = whole; /* 'symphony.mxl:score.xml' */
    while (stem > 0 && notes->file[stem] != '.')
        stem--;
    size_t length = (size_t)snprintf(out, size, "%.*s", (int)(stem ? stem : whole), notes->file);
    if (several && length < size)
        length += (size_t)snprintf(out + length, size - length, "-%zu", notes->movement->number);
    if (length < size)
        snprintf(out + length, size - length, "-%s-%s-%s", spz_kind_name(citation->passage->kind), citation->passage->first_bar,
                 spz_movement_bar_number(notes->movement, citation->last));
    for (char *at = out; *at; at++)
        if (strchr("/\\:*?\"<>|", *at) || (unsigned char)*at < ' ')
            *at = '_';
}

typedef struct Taking { /* where pictures go, and as what */
    spz_picture form;
    spz_picture_taker *take;
    void *context;
} Taking;

static spz_status hand_over(const Taking *taking, const MovementNotes *notes, size_t i, bool several, Buffer *picture)
{
    char name[200];
    spz_document *document = NULL;
    name_picture(notes, &notes->citations.at[i], several, name, sizeof name);
    spz_status status = taking->form == SPZ_PICTURE_SVG ? SPZ_OK : print_picture(taking->form, picture);
    if (!status && picture->length)
        status = document_take(picture, &document);
    return status || !document ? status : taking->take(taking->context, name, document);
}

spz_status spz_sheet_notes_pictures(const spz_reading *const *readings, size_t count, const spz_note_options *options, spz_picture form,
                                    spz_picture_taker *take, void *context)
{
    spz_note_options usual = SPZ_NOTES_USUAL;
    const spz_note_options *wanted = options ? options : &usual;
    const Taking taking = {form, take, context};
    NotesRun run = {0};
    spz_status status = SPZ_OK;
    if ((unsigned)wanted->language >= SPZ_LANGUAGE_COUNT || !judged_all(readings, count) || !spz_picture_possible(form))
        return SPZ_BAD_ARGUMENT;
    for (size_t i = 0; i < count && !status; i++)
        for (size_t m = 0; m < spz_reading_count(readings[i]) && !status; m++) {
            MovementNotes notes;
            Buffer *pictures = NULL;
            spz_movement_reading reading = spz_reading_at(readings[i], m);
            status = notes_of(&reading, wanted, &run, &notes);
            if (!status)
                pictures = make_pictures(readings[i], wanted, &notes, &status);
            for (size_t p = 0; p < notes.citations.count && !status; p++)
                status = hand_over(&taking, &notes, p, spz_reading_count(readings[i]) > 1, &pictures[p]);
            free_pictures(pictures, notes.citations.count);
            notes_free(&notes);
        }
    return status;
}
