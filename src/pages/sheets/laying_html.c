/* The laying table to be printed: the drawing, the sums, the risers, and every place row by row. */
#include "pages/laying_forms.h"
#include "pages/drawings/stage/stage_svg.h"
#include "pages/growing_report.h"
#include "pages/own_texts.h"
#include "pages/page_heads.h"
#include "wording/seatings/laying_words.h"
#include "wording/seatings/seating_words.h"
#include "writing/document.h"
#include "writing/markup.h"
#include <string.h>

typedef struct Sheet {
    Markup html;
    const spz_laying *laying;
    spz_language language;
    Buffer text;
} Sheet;

static PageHead head_of(spz_language language)
{
    return page_head_of_sheet(language, phrase_text(language, PHRASE_LAYING_TITLE), text_laying_css);
}

/* What is in the text, as an element of its own line; empties it. */
static void put_text(Sheet *sheet, const char *element, const char *class)
{
    if (sheet->text.length) {
        markup_line_end(&sheet->html);
        markup_element(&sheet->html, element, class, sheet->text.text);
    }
    buffer_clear(&sheet->text);
}

static void put_drawing(Sheet *sheet, const spz_document *drawing)
{
    size_t length;
    const char *svg = spz_document_text(drawing, &length);
    markup_data_address(&sheet->text, "image/svg+xml", svg, length);
    markup_line_end(&sheet->html);
    markup_open(&sheet->html, "img");
    markup_put(&sheet->html, "src", sheet->text.text ? sheet->text.text : "");
    markup_put(&sheet->html, "alt", words_arrangement(sheet->language, spz_plan_arrangement(spz_laying_plan(sheet->laying))));
    markup_close_void(&sheet->html);
    buffer_clear(&sheet->text);
}

static void put_spot(Sheet *sheet, const spz_spot *spot)
{
    say_figure(&sheet->text, sheet->language, spot->x, 2);
    buffer_puts(&sheet->text, " / ");
    say_figure(&sheet->text, sheet->language, spot->y, 2);
}

static void put_seats(Sheet *sheet, const spz_laid *laid)
{
    for (int i = 0; i < laid->players && laid->chairs + laid->stools > 0; i++) {
        buffer_puts(&sheet->text, i ? phrase_text(sheet->language, PHRASE_LIST_PART) : "");
        put_spot(sheet, &laid->seats[i]);
    }
    put_text(sheet, "td", NULL);
}

static void put_empty(Sheet *sheet)
{
    markup_element(&sheet->html, "td", NULL, "");
}

static void put_row(Sheet *sheet, const spz_laid *laid, bool first)
{
    Markup *html = &sheet->html;
    markup_line_end(html);
    markup_open_class(html, "tr", first ? "first" : NULL);
    markup_element(html, "td", NULL, words_laid(sheet->language, laid));
    if (laid->orchestra)
        buffer_printf(&sheet->text, "%d: ", laid->orchestra);
    if (laid->number)
        buffer_printf(&sheet->text, "%d", laid->number);
    markup_element(html, "td", NULL, sheet->text.text ? sheet->text.text : "");
    buffer_clear(&sheet->text);
    put_spot(sheet, &(spz_spot){laid->x, laid->y});
    put_text(sheet, "td", NULL);
    say_figure(&sheet->text, sheet->language, laid->z, 2);
    put_text(sheet, "td", NULL);
    say_figure(&sheet->text, sheet->language, laid->radius, 2);
    buffer_puts(&sheet->text, " / ");
    say_figure(&sheet->text, sheet->language, laid->angle, 1);
    buffer_puts(&sheet->text, "\302\260");
    put_text(sheet, "td", NULL);
    if (laid->chairs + laid->stools)
        put_seats(sheet, laid);
    else
        put_empty(sheet);
    if (laid->stands)
        put_spot(sheet, &laid->stand);
    markup_element(html, "td", NULL, laid->stands ? sheet->text.text : "");
    buffer_clear(&sheet->text);
    buffer_printf(&sheet->text, "%d, %d, %d, %d", laid->chairs, laid->stools, laid->stands, laid->lights);
    put_text(sheet, "td", NULL);
    markup_close(html);
}

static bool begins_group(const spz_laid *before, const spz_laid *laid)
{
    return !before || before->kind != laid->kind || before->section != laid->section || before->instrument != laid->instrument ||
           before->orchestra != laid->orchestra;
}

static void put_table(Sheet *sheet)
{
    static const Phrase heads[] = {PHRASE_LAYING_HEAD_WHO,   PHRASE_LAYING_HEAD_NUMBER, PHRASE_LAYING_HEAD_PLACE, PHRASE_LAYING_HEAD_HEIGHT,
                                   PHRASE_LAYING_HEAD_POLAR, PHRASE_LAYING_HEAD_SEATS,  PHRASE_LAYING_HEAD_STAND, PHRASE_LAYING_HEAD_THINGS};
    Markup *html = &sheet->html;
    markup_line_end(html);
    markup_open(html, "table");
    table_head(html, sheet->language, heads, sizeof heads / sizeof *heads);
    markup_open(html, "tbody");
    for (size_t i = 0; i < spz_laying_count(sheet->laying); i++) {
        const spz_laid *laid = spz_laying_at(sheet->laying, i);
        put_row(sheet, laid, begins_group(i ? spz_laying_at(sheet->laying, i - 1) : NULL, laid));
    }
    markup_close(html);
    markup_close_line(html);
}

static void put_page(Sheet *sheet, const spz_document *drawing)
{
    spz_language language = sheet->language;
    PageHead head = head_of(language);
    markup_page_begin(&sheet->html, &head);
    put_drawing(sheet, drawing);
    buffer_puts(&sheet->text, phrase_text(language, PHRASE_LAYING_TITLE));
    put_text(sheet, "h2", NULL);
    say_laid_sums(&sheet->text, language, sheet->laying);
    buffer_puts(&sheet->text, " ");
    say_laid_ways(&sheet->text, language, sheet->laying);
    put_text(sheet, "p", NULL);
    SAY(&sheet->text, language, PHRASE_LAYING_DEPTH, slot_decimal("n", spz_laying_depth(sheet->laying), 2));
    put_text(sheet, "p", NULL);
    for (size_t i = 0; i < spz_laying_risers(sheet->laying); i++) {
        say_riser(&sheet->text, language, spz_laying_riser(sheet->laying, i));
        put_text(sheet, "p", "riser");
    }
    buffer_puts(&sheet->text, phrase_text(language, PHRASE_LAYING_ABOUT));
    put_text(sheet, "p", "small");
    put_table(sheet);
    markup_element(&sheet->html, "p", "small", report_cautions(language));
    markup_page_end(&sheet->html, &head);
}

static spz_status laying_html(const spz_laying *laying, const spz_document *drawing, spz_language language, spz_document **out)
{
    Sheet sheet = {.laying = laying, .language = language};
    Buffer page;
    buffer_init(&page);
    buffer_init(&sheet.text);
    markup_begin(&sheet.html, &page);
    put_page(&sheet, drawing);
    markup_end(&sheet.html);
    page.failed = page.failed || buffer_failed(&sheet.text);
    spz_status status = document_take(&page, out);
    buffer_free(&sheet.text);
    return status;
}

spz_status spz_report_laying(const spz_laying *laying, const spz_section (*pairs)[2], size_t count, spz_format format, spz_language language,
                             spz_document **out)
{
    static const spz_section usual[2][2] = {{SPZ_VN1, SPZ_VN2}, {SPZ_VN1, SPZ_VC}};
    spz_document *drawing = NULL;
    *out = NULL;
    if (!pairs || count == 0)
        return spz_report_laying(laying, usual, 2, format, language, out);
    if (format == SPZ_AS_CSV)
        return laying_csv(laying, out);
    if (format != SPZ_AS_SVG && format != SPZ_AS_HTML)
        return SPZ_BAD_ARGUMENT;
    spz_status status = stage_svg_laid(spz_laying_plan(laying), laying, pairs, count > 2 ? 2 : count, language, &drawing);
    if (status == SPZ_OK && format == SPZ_AS_SVG)
        *out = drawing;
    else if (status == SPZ_OK) {
        status = laying_html(laying, drawing, language, out);
        spz_document_free(drawing);
    }
    return status;
}
