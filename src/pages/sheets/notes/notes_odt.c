/* The notes for a word processor, with styles: OpenDocument 1.3 (OASIS), part 2 for the package (mimetype first and not compressed), part 3 for
 * what stands in it. */
#include "editing/bytes/mark_zip.h"
#include "pages/sheets/notes/notes_sheet.h"
#include <string.h>

#define OASIS "urn:oasis:names:tc:opendocument:xmlns:"
static const char mimetype[] = "application/vnd.oasis.opendocument.text";

typedef struct Style {
    const char *name, *shown, *parent, *size; /* size of its letters; NULL: as its parent */
    bool bold, italic, indented, with_next;   /* with_next: no page ends behind it */
    const char *outline;                      /* level of a heading, NULL for none */
    const char *above, *below;                /* room, in cm */
} Style;

static const Style styles[] = {
    {"Standard", NULL, NULL, "11pt", false, false, false, false, NULL, "0cm", "0cm"},
    {"Text_20_body", "Text body", "Standard", NULL, false, false, false, false, NULL, "0cm", "0.25cm"},
    {"Heading_20_1", "Heading 1", "Standard", "17pt", true, false, false, true, "1", "0.8cm", "0.05cm"},
    {"Heading_20_2", "Heading 2", "Standard", "12pt", true, false, false, true, "2", "0.4cm", "0.15cm"},
    {"Origin", NULL, "Text_20_body", NULL, false, true, false, true, NULL, "0cm", "0.3cm"},
    {"Citation_20_place", "Citation place", "Standard", NULL, true, false, false, true, NULL, "0.2cm", "0cm"},
    {"Citation_20_text", "Citation text", "Text_20_body", NULL, false, false, true, false, NULL, "0cm", "0.1cm"},
    {"Citation_20_entry", "Citation entry", "Standard", "10pt", false, false, true, false, NULL, "0cm", "0cm"},
    {"Times", NULL, "Text_20_body", "9pt", false, true, false, false, NULL, "0.4cm", "0cm"},
};

static void put_namespaces(Markup *xml)
{
    markup_put(xml, "xmlns:office", OASIS "office:1.0");
    markup_put(xml, "xmlns:style", OASIS "style:1.0");
    markup_put(xml, "xmlns:text", OASIS "text:1.0");
    markup_put(xml, "xmlns:fo", OASIS "xsl-fo-compatible:1.0");
    markup_put(xml, "office:version", "1.3");
}

static void begin(SheetOut *sheet)
{
    Markup *xml = &sheet->html;
    markup_xml_head(xml);
    markup_open(xml, "office:document-content");
    put_namespaces(xml);
    markup_open(xml, "office:body");
    markup_open(xml, "office:text");
}

static void paragraph(SheetOut *sheet, const char *style, const char *level, const char *text)
{
    Markup *xml = &sheet->html;
    if (!*text)
        return;
    markup_open(xml, level ? "text:h" : "text:p");
    markup_put(xml, "text:style-name", style);
    if (level)
        markup_put(xml, "text:outline-level", level);
    markup_words(xml, text);
    markup_close(xml);
}

static void entries(SheetOut *sheet, const MovementNotes *notes, const Citation *citation)
{
    size_t lines = citation_list_lines(citation);
    if (lines)
        paragraph(sheet, "Citation_20_text", NULL, phrase_text(sheet->language, PHRASE_NOTES_ENTRIES));
    for (size_t i = 0; i < lines; i++)
        paragraph(sheet, "Citation_20_entry", NULL, said_of_entry(sheet, notes, citation, i));
}

static void movement(SheetOut *sheet, const MovementNotes *notes)
{
    size_t count = notes->citations.count;
    paragraph(sheet, "Heading_20_1", "1", notes->title);
    paragraph(sheet, "Origin", NULL, said_of_all(sheet, say_origin, notes));
    paragraph(sheet, "Text_20_body", NULL, said_of_all(sheet, say_overview, notes));
    paragraph(sheet, count ? "Heading_20_2" : "Text_20_body", count ? "2" : NULL,
              phrase_text(sheet->language, count ? PHRASE_NOTES_HEADING : PHRASE_NOTES_NOTHING));
    for (size_t i = 0; i < count; i++) {
        paragraph(sheet, "Citation_20_place", NULL, said_of_one(sheet, say_citation_place, notes, &notes->citations.at[i]));
        paragraph(sheet, "Citation_20_text", NULL, said_of_one(sheet, say_citation, notes, &notes->citations.at[i]));
        entries(sheet, notes, &notes->citations.at[i]);
    }
    if (count)
        paragraph(sheet, "Times", NULL, said_of_all(sheet, say_times, notes));
}

static void put_style(Markup *xml, const Style *style, const char *language)
{
    markup_open(xml, "style:style");
    markup_put(xml, "style:name", style->name);
    if (style->shown)
        markup_put(xml, "style:display-name", style->shown);
    markup_put(xml, "style:family", "paragraph");
    if (style->parent)
        markup_put(xml, "style:parent-style-name", style->parent);
    if (style->outline)
        markup_put(xml, "style:default-outline-level", style->outline);
    markup_open(xml, "style:paragraph-properties");
    markup_put(xml, "fo:margin-top", style->above);
    markup_put(xml, "fo:margin-bottom", style->below);
    markup_put(xml, "fo:margin-left", style->indented ? "0.7cm" : "0cm");
    if (style->with_next)
        markup_put(xml, "fo:keep-with-next", "always");
    markup_close(xml);
    markup_open(xml, "style:text-properties");
    markup_put(xml, "fo:language", language);
    if (style->size)
        markup_put(xml, "fo:font-size", style->size);
    markup_put(xml, "fo:font-weight", style->bold ? "bold" : "normal");
    markup_put(xml, "fo:font-style", style->italic ? "italic" : "normal");
    markup_close(xml);
    markup_close(xml);
}

static void write_styles(Buffer *out, const char *language)
{
    Markup xml;
    markup_begin(&xml, out);
    markup_xml_head(&xml);
    markup_open(&xml, "office:document-styles");
    put_namespaces(&xml);
    markup_open(&xml, "office:styles");
    for (size_t i = 0; i < sizeof styles / sizeof *styles; i++)
        put_style(&xml, &styles[i], language);
    markup_close(&xml);
    markup_close(&xml);
    markup_end(&xml);
}

static void put_file(Markup *xml, const char *path, const char *type)
{
    markup_open(xml, "manifest:file-entry");
    markup_put(xml, "manifest:full-path", path);
    markup_put(xml, "manifest:media-type", type);
    markup_close(xml);
}

static void write_manifest(Buffer *out)
{
    Markup xml;
    markup_begin(&xml, out);
    markup_xml_head(&xml);
    markup_open(&xml, "manifest:manifest");
    markup_put(&xml, "xmlns:manifest", OASIS "manifest:1.0");
    markup_put(&xml, "manifest:version", "1.3");
    put_file(&xml, "/", mimetype);
    put_file(&xml, "content.xml", "text/xml");
    put_file(&xml, "styles.xml", "text/xml");
    markup_close(&xml);
    markup_end(&xml);
}

static void add_member(Zip *zip, const char *name, Buffer *content)
{
    zip_deflated(zip, name, strlen(name), buffer_text(content), content->length);
}

/* The text of the sheet becomes the package. */
static void end(SheetOut *sheet)
{
    Buffer manifest = {0}, look = {0}, package = {0};
    Zip zip;
    for (int open = 0; open < 3; open++)
        markup_close(&sheet->html);
    markup_end(&sheet->html);
    write_manifest(&manifest);
    write_styles(&look, spz_language_code(sheet->language));
    bool failed = buffer_failed(&sheet->text) || buffer_failed(&manifest) || buffer_failed(&look);
    zip_begin(&zip, &package);
    zip_stored(&zip, "mimetype", strlen("mimetype"), mimetype, strlen(mimetype));
    add_member(&zip, "META-INF/manifest.xml", &manifest);
    add_member(&zip, "content.xml", &sheet->text);
    add_member(&zip, "styles.xml", &look);
    package.failed = !zip_end(&zip) || failed || package.failed;
    buffer_free(&manifest);
    buffer_free(&look);
    package.shortages = sheet->text.shortages;
    buffer_free(&sheet->text);
    sheet->text = package;
}

const NotesForm notes_odt = {begin, movement, end};
