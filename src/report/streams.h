/* streams.h - which line of the score a note of a stream belongs to. */
#ifndef REPORT_STREAMS_H
#define REPORT_STREAMS_H
#include "sections/section_map.h"

/* The most exact of the lines that fit: by voice, by staff, by part; NULL when there is none. */
const spz_line *streams_line(const SectionMap *map, const Sound *sound);
#endif
