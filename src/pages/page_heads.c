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
