/* entry_colours.h - calls and answers in colour among engraved notes: what ExcerptSource asks for. */
#ifndef PAGES_DRAWINGS_ENTRY_COLOURS_H
#define PAGES_DRAWINGS_ENTRY_COLOURS_H
#include "sections/section_map.h"
#include "spezzato/passages.h"

typedef struct EntryColours {
    const SectionMap *map;
    const spz_passage *passage;
    const char *lower; /* the colour of those who aren't violins; NULL: as the other notes */
} EntryColours;

/* The colour of a note by its part and its line in the file (one note a line, as score files are written): that of its section where it belongs to an
 * entry of the passage, else NULL. `context`: EntryColours. */
const char *entry_colour(const void *context, size_t part, uint32_t line);
#endif
