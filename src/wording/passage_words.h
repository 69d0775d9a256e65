/* passage_words.h - the phrases that all reports share. Each writes into `text` and returns it. */
#ifndef WORDING_PASSAGE_WORDS_H
#define WORDING_PASSAGE_WORDS_H
#include "spezzato/reading.h"
#include "support/buffer.h"

enum { WORDS_TEXT = 160, BEAT_TEXT = 48 };

/* '66-71', '66'; a bar without a printed number is named by its place: '(12th in the file)'. */
char *words_bars(const spz_passage *passage, char text[WORDS_TEXT]);
/* 'exchange', 'div. a 3', 'coupling': what a musician calls it. */
char *words_kind(const spz_passage *passage, char text[WORDS_TEXT]);
/* 'Vn I, answered by Vn II', 'Vn I with Vn II', 'Vn I'. */
char *words_who(const spz_passage *passage, const spz_sections *sections, char text[WORDS_TEXT]);
/* Its sentence, and all sections in order of entry where there are more than two. */
void words_reason(const spz_passage *passage, Buffer *out);
/* Name of the body of players on one side of the passage (0 caller, 1 responder); "" for none. */
const char *words_side(const spz_passage *passage, const spz_sections *sections, int side);
/* '2 1/2' for '5/2': a beat is where a hand falls. */
char *words_beat(const char *beat, char text[BEAT_TEXT]);
/* 'Firm', and what it means to whoever decides. */
const char *words_confidence(spz_confidence confidence);
const char *words_confidence_meaning(spz_confidence confidence);
/* First letter in capitals (ASCII), cut to fit. */
char *words_capital(const char *from, char *text, size_t size);
#endif
