/* page_turns.h - where a player has to turn the page, as far as the file tells it. A score's pages say nothing of its parts': only the breaks of a file that
 * holds one body of players, or those of a part that differ from the other parts', are the part's own. Right-hand pages carry odd numbers (common practice):
 * behind a left-hand one nothing is turned. */
#ifndef ADVICE_PAGE_TURNS_H
#define ADVICE_PAGE_TURNS_H
#include "advice/parts_advice.h"

/* Whose pages the file tells the group. */
PagesOf pages_of(const SectionMap *map, size_t group);
/* Adds the turns within every division whose inside players alone read a line, where nobody rests long enough to turn. False without memory. */
bool page_turns_find(AdviceList *list, const SectionMap *map);
#endif
