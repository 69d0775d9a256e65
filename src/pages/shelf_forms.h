/* shelf_forms.h - a library's answers, one function a form; they append to `out`, failures are remembered there. */
#ifndef PAGES_SHELF_FORMS_H
#define PAGES_SHELF_FORMS_H
#include "spezzato/library.h"
#include "support/buffer.h"

void shelf_text(const spz_shelf *shelf, const spz_season_look *look, Buffer *out);
void shelf_json(const spz_shelf *shelf, const spz_season_look *look, Buffer *out);
void shelf_csv(const spz_shelf *shelf, const spz_season_look *look, Buffer *out);
void shelf_html(const spz_shelf *shelf, const spz_season_look *look, Buffer *out);
#endif
