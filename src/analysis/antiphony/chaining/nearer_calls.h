/* nearer_calls.h - each answer is the answer to one call. What a section plays is often related to several calls before it; a listener hears
 * it as the answer to the one that is plainly its call and lies nearer. A match that explains the same notes by a call further back, and less
 * plainly, counts for less, the more so the plainer the other one is. */
#ifndef ANALYSIS_ANTIPHONY_CHAINING_NEARER_CALLS_H
#define ANALYSIS_ANTIPHONY_CHAINING_NEARER_CALLS_H
#include "analysis/antiphony/chaining/chains.h"
#include "analysis/melody/bar_lists.h"

/* Notes down, in each bar in which it sounds, the answer of every candidate of this chance or more of whose notes this share agree. False when
 * out of memory. */
bool note_answers(const Movement *movement, const CandidateList *candidates, double chance, double alike, BarNotes *answers);

/* Sets `nearer` and `alone` of the candidates, and lowers the chance of those that have a nearer call. Cost: as the matches, times those that
 * answer in a bar. SPZ_OK or SPZ_NO_MEMORY. */
spz_status nearer_calls_weigh(const Texture *texture, CandidateList *candidates);
#endif
