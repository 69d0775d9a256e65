/* conversations.h - an exchange is rarely a single remark. Where two have clearly answered each other a few bars before, or do so soon after, a
 * listener expects it and takes what is doubtful for an answer too. */
#ifndef ANALYSIS_ANTIPHONY_CHAINING_CONVERSATIONS_H
#define ANALYSIS_ANTIPHONY_CHAINING_CONVERSATIONS_H
#include "analysis/antiphony/chaining/chains.h"

/* Weighs the candidates anew by what the same two have beside them. Cost: as the matches, times the clear ones of a few bars.
 * SPZ_OK or SPZ_NO_MEMORY. */
spz_status conversations_weigh(const Texture *texture, CandidateList *candidates);
#endif
