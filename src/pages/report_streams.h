/* report_streams.h - which line of the score a note of a stream belongs to. */
#ifndef PAGES_REPORT_STREAMS_H
#define PAGES_REPORT_STREAMS_H
#include "sections/section_map.h"

/* The most exact of the lines that fit: by voice, by staff, by part; NULL when there is none. */
const spz_line *streams_line(const SectionMap *map, const Sound *sound);
#endif
