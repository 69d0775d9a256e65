/* laying_words.h - what stands on the laying table and on a drawing of everything on the stage. */
#ifndef WORDING_LAYING_WORDS_H
#define WORDING_LAYING_WORDS_H
#include "spezzato/laying.h"
#include "wording/phrase.h"

const char *words_instrument_mark(spz_language language, spz_instrument instrument); /* 'Fl' */
const char *words_soloist_mark(spz_language language);
/* 'first violins', 'flutes', 'podium': who or what a place is for. */
const char *words_laid(spz_language language, const spz_laid *laid);
/* '50 chairs ...' in one sentence. */
void say_laid_sums(Buffer *out, spz_language language, const spz_laying *laying);
/* 'Clear ways at the narrowest: Vn I - Vn II 0.38 m, ...' */
void say_laid_ways(Buffer *out, spz_language language, const spz_laying *laying);
void say_riser_height(Buffer *out, spz_language language, const spz_riser *riser); /* '+0.20 m' */
/* '0.20 m high: front edge 4.10 m from the podium, 1.40 m deep, 12.30 m along the edge' */
void say_riser(Buffer *out, spz_language language, const spz_riser *riser);
#endif
