/* page_heads.h - what pages, and the tables in them, begin with alike. */
#ifndef PAGES_PAGE_HEADS_H
#define PAGES_PAGE_HEADS_H
#include "spezzato/language.h"
#include "wording/phrase.h"
#include "writing/markup.h"

/* A page with drawings, and a sheet of paper, each with a style of its own after those that it shares. */
PageHead page_head(spz_language language, const char *title, const char *style);
PageHead page_head_of_sheet(spz_language language, const char *title, const char *style);

/* A link to a page beside this one, by the name of its file; to a movement on it, and to a passage of that (from 1; 0: none). It stays open for its
 * words. The second closes it. */
void page_link_open(Markup *html, const char *class, const char *page, size_t movement, size_t passage);
void page_link(Markup *html, const char *page, size_t movement, const char *words);

/* The ways from a page to others: to the overview first, then those in `way_to` order; the last two lead to what comes before and after, `kind`
 * 'before' and 'after', with what they are (`about`, NULL for none) said beside their titles. `page` NULL: no such way. */
void ways_begin(Markup *html, spz_language language, const char *overview);
void way_to(Markup *html, const char *page, const char *words);
void way_along(Markup *html, const char *kind, const char *page, const char *title, const char *about);
void ways_end(Markup *html);

/* The row of a table's head, a cell for each phrase; and the whole head. */
void table_head_row(Markup *html, spz_language language, const Phrase *heads, size_t count);
void table_head(Markup *html, spz_language language, const Phrase *heads, size_t count);
#endif
