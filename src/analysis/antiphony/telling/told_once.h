/* told_once.h - a passage whose entries all stand in a longer one is told there and nowhere else. */
#ifndef ANALYSIS_ANTIPHONY_TELLING_TOLD_ONCE_H
#define ANALYSIS_ANTIPHONY_TELLING_TOLD_ONCE_H
#include "analysis/antiphony/chaining/chains.h"

/* Takes such chains out; the longer one is then as clear as they were. SPZ_NO_MEMORY. */
spz_status chains_tell_once(const Texture *texture, const CandidateList *candidates, Arena *arena, ChainList *chains);
#endif
