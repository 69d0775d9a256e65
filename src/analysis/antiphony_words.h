/* antiphony_words.h - the phrases from which a passage's reason is put together, for whoever else speaks of matches. */
#ifndef ANALYSIS_ANTIPHONY_WORDS_H
#define ANALYSIS_ANTIPHONY_WORDS_H
#include "analysis/antiphony.h"
#include "support/buffer.h"

/* 'half a beat', 'two beats', 'a bar', else crotchets. */
void lag_words(const Scene *scene, const Candidate *candidate, Buffer *out);
/* From the first tone of the call to that of the answer: 'at the same pitch', 'a third lower'. */
void interval_words(const Scene *scene, const Match *match, Buffer *out);
/* What was done to the call: 'upside down', 'in notes twice as long', both; nothing when it was left as it was. */
void variation_words(const Match *match, Buffer *out);
/* 'first violins'; the group's name where one of several of its section is meant: 'Va 2'. */
void side_words(const Scene *scene, const Side *side, Buffer *out);
#endif
