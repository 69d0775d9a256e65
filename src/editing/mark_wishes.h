/* mark_wishes.h - the librarian's advice as wishes for directions: in which part, staff and voice, with which bracket. */
#ifndef EDITING_MARK_WISHES_H
#define EDITING_MARK_WISHES_H
#include "editing/mark_insert.h"
#include "wording/papers/advice_words.h"

typedef ARRAY(Wish) WishList;

/* The wishes and their texts. */
typedef struct Wishes {
    Arena arena;
    WishList list;
} Wishes;

/* `text` is the score, from which the numbers of its own brackets are known. Always to be followed by wishes_free. */
spz_status wishes_find(const Speaker *speaker, const AdviceList *advice, const Buffer *text, Wishes *wishes);
void wishes_free(Wishes *wishes);
#endif
