/* notation_parts.h - which parts of the file are to be engraved to show what some players have. */
#ifndef PAGES_DRAWINGS_NOTATION_PARTS_H
#define PAGES_DRAWINGS_NOTATION_PARTS_H
#include "editing/excerpt.h"
#include "sections/section_map.h"
#include "spezzato/passages.h"

/* Parts of the players' groups in score order, each once, at most `most`; with the names of the groups. Returns how many. */
size_t notation_parts(const SectionMap *map, const Movement *movement, spz_players players, ExcerptPart *parts, size_t most);
#endif
