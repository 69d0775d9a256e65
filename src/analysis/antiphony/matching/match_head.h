/* match_head.h - where the gesture that a match shares begins: the search starts from three notes of one rhythm and direction in which the word passes, and so
 * cuts off a first note under which the other still holds or ends its own, or which goes its own way. */
#ifndef ANALYSIS_ANTIPHONY_MATCH_HEAD_H
#define ANALYSIS_ANTIPHONY_MATCH_HEAD_H
#include "analysis/antiphony/matching/match.h"

/* Gives the match the notes at its beginning that call and answer have too and that belong to the gesture; its counts stay those of what was weighed. */
void match_take_head(const Movement *movement, const Melody *melodies, Match *match);
#endif
