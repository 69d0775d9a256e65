/* shortages.h - divisions that ask for more players than the settings give the section. */
#ifndef ANALYSIS_DIVISION_SHORTAGES_H
#define ANALYSIS_DIVISION_SHORTAGES_H
#include "analysis/passages/findings.h"
#include "spezzato/allotment.h"

/* One doubt for each section, of the clear or striking division that asks for most: at the bar where it begins. */
void shortages_tell(const Findings *findings, const spz_settings *settings, const spz_sink *sink);
/* The same of a movement whose passages nobody has looked for: its divisions alone are found. SPZ_NO_MEMORY. */
spz_status shortages_find(const SectionMap *map, const spz_settings *settings, const spz_sink *sink);
#endif
