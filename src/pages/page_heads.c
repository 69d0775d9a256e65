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

void table_head_row(Html *html, spz_language language, const Phrase *heads, size_t count)
{
    html_open(html, "tr");
    for (size_t i = 0; i < count; i++) {
        html_open(html, "th");
        html_put(html, "scope", "col");
        html_words(html, phrase_text(language, heads[i]));
        html_close(html);
    }
    html_close(html);
}

void table_head(Html *html, spz_language language, const Phrase *heads, size_t count)
{
    html_open(html, "thead");
    table_head_row(html, language, heads, count);
    html_close(html);
    html_line_end(html);
}
