/* score_lines.h - what the reader made of a score, as lines that a test can be read by. Each result lives until the next call. */
#ifndef TESTS_SCORE_LINES_H
#define TESTS_SCORE_LINES_H
#include "model/movement.h"

/* What a part sounds, tied notes joined: 'C4@0+1 Eb4@1+1/2' (pitch, onset, duration, both in crotchets); grace notes 'D4@1+0'. */
const char *sounds_text(const Movement *movement, size_t part);
const char *played_text(const Movement *movement, size_t part); /* repeats unfolded */

/* Bars in playing order by their numbers: '1 2 1 3'. */
const char *order_text(const Movement *movement);

/* Lengths of all bars in crotchets: '1 4 4 3'. */
const char *lengths_text(const Movement *movement);
#endif
