/* second_thoughts.h - what a musician holds against a match whose call and answer are alike, or for it: there or not there. */
#ifndef ANALYSIS_ANTIPHONY_CHAINING_SECOND_THOUGHTS_H
#define ANALYSIS_ANTIPHONY_CHAINING_SECOND_THOUGHTS_H
#include "analysis/antiphony/chaining/evidence.h"

enum { second_thoughts_best = 1 << SPZ_THOUGHT_BARE_RHYTHM }; /* those that speak for a match, all together */

/* Those that hold of a match, as bits; its features and who plays along are known. */
unsigned second_thoughts(const Texture *texture, const Match *match, const Evidence *evidence);
/* What they add to the log odds of being marked by a reader. */
double second_thoughts_weight(unsigned thoughts);
#endif
