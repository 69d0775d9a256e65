/* groups.h - which groups of players there are; group_streams.c fills in what each plays. */
#ifndef SECTIONS_GROUPS_H
#define SECTIONS_GROUPS_H
#include "sections/section_map.h"

/* The group that reads `line` as its first or second section. */
spz_group group_of_line(const spz_line *line, spz_section section);

/* Index of the group; the count of groups where there is none such. */
size_t group_find(const SectionMap *map, const spz_group *about);

/* Makes map->groups with names and lines, in score order, without sounds. */
spz_status groups_list(SectionMap *map);
#endif
