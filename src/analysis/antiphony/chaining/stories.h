/* stories.h - which pairs' passages tell the same story, and who tells it.
 *
 * A gesture that wanders through three sections is found between each two of them, and a listener hears one passage. Where the bars of a
 * weaker pair's passage are told by a stronger one, the stronger takes it in: it becomes as clear as the clearest of the two where they are
 * the same statements, and where one hands the gesture on to the other it lasts as long as both. Two dialogues at once, which share neither
 * their bars nor their statements, stay apart. */
#ifndef ANALYSIS_ANTIPHONY_CHAINING_STORIES_H
#define ANALYSIS_ANTIPHONY_CHAINING_STORIES_H
#include "analysis/antiphony/chaining/chains.h"

/* Joins the maker's chains, in place. `candidates`: all matches, for what the violins say within a story that others tell. */
spz_status stories_join(const ChainMaker *maker, const CandidateList *candidates);
#endif
