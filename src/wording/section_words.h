/* section_words.h - how a line of the score was understood. */
#ifndef WORDING_SECTION_WORDS_H
#define WORDING_SECTION_WORDS_H
#include "spezzato/language.h"
#include "spezzato/sections.h"
#include "support/buffer.h"

/* 'its name says 'Violini', and the plural without a number means both violin sections'. */
void say_clues(Buffer *out, spz_language language, const spz_line *line);
const char *clue_name(spz_clue_kind kind); /* as in data: "abbreviation-too" */
const char *words_family(spz_language language, spz_family family); /* 'strings', 'woodwind', 'not known' */
/* 'Vn I', 'Vc and Db', '-'. */
void say_line_section(Buffer *out, spz_language language, const spz_line *line);
/* 'staff 2, voice 1': what of its part it is; nothing for the whole. */
void say_line_staff(Buffer *out, spz_language language, const spz_line *line);
/* 'orchestra 2, part 1, divided, line 2': what it is within its section. */
void say_line_place(Buffer *out, spz_language language, const spz_line *line);
/* In a list of movements, for one whose seating can't be judged: 'nothing to decide', or, where parts are there that may be the violins,
 * 'violins not recognised'. */
const char *words_undecided(spz_language language, const spz_sections *sections);
enum { SOURCE_TEXT = 512 };
/* The composer as one says the name: 'Brelisk, Ottavan' in the file is Ottavan Brelisk. Returns `text`. */
char *words_composer(const spz_movement *movement, char text[SOURCE_TEXT]);
/* 'Composer. file.mxl', or the file alone: what tells apart two movements of one name. Returns `text`. */
char *words_source(const spz_movement *movement, const char *file, char text[SOURCE_TEXT]);
#endif
