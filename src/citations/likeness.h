/* likeness.h - what the staves say of two entries: is the one an answer to the other, at which interval, and what else was heard. Entries are the upper
 * notes of the groups that lead them; what no stave shows (of winds) is taken for what the passage says. */
#ifndef CITATIONS_LIKENESS_H
#define CITATIONS_LIKENESS_H
#include "spezzato/passages.h"

enum { THEME_NOTES = 8 }; /* a theme has so many (common practice, no source) */

/* Notes that show that the one is the other again, as it is or as it was changed; 0: nothing does, or the caller plays the answer too. */
size_t notes_alike(const spz_sections *map, spz_kind kind, const spz_entry *call, const spz_entry *answer);
/* The interval at which most notes of the answer stand from those of the call; false where they go different ways. */
bool interval_between(const spz_sections *map, const spz_entry *call, const spz_entry *answer, spz_change *change);
/* Has another body of strings the call already, as far before it as its answer comes after it (`lag`), or up to twice as far? Then who begins depends on
 * where one begins to listen. */
bool was_heard_before(const spz_sections *map, const spz_entry *call, spz_ticks lag);
/* Has the caller under the answer what the answerer had under the call? */
bool places_are_swapped(const spz_sections *map, const spz_entry *call, const spz_entry *answer);
/* Does the group that leads both play the same in the later entry, from whatever step? */
bool same_again(const spz_sections *map, const spz_entry *first, const spz_entry *later);
#endif
