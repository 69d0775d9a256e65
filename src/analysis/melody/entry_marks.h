/* entry_marks.h - whether the composer singles out an entry: a dynamic or words ('dolce', 'marcato') set at its first note in that
 * section alone. What is set in all parts at once belongs to the passage, not to the entry. */
#ifndef ANALYSIS_MELODY_ENTRY_MARKS_H
#define ANALYSIS_MELODY_ENTRY_MARKS_H
#include "sections/section_map.h"

/* Whether a dynamic or words stand in the group's parts within half a crotchet of `when`. Cost: the logarithm of a part's marks. */
bool entry_is_marked(const SectionMap *map, const Group *group, Ticks when);
/* 0 where no dynamic and no words stand in the group's parts within half a crotchet of `when` (marks are set a little before or behind
 * what they are meant for); else the share of the other string groups, those in `with` aside (bit i: group i), that have none there.
 * Cost: groups times the logarithm of a part's marks. */
double entry_singled_out(const SectionMap *map, size_t group, uint64_t with, Ticks when);
#endif
