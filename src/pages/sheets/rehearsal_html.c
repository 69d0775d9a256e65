/* The rehearsal sheet for paper: a table for each call, with room to pencil in. One file, nothing is fetched from anywhere. */
#include "pages/growing_report.h"
#include "pages/own_texts.h"
#include "pages/page_heads.h"
#include "pages/sheets/rehearsal_sheet.h"
#include "wording/section_words.h"

static void begin(SheetOut *sheet)
{
    sheet_page_begin(sheet, page_head_of_sheet(sheet->language, phrase_text(sheet->language, PHRASE_REHEARSAL_TITLE), text_rehearsal_css), "main");
}

static void heads(Markup *html, spz_language language)
{
    static const Phrase each[] = {PHRASE_PARTS_HEAD_DONE, PHRASE_HEAD_BARS, PHRASE_REHEARSAL_HEAD_LASTS, PHRASE_REHEARSAL_HEAD_WHAT, PHRASE_REHEARSAL_HEAD_NOTES};
    table_head(html, language, each, sizeof each / sizeof *each);
}

static void row(SheetOut *sheet, const RehearsalPage *page, const RehearsalItem *item)
{
    const spz_passage *p = item->passage;
    spz_language language = page->speaker.language;
    char text[WORDS_TEXT];
    Markup *html = &sheet->html;
    markup_open_class(html, "tr", spz_weight_of(p->strength) == SPZ_STRIKING ? "striking" : "clear");
    markup_open(html, "td");
    markup_element(html, "span", "done", "");
    markup_close(html);
    markup_open_class(html, "td", "bars");
    markup_words(html, words_bars(language, p, text));
    markup_element(html, "span", "letter", words_letter(p, text));
    markup_close(html);
    say_lasts(&sheet->line, language, item);
    sheet_put_line(sheet, "td", "lasts");
    markup_open(html, "td");
    say_to_rehearse(&sheet->line, &page->speaker, item);
    sheet_put_line(sheet, "span", "what");
    markup_words(html, " ");
    say_listening(&sheet->line, language, item);
    sheet_put_line(sheet, "span", "listen");
    markup_close(html);
    markup_element(html, "td", "notes", "");
    markup_close_line(html);
}

static void call_table(SheetOut *sheet, const RehearsalPage *page, const RehearsalCall *call)
{
    Markup *html = &sheet->html;
    say_call(&sheet->line, &page->speaker, call);
    sheet_put_line(sheet, "h2", NULL);
    markup_open(html, "table");
    heads(html, page->speaker.language);
    markup_open(html, "tbody");
    for (size_t i = 0; i < call->count; i++)
        row(sheet, page, &page->plan->items.at[call->first + i]);
    markup_close(html);
    markup_close_line(html);
}

static void movement(SheetOut *sheet, const RehearsalPage *page)
{
    Markup *html = &sheet->html;
    char source[SOURCE_TEXT];
    markup_open_class(html, "section", page->number ? "movement" : "movement first");
    markup_element(html, "h1", NULL, page->title);
    markup_element(html, "p", "about", words_source(page->movement, page->file, source));
    rehearsal_about(page, &sheet->line);
    sheet_put_line(sheet, "p", "about");
    for (size_t i = 0; i < page->plan->calls.count; i++)
        call_table(sheet, page, &page->plan->calls.at[i]);
    if (page->plan->calls.count == 0)
        markup_element(html, "p", NULL, phrase_text(page->speaker.language, PHRASE_REHEARSAL_NONE));
    if (*page->plan->seating)
        markup_element(html, "p", "cautions", report_cautions(page->speaker.language));
    markup_close_line(html);
}

const RehearsalForm rehearsal_html = {begin, movement, sheet_page_end, false};
