/* beneath_line.h - what is answered beneath a line that others have: a figure thrown to and fro under a tune is heard, and catches no ear. */
#ifndef ANALYSIS_ANTIPHONY_TELLING_BENEATH_LINE_H
#define ANALYSIS_ANTIPHONY_TELLING_BENEATH_LINE_H
#include "analysis/antiphony/telling/chain_facts.h"

/* Chains that would be told as striking, though their players hardly have the line in their statements, nor between first and last note, are told as clear and
 * marked `accompanies`. For a texture of string sections alone. Cost: the beats of these chains and a few beside, times the voices. SPZ_NO_MEMORY. */
spz_status chains_weigh_lines(const Texture *texture, const CandidateList *candidates, ChainList *chains);
#endif
