/* own_texts.h - styles and scripts of the pages: files beside the code that writes the page, made part of the program when it is built
 * (Makefile: FILE.css becomes text_FILE_css). */
#ifndef PAGES_OWN_TEXTS_H
#define PAGES_OWN_TEXTS_H
/* The conductor's page. Colour says who plays (first violins, second violins, greys for all others), filled calls, hollow answers; nothing is said by
 * colour alone (tests/web measures contrast). The script filters what is listed and drawn, opens the passage that a mark leads to, sorts the overview,
 * and shows a second seating and another seat of the audience; without it everything is listed. */
extern const char text_page_css[], text_page_js[];
extern const char text_own_ear_css[], text_own_ear_js[]; /* the conductor's choices, and the lines that say them */
extern const char text_player_css[], text_player_js[];   /* passages that were made audible: play, switch, seat */
/* What all pages and sheets have in common: colours by light, dark and paper, type; then what those with drawings and those for the music stand
 * have, each before the page's own (page_heads.h). */
extern const char text_base_css[], text_drawings_css[], text_sheet_css[];
extern const char text_season_css[];
extern const char text_concert_css[];
extern const char text_library_css[], text_library_js[]; /* sorts and filters the rows of the table; without it they stand in the order of the answer */
extern const char text_parts_css[], text_bowings_css[];
extern const char text_notes_css[], text_timeline_css[], text_notation_css[];
extern const char text_rehearsal_css[];
extern const char text_stage_css[];
extern const char text_laying_css[];
#endif
