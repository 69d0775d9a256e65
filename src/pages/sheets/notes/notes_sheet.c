#include "pages/page_names.h"
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

/* How many citations before this one stand in the same bars and are of the same kind. */
static size_t namesakes_before(const MovementNotes *notes, size_t place)
{
    const Citation *all = notes->citations.at, *citation = &all[place];
    size_t count = 0;
    for (size_t i = 0; i < place; i++)
        count += all[i].passage->kind == citation->passage->kind && all[i].passage->first == citation->passage->first && all[i].last == citation->last;
    return count;
}

/* 'symphony-1-66-71': the name of the file's page, the movement where there are several, the bars; what can't stand in a file's name is left out. */
static void name_picture(const MovementNotes *notes, const char *page, size_t place, bool several, char *out, size_t size)
{
    const Citation *citation = &notes->citations.at[place];
    size_t twins = namesakes_before(notes, place), length = (size_t)snprintf(out, size, "%.*s", (int)(strlen(page) - strlen(".html")), page);
    if (several && length < size)
        length += (size_t)snprintf(out + length, size - length, "-%zu", notes->movement->number);
    if (length < size)
        length += (size_t)snprintf(out + length, size - length, "-%s-%s-%s", spz_kind_name(citation->passage->kind), citation->passage->first_bar,
                                   spz_movement_bar_number(notes->movement, citation->last));
    if (twins && length < size)
        snprintf(out + length, size - length, "-%zu", twins + 1);
    for (char *at = out; *at; at++)
        if (strchr("/\\:*?\"<>|", *at) || (unsigned char)*at < ' ')
            *at = '_';
}

typedef struct Taking { /* where pictures go, and as what */
    const spz_page_names *pages; /* whose names tell files of one name apart */
    spz_picture form;
    spz_picture_taker *take;
    void *context;
} Taking;

static spz_status hand_over(const Taking *taking, const spz_reading *reading, const MovementNotes *notes, size_t i, Buffer *picture)
{
    char name[300], page[300];
    spz_document *document = NULL;
    const char *of = page_name_of(taking->pages, spz_score_file(spz_reading_score(reading)), page, sizeof page);
    name_picture(notes, of, i, spz_reading_count(reading) > 1, name, sizeof name);
    spz_status status = taking->form == SPZ_PICTURE_SVG ? SPZ_OK : print_picture(taking->form, picture);
    if (!status && picture->length)
        status = document_take(picture, &document);
    return status || !document ? status : taking->take(taking->context, name, document);
}

static spz_status take_movement(const Taking *taking, const spz_reading *of, size_t movement, const spz_note_options *options, NotesRun *run)
{
    MovementNotes notes;
    Buffer *pictures = NULL;
    spz_movement_reading reading = spz_reading_at(of, movement);
    spz_status status = notes_of(&reading, options, run, &notes);
    if (!status)
        pictures = make_pictures(of, options, &notes, &status);
    for (size_t p = 0; p < notes.citations.count && !status; p++)
        status = hand_over(taking, of, &notes, p, &pictures[p]);
    free_pictures(pictures, notes.citations.count);
    notes_free(&notes);
    return status;
}

static spz_status name_pages(const spz_reading *const *readings, size_t count, spz_page_names **out)
{
    const char **paths = memory_resize(NULL, count + 1, sizeof *paths);
    for (size_t i = 0; paths && i < count; i++)
        paths[i] = spz_score_file(spz_reading_score(readings[i]));
    spz_status status = paths ? spz_page_names_make(paths, count, NULL, 0, out) : SPZ_NO_MEMORY;
    memory_free(paths);
    return status;
}

spz_status spz_sheet_notes_pictures(const spz_reading *const *readings, size_t count, const spz_note_options *options, spz_picture form,
                                    spz_picture_taker *take, void *context)
{
    spz_note_options usual = SPZ_NOTES_USUAL;
    const spz_note_options *wanted = options ? options : &usual;
    spz_page_names *pages = NULL;
    NotesRun run = {0};
    if ((unsigned)wanted->language >= SPZ_LANGUAGE_COUNT || !judged_all(readings, count) || !spz_picture_possible(form))
        return SPZ_BAD_ARGUMENT;
    spz_status status = name_pages(readings, count, &pages);
    const Taking taking = {pages, form, take, context};
    for (size_t i = 0; i < count && !status; i++)
        for (size_t m = 0; m < spz_reading_count(readings[i]) && !status; m++)
            status = take_movement(&taking, readings[i], m, wanted, &run);
    spz_page_names_free(pages);
    return status;
}
