/* web.h - the conductor's page: one file that needs nothing else, for the screen, paper and a screen reader. */
#ifndef PAGES_WEB_WEB_H
#define PAGES_WEB_WEB_H
#include "pages/drawings/score_view.h"
#include "pages/growing_report.h"
#include "sections/section_map.h"
#include "support/sha256.h"
#include "writing/markup.h"

typedef struct Web {
    Markup *html;
    const spz_report *report;
    const ShownMovement *shown;
    const SectionMap *map;
    const Movement *movement;
    ScoreView view;
    Buffer *drawings; /* engraved passages by their place in the findings, empty where there is none; NULL: none at all */
} Web;

/* In the reader's language. */
static inline Speaker web_speaker(const Web *web)
{
    return report_speaker(web->report, web->shown);
}

/* Headings in order: the movement is h1 where it is alone on its page, h2 among others; `below` levels under that. */
const char *web_heading(const Web *web, int below);

/* The movement's own title without the work's, and the work's; "" where the title is all there is. */
const char *web_own_title(const ShownMovement *shown);
const char *web_work(const ShownMovement *shown);

/* A phrase with its slots as the text of the element that is open; as an attribute of it. */
void web_say(Markup *html, spz_language language, Phrase phrase, const Slot *slots, size_t count);
void web_put(Markup *html, const char *attribute, spz_language language, Phrase phrase, const Slot *slots, size_t count);
#define WEB_SAY(html, language, phrase, ...) web_say(html, language, phrase, (const Slot[]){__VA_ARGS__}, sizeof((const Slot[]){__VA_ARGS__}) / sizeof(Slot))
#define WEB_PUT(html, attribute, language, phrase, ...) \
    web_put(html, attribute, language, phrase, (const Slot[]){__VA_ARGS__}, sizeof((const Slot[]){__VA_ARGS__}) / sizeof(Slot))
/* The buffer in the element that is open; it is emptied. */
void web_words(Markup *html, Buffer *words);
/* The buffer as an element, nothing where it is empty; it is emptied. `class` NULL for none. */
void web_element(Markup *html, const char *element, const char *class, Buffer *words);

/* Pieces of a movement's section, in the order in which they are read. */
void web_first_screen(const Web *web);
void web_why(const Web *web);
void web_two_seatings(const Web *web);
void web_passages(const Web *web);
/* Her own ear: what the conductor says of passage `index`, as attributes of the element that is open; and, once behind them, where the script
 * writes the lines that she puts into a settings file. */
void web_ruled(const Web *web, size_t index);
void web_own_ear(const Web *web);
/* The rehearsal sheet: what to rehearse by who is called. */
void web_rehearsal(const Web *web);
/* The player of a passage that was made audible; nothing for all others. The key by which the browser knows the sounds of this page; NULL: none. */
void web_player(const Web *web, size_t passage);
void web_player_caution(const Web *web); /* what all players of the movement are worth, once */
const char *web_sound_key(const spz_report_options *options, char key[SHA256_TEXT]);
void web_stage(const Web *web);
void web_arrangements(Markup *html, spz_language language, const spz_verdict *verdict);

/* Engraves the strongest passages, where an engraver is at hand; to be released in the end. */
void web_engrave(Web *web);
void web_engraved_free(Web *web);
/* The passage as engraved; false where it isn't. */
bool web_notation(const Web *web, const spz_passage *passage, size_t index);

enum { WEB_ID = 48 }; /* a name of a place on the page */
/* 'bars 12-16' as a link to the passage in the list. */
void web_bars_link(const Web *web, size_t index);

/* web_index.c: the overview, row by row. */
void web_index_row(spz_report *report, const ShownMovement *shown);
void web_index_head(spz_report *report);
void web_index_end(spz_report *report);
#endif
