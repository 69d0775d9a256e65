/* mark_wishes.h - the librarian's advice as wishes for directions: in which part, staff and voice, with which bracket. */
#ifndef EDITING_MARK_WISHES_H
#define EDITING_MARK_WISHES_H
#include "editing/mark_insert.h"
#include "editing/parts_advice.h"

typedef ARRAY(Wish) WishList;

/* `text` is the score, from which the numbers of its own brackets are known. */
spz_status wishes_find(const SectionMap *map, const AdviceList *advice, const Buffer *text, WishList *wishes);
#endif
