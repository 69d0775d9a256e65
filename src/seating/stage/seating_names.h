/* seating_names.h - which seatings are meant by the words of a user: in settings, tables and on the command line alike. */
#ifndef SEATING_SEATING_NAMES_H
#define SEATING_SEATING_NAMES_H
#include "seating/stage/arrangement.h"

enum { SEATING_LANGUAGES = 3, SEATING_FORMS = 2 };
/* What documents call the four standard arrangements: in each language the whole name, and the short one of the pages. Made from src/wording/languages. */
extern const char *const seating_texts[SEATING_LANGUAGES][SEATING_FORMS][STANDARD_ARRANGEMENTS];

/* Bits of the `names` that `words` mean, whatever the capitals: the one that is called so; else all that have these words in this order, the last
 * perhaps cut short ('violins opposed', 'cellos outside', 'together, c'), in any of the languages. 0 for none, and for words that tell none from another. */
uint32_t seating_meant(const char *const *names, size_t count, const char *words);
/* The same for several, with '|' between; 0 where one of them means none. */
uint32_t seatings_meant(const char *const *names, size_t count, const char *list);
/* As above, of a list of arrangements; and refused as below, the one of them that means none. */
uint32_t arrangements_meant(const ArrangementList *list, const char *names);
void arrangements_refuse(const ArrangementList *list, const char *names, const spz_message *place, const spz_sink *sink);
/* The one that is meant; NULL, refused as below, where that is none or several. */
const Arrangement *arrangements_choose(const ArrangementList *list, const char *words, const spz_message *place, const spz_sink *sink);
/* One line: none is called so, and which there are; or which of them may be meant. SPZ_BAD_ARGUMENT. `place` says where the words stand; its text,
 * where there is one, comes first. */
spz_status seating_refuse(const char *const *names, size_t count, const char *words, const spz_message *place, const spz_sink *sink);
#endif
