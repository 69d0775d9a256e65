/* concert_page.h - the page of one concert while it is written: what concert_html.c and evening_strip.c share. */
#ifndef PAGES_SEASON_CONCERT_PAGE_H
#define PAGES_SEASON_CONCERT_PAGE_H
#include "season/planning/season_plan.h"
#include "spezzato/report.h"
#include "wording/phrase.h"
#include "writing/markup.h"

typedef struct ConcertPage {
    Markup html;
    PageHead head;
    Buffer words; /* under way */
    spz_language language;
    const spz_season *season;
    const spz_page_names *pages; /* NULL: as spz_report_page_name */
    size_t index;
    const Hall *hall;
    const spz_planned_concert *concert;
    const spz_strips *strips; /* NULL: none */
} ConcertPage;

/* The words under way as an element, nothing where there are none. */
void concert_put(ConcertPage *page, const char *element, const char *class);
void concert_phrase(ConcertPage *page, const char *element, const char *class, Phrase phrase);
/* A link to the movement on its page; it stays open for its words. `class` NULL for none. */
void concert_link(ConcertPage *page, const char *class, const spz_planned_movement *movement);
/* evening_strip.c: the evening by minutes, calls and answers in it, and what one seating would give up. */
void concert_evening(ConcertPage *page);
#endif
