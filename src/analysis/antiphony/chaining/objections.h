/* objections.h - features that are there or not: what a musician holds against a match whose call and answer are alike. */
#ifndef ANALYSIS_ANTIPHONY_CHAINING_OBJECTIONS_H
#define ANALYSIS_ANTIPHONY_CHAINING_OBJECTIONS_H
#include "analysis/antiphony/chaining/evidence.h"

/* Sets F_PLAYED_TOO and those behind it to 1 or 0; every feature before them is known. */
void objections(const Texture *texture, const Match *match, Evidence *evidence);
#endif
