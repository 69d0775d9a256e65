/* contrast.h - the same tune once shared out and once whole: a line that passes between sections in a passage and stands elsewhere in one section. */
#ifndef CITATIONS_CONTRAST_H
#define CITATIONS_CONTRAST_H
#include "sections/section_map.h"
#include "spezzato/passages.h"

typedef struct Contrast {
    size_t group;       /* that has the tune whole */
    size_t first, last; /* bars, indices */
    int steps;          /* of the staff, from the shared tune to the whole one */
} Contrast;

/* The first place where one section has the passage's line by itself, all of it or its first four or two entries: the same steps of the staff,
 * from any note, in the same rhythm. False where there is none, or where the line is too short to be known again (eight notes, common practice). SPZ_COUPLING and divisions have no such line. */
bool contrast_of(const SectionMap *map, const spz_passage *passage, Contrast *out);
#endif
