/* explain_words.h - what was compared in a bar, in a musician's words: four sentences, any of which may be empty; and what each section is to the whole. */
#ifndef WORDING_EXPLAIN_WORDS_H
#define WORDING_EXPLAIN_WORDS_H
#include "spezzato/explain.h"
#include "wording/passage_words.h"

/* 'Bars 29-32: first violins, answered a bar later by the second violins a third lower.' */
void explain_who(const Speaker *speaker, const spz_movement *movement, const spz_considered *item, Buffer *out);
/* How many notes, how alike, who makes way for whom. */
void explain_measures(const Speaker *speaker, const spz_movement *movement, const spz_considered *item, Buffer *out);
/* What sets it off from the clear passages of the movement. */
void explain_comparison(const Speaker *speaker, const spz_movement *movement, const spz_considered *item, Buffer *out);
/* 'Reported as exchange, ...', 'Left out: ...'. */
void explain_fate(const Speaker *speaker, const spz_movement *movement, const spz_considered *item, Buffer *out);
/* 'a figure in quavers', 'held notes, then the line': what a voice is in a bar. */
void explain_role(spz_language language, const spz_voice_in_bar *voice, Buffer *out);
#endif
