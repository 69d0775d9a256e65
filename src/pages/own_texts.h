/* own_texts.h - styles and scripts of the pages: files beside the code that writes the page, made part of the program when it is built
 * (Makefile: FILE.css becomes text_FILE_css). */
#ifndef PAGES_OWN_TEXTS_H
#define PAGES_OWN_TEXTS_H
/* The conductor's page. Kinds of passages have a colour each (blue, red, purple, green, ochre, grey, as far apart as can be to every kind of eye;
 * tests/web measures it), a letter, and a form: nothing is said by colour alone. The script filters what is listed and drawn, and opens the
 * passage that a mark of the map leads to; without it everything is listed, and every mark still leads to its passage. */
extern const char text_page_css[], text_page_js[];
extern const char text_own_ear_css[], text_own_ear_js[]; /* the conductor's choices, and the lines that say them */
extern const char text_season_css[];
extern const char text_parts_css[];
extern const char text_notes_css[];
extern const char text_rehearsal_css[];
extern const char text_stage_css[];
#endif
