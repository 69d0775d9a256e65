/* page_heads.h - what pages, and the tables in them, begin with alike. */
#ifndef PAGES_PAGE_HEADS_H
#define PAGES_PAGE_HEADS_H
#include "spezzato/language.h"
#include "wording/phrase.h"
#include "writing/markup.h"

/* A page with drawings, and a sheet of paper, each with a style of its own after those that it shares. */
PageHead page_head(spz_language language, const char *title, const char *style);
PageHead page_head_of_sheet(spz_language language, const char *title, const char *style);

/* The row of a table's head, a cell for each phrase; and the whole head. */
void table_head_row(Markup *html, spz_language language, const Phrase *heads, size_t count);
void table_head(Markup *html, spz_language language, const Phrase *heads, size_t count);
#endif
