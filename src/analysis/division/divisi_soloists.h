/* divisi_soloists.h - soloists out of a section: where the words name two or more of them ('2 Soli'), the solo staff and the section's
 * own staff are lines of one section, divided between its players. A single soloist before the section is no division. */
#ifndef ANALYSIS_DIVISION_DIVISI_SOLOISTS_H
#define ANALYSIS_DIVISION_DIVISI_SOLOISTS_H
#include "analysis/division/divisi_writing.h"

/* Rewrites the bars of `group` in which that is so; touches nothing where no words name two soloists. */
spz_status divisi_with_soloists(const SectionMap *map, const Group *group, BarWriting *bars);
#endif
