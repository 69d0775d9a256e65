/* antiphony_words.h - the phrases from which a passage's reason is put together, for whoever else speaks of matches. */
#ifndef ANALYSIS_ANTIPHONY_ANTIPHONY_WORDS_H
#define ANALYSIS_ANTIPHONY_ANTIPHONY_WORDS_H
#include "analysis/antiphony/antiphony.h"
#include "support/buffer.h"

/* 'half a beat', 'two beats', 'a bar', else crotchets. */
void lag_words(const Texture *texture, const Candidate *candidate, Buffer *out);
/* From the first note of the call to that of the answer, and what was done to the call on the way: 'at the same pitch', 'a third lower,
 * upside down', 'an octave higher, in notes twice as long'. */
void interval_words(const Texture *texture, const Match *match, Buffer *out);
/* 'first violins'; the group's name where one of several of its section is meant: 'Va 2'. */
void side_words(const Texture *texture, const Side *side, Buffer *out);
#endif
