/* doubt_words.h - what is doubtful in a score, as a sentence without its place. */
#ifndef WORDING_DOUBT_WORDS_H
#define WORDING_DOUBT_WORDS_H
#include "spezzato/check.h"
#include "support/buffer.h"

void say_doubt(Buffer *out, spz_language language, const spz_doubt *doubt);
/* '12', '12-15', as printed; nothing where it concerns no bar. */
void say_doubt_bars(Buffer *out, const spz_doubt *doubt);
/* 'C#5', 'cis''', 'do♯4': as musicians of that language write a sounding pitch. */
void say_pitch(Buffer *out, spz_language language, spz_pitch pitch);
#endif
