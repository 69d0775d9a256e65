/* text_index.h - finds the place of a text in a list in the same time however long the list is. Texts are views. */
#ifndef SUPPORT_TEXT_INDEX_H
#define SUPPORT_TEXT_INDEX_H
#include <stdbool.h>
#include <stddef.h>

typedef struct IndexSlot {
    const char *text; /* NULL: free */
    size_t place;
} IndexSlot;

typedef struct Index { /* zeroed is empty */
    IndexSlot *slots;
    size_t count, room; /* room is a power of two */
} Index;

enum { INDEX_NOWHERE = -1 };
long long index_find(const Index *index, const char *text); /* its place, or INDEX_NOWHERE */
bool index_add(Index *index, const char *text, size_t place); /* a text that is not in it; false: no memory */
void index_free(Index *index);
#endif
