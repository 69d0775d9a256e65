/* passage_words.h - passages in the words of a rehearsal, in the reader's language. What fits in a line is written into `text` and
 * returned; what grows goes to a buffer. */
#ifndef WORDING_PASSAGE_WORDS_H
#define WORDING_PASSAGE_WORDS_H
#include "spezzato/reading.h"
#include "wording/phrase.h"

enum { WORDS_TEXT = 160, BEAT_TEXT = 72 };

/* Whose players are spoken of, and in which language. */
typedef struct Speaker {
    spz_language language;
    const spz_sections *sections;
} Speaker;

/* '66-71', '66'; a bar without a printed number is named by its place: '(12. in the file)'. */
char *words_bars(spz_language language, const spz_passage *passage, char text[WORDS_TEXT]);
char *words_bar(spz_language language, const char *number, size_t index, char text[WORDS_TEXT]);
/* 'B', 'B+3', "". */
char *words_letter(const spz_passage *passage, char text[WORDS_TEXT]);
/* 'exchange', 'div. a 3', 'coupling': what a musician calls it. */
char *words_kind(spz_language language, const spz_passage *passage, char text[WORDS_TEXT]);
const char *words_weight(spz_language language, double strength); /* 'marginal', 'clear', 'striking' */
/* The same of a passage, and whether the conductor says so: 'taken out', 'striking, by the conductor'. */
char *words_standing(spz_language language, const spz_passage *passage, char text[WORDS_TEXT]);
/* What she says of it and why, as a clause behind what `out` holds; nothing where she says nothing. */
void words_ruling(spz_language language, const spz_passage *passage, Buffer *out);
/* A body of players in short: 'Vn I', 'Va 2', 'Violins (orchestra 2)'. In English these are the names of data. */
char *words_body(spz_language language, const spz_group *body, char text[WORDS_TEXT]);
/* The body of players on a side, in short: 'Vn I', 'Violins (orchestra 2)'; "" for none. */
char *words_side(const Speaker *speaker, const spz_side *side, char text[WORDS_TEXT]);
/* A set of players in short: 'Va + Vc'. */
char *words_players(const Speaker *speaker, spz_players players, char text[WORDS_TEXT]);
/* 'Vn I, answered by Vn II', 'Vn I with Vn II', 'Vn I'. */
char *words_who(const Speaker *speaker, const spz_passage *passage, char text[WORDS_TEXT]);
/* 'Vn II - Va - Vn I + Vc': all links in order of entry; nothing where there are fewer than three. */
void words_links(const Speaker *speaker, const spz_passage *passage, Buffer *out);
/* One sentence, without and with the links. */
void words_told(const Speaker *speaker, const spz_passage *passage, Buffer *out);
void words_reason(const Speaker *speaker, const spz_passage *passage, Buffer *out);
/* '2 1/2' for 5/2: a beat is where a hand falls. */
char *words_beat(spz_fraction beat, char text[BEAT_TEXT]);
/* 'half a beat', 'two bars': a length of time. */
void words_length(spz_language language, spz_length length, Buffer *out);
/* 'a third lower, upside down'. */
void words_change(spz_language language, spz_change change, Buffer *out);
#endif
