/* The notes as a page: one file, to be printed or copied from. */
#include "pages/own_texts.h"
#include "pages/sheets/notes_sheet.h"

static PageHead head_of(spz_language language)
{
    return (PageHead){.language = spz_language_code(language), .title = phrase_text(language, PHRASE_NOTES_TITLE), .style = text_notes_css};
}

static void begin(SheetOut *sheet)
{
    PageHead head = head_of(sheet->language);
    html_page_begin(&sheet->html, &head);
    html_line_end(&sheet->html);
}

static void end(SheetOut *sheet)
{
    PageHead head = head_of(sheet->language);
    html_page_end(&sheet->html, &head);
    html_end(&sheet->html);
}

/* An element on a line of its own; nothing for no text. */
static void own_line(Html *html, const char *element, const char *class, const char *text)
{
    if (!*text)
        return;
    html_element(html, element, class, text);
    html_line_end(html);
}

static void citations(SheetOut *sheet, const MovementNotes *notes)
{
    Html *html = &sheet->html;
    html_open(html, "dl");
    html_line_end(html);
    for (size_t i = 0; i < notes->citations.count; i++) {
        own_line(html, "dt", NULL, said_of_one(sheet, say_citation_place, notes, &notes->citations.at[i]));
        own_line(html, "dd", NULL, said_of_one(sheet, say_citation, notes, &notes->citations.at[i]));
    }
    html_close(html);
    html_line_end(html);
}

static void movement(SheetOut *sheet, const MovementNotes *notes)
{
    Html *html = &sheet->html;
    size_t count = notes->citations.count;
    html_open(html, "section");
    html_line_end(html);
    own_line(html, "h1", NULL, notes->title);
    own_line(html, "p", "origin", said_of_all(sheet, say_origin, notes));
    own_line(html, "p", NULL, said_of_all(sheet, say_overview, notes));
    own_line(html, count ? "h2" : "p", NULL, phrase_text(sheet->language, count ? PHRASE_NOTES_HEADING : PHRASE_NOTES_NOTHING));
    if (count) {
        citations(sheet, notes);
        own_line(html, "p", "times", said_of_all(sheet, say_times, notes));
    }
    html_close(html);
    html_line_end(html);
}

const NotesForm notes_html = {begin, movement, end};
