/* later_links.h - who began: a gesture that wanders through sections is one chain of answers, and a listener names it by the first call and
 * its answer. A match further down the chain, whose call is itself the answer to another section's
 * call, or is answered sooner by a third section, counts for less. */
#ifndef ANALYSIS_ANTIPHONY_CHAINING_LATER_LINKS_H
#define ANALYSIS_ANTIPHONY_CHAINING_LATER_LINKS_H
#include "analysis/antiphony/chaining/chains.h"

/* Sets `later_link` of the candidates and lowers the chance of those. Cost: as the matches, times those that sound in a bar.
 * SPZ_OK or SPZ_NO_MEMORY. */
spz_status links_weigh(const Texture *texture, CandidateList *candidates);
#endif
