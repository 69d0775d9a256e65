/* told_head.h - where an entry is told to begin. A match begins with the notes that call and answer share; a player whose entry has a head of its own (an
 * upbeat, another first interval) is heard to begin with that. */
#ifndef ANALYSIS_ANTIPHONY_TOLD_HEAD_H
#define ANALYSIS_ANTIPHONY_TOLD_HEAD_H
#include "analysis/antiphony/telling/statements.h"

/* The first note of the entry of list->at[index]: that of the statement or, where no group of notes begins there (melody/boundaries.h), the stronger beginning
 * one or two notes before, the nearer of both, if it lies behind every earlier entry and behind what its player had before. The list is in order of time. */
const NoteEvent *told_head(const Texture *texture, const StatementList *list, size_t index);
#endif
