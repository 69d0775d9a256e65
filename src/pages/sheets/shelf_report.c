/* A library's answer in the form that was asked for. */
#include "pages/season_forms.h"
#include "pages/shelf_forms.h"
#include "writing/document.h"

spz_status spz_report_shelf(const spz_shelf *shelf, spz_format format, const spz_season_look *asked, spz_document **out)
{
    static void (*const forms[])(const spz_shelf *, const spz_season_look *, Buffer *) = {
        [SPZ_AS_TEXT] = shelf_text, [SPZ_AS_JSON] = shelf_json, [SPZ_AS_CSV] = shelf_csv, [SPZ_AS_HTML] = shelf_html};
    Buffer text;
    spz_season_look look = season_look_of(asked);
    *out = NULL;
    if ((int)format < 0 || (size_t)format >= sizeof forms / sizeof *forms)
        return SPZ_BAD_ARGUMENT;
    buffer_init(&text);
    forms[format](shelf, &look, &text);
    return document_take(&text, out);
}
