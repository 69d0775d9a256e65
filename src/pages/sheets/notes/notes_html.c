/* The notes as a page: one file, to be printed or copied from. */
#include "pages/own_texts.h"
#include "pages/page_heads.h"
#include "pages/sheets/notes/notes_pictures.h"

static void begin(SheetOut *sheet)
{
    sheet_page_begin(sheet, page_head_of_sheet(sheet->language, phrase_text(sheet->language, PHRASE_NOTES_TITLE), text_notes_css), NULL);
}

/* An element on a line of its own; nothing for no text. */
static void own_line(Markup *html, const char *element, const char *class, const char *text)
{
    if (!*text)
        return;
    markup_element(html, element, class, text);
    markup_line_end(html);
}

/* The notes of a citation. */
static void picture(SheetOut *sheet, const MovementNotes *notes, size_t i)
{
    const Buffer *svg = sheet->pictures ? &sheet->pictures[i] : NULL;
    double width, height;
    Buffer address = {0};
    if (!svg || !svg->length)
        return;
    notes_picture_size(svg, &width, &height);
    markup_data_address(&address, "image/svg+xml", svg->text, svg->length);
    sheet->html.failed = sheet->html.failed || buffer_failed(&address);
    markup_open_class(&sheet->html, "dd", "picture");
    markup_open(&sheet->html, "img");
    markup_put(&sheet->html, "alt", said_of_one(sheet, say_citation_place, notes, &notes->citations.at[i]));
    markup_put_number(&sheet->html, "width", width > 700 ? width * 0.6 : width, 0); /* engraved notes are larger than drawn ones */
    markup_put(&sheet->html, "src", buffer_text(&address));
    markup_close_void(&sheet->html);
    markup_close_line(&sheet->html);
    buffer_free(&address);
}

/* Every entry, where the sentence does not tell them all. */
static void entries(SheetOut *sheet, const MovementNotes *notes, const Citation *citation)
{
    size_t lines = citation_list_lines(citation);
    if (!lines)
        return;
    markup_open_class(&sheet->html, "dd", "entries");
    markup_words(&sheet->html, phrase_text(sheet->language, PHRASE_NOTES_ENTRIES));
    markup_open(&sheet->html, "ol");
    for (size_t i = 0; i < lines; i++)
        markup_element(&sheet->html, "li", NULL, said_of_entry(sheet, notes, citation, i));
    markup_close(&sheet->html);
    markup_close_line(&sheet->html);
}

static void citations(SheetOut *sheet, const MovementNotes *notes)
{
    Markup *html = &sheet->html;
    markup_open(html, "dl");
    markup_line_end(html);
    for (size_t i = 0; i < notes->citations.count; i++) {
        own_line(html, "dt", NULL, said_of_one(sheet, say_citation_place, notes, &notes->citations.at[i]));
        own_line(html, "dd", NULL, said_of_one(sheet, say_citation, notes, &notes->citations.at[i]));
        entries(sheet, notes, &notes->citations.at[i]);
        picture(sheet, notes, i);
    }
    markup_close_line(html);
}

static void movement(SheetOut *sheet, const MovementNotes *notes)
{
    Markup *html = &sheet->html;
    size_t count = notes->citations.count;
    markup_open(html, "section");
    markup_line_end(html);
    own_line(html, "h1", NULL, notes->title);
    own_line(html, "p", "origin", said_of_all(sheet, say_origin, notes));
    own_line(html, "p", NULL, said_of_all(sheet, say_overview, notes));
    own_line(html, count ? "h2" : "p", NULL, phrase_text(sheet->language, count ? PHRASE_NOTES_HEADING : PHRASE_NOTES_NOTHING));
    if (count) {
        citations(sheet, notes);
        own_line(html, "p", "times", said_of_all(sheet, say_times, notes));
    }
    markup_close_line(html);
}

const NotesForm notes_html = {begin, movement, sheet_page_end};
