#include "pages/page_heads.h"
#include "pages/own_texts.h"

PageHead page_head(spz_language language, const char *title, const char *style)
{
    return (PageHead){.language = spz_language_code(language), .title = title, .base = text_base_css, .family = text_drawings_css, .style = style};
}

PageHead page_head_of_sheet(spz_language language, const char *title, const char *style)
{
    return (PageHead){.language = spz_language_code(language), .title = title, .base = text_base_css, .family = text_sheet_css, .style = style};
}

void page_link_open(Markup *html, const char *class, const char *page, size_t movement, size_t passage)
{
    Buffer address = {0};
    markup_address(&address, page);
    if (movement)
        buffer_printf(&address, "#m%zu", movement);
    if (passage)
        buffer_printf(&address, "-p%zu", passage);
    markup_open(html, "a");
    if (class)
        markup_put(html, "class", class);
    markup_put(html, "href", buffer_text(&address));
    buffer_let_go(html, &address);
}

void page_link(Markup *html, const char *page, size_t movement, const char *words)
{
    page_link_open(html, NULL, page, movement, 0);
    markup_words(html, words);
    markup_close(html);
}

void ways_begin(Markup *html, spz_language language, const char *overview)
{
    markup_open_class(html, "nav", "ways");
    markup_put(html, "aria-label", phrase_text(language, PHRASE_NAV_PAGES));
    markup_open(html, "ul");
    way_to(html, overview, phrase_text(language, PHRASE_NAV_OVERVIEW));
}

void way_to(Markup *html, const char *page, const char *words)
{
    way_along(html, NULL, page, words, NULL);
}

void way_along(Markup *html, const char *kind, const char *page, const char *title, const char *about)
{
    if (!page)
        return;
    markup_open(html, "li");
    if (kind)
        markup_put(html, "class", kind);
    page_link_open(html, NULL, page, 0, 0);
    if (about)
        markup_put(html, "title", about);
    markup_words(html, title);
    markup_close(html);
    markup_close(html);
}

void ways_end(Markup *html)
{
    markup_close(html);
    markup_close_line(html);
}

void table_head_row(Markup *html, spz_language language, const Phrase *heads, size_t count)
{
    markup_open(html, "tr");
    for (size_t i = 0; i < count; i++) {
        markup_open(html, "th");
        markup_put(html, "scope", "col");
        markup_words(html, phrase_text(language, heads[i]));
        markup_close(html);
    }
    markup_close(html);
}

void table_head(Markup *html, spz_language language, const Phrase *heads, size_t count)
{
    markup_open(html, "thead");
    table_head_row(html, language, heads, count);
    markup_close_line(html);
}
