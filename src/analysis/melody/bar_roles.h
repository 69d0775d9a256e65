/* bar_roles.h - the roles of a bar, as one would tell them: each section's, with its note value. */
#ifndef ANALYSIS_MELODY_BAR_ROLES_H
#define ANALYSIS_MELODY_BAR_ROLES_H
#include "analysis/melody/roles.h"

/* Fills `out`, which has room for all voices: the string groups, then the winds that have the line in bar `bar` (index). Returns how many. */
size_t bar_roles_of(const Roles *roles, int bar, spz_voice_in_bar *out);
#endif
