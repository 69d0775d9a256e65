/* desk_words.h - who reads which line of a division, desk by desk. */
#ifndef WORDING_DESK_WORDS_H
#define WORDING_DESK_WORDS_H
#include "spezzato/allotment.h"
#include "wording/phrase.h"

/* The desks of one line: 'desks 1, 4, outside player of desk 7'; nothing where nobody of the section plays it. */
void words_line_desks(spz_language language, const spz_allotment *allotment, spz_section section, int line, Buffer *out);
/* 'line 1 (top): desks 1, 4, 7; line 2: desks 2, 5, 8; ...' for one section. */
void words_lines_desks(spz_language language, const spz_allotment *allotment, spz_section section, Buffer *out);
/* Both for a divided passage with the players of the settings, and how evenly the lines are manned. Nothing for other passages and where
 * the players are too few. */
void words_division_desks(spz_language language, const spz_passage *passage, const spz_settings *settings, Buffer *out);
#endif
