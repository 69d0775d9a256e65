#include "support/text/text_index.h"
#include "support/memory.h"
#include <stdint.h>
#include <string.h>

enum { FIRST_ROOM = 64 };

/* FNV-1a (Fowler, Noll, Vo), 64 bits. */
static uint64_t spread(const char *text)
{
    uint64_t sum = 14695981039346656037ull;
    for (; *text; text++)
        sum = (sum ^ (unsigned char)*text) * 1099511628211ull;
    return sum ^ sum >> 32;
}

static IndexSlot *slot_of(const Index *index, const char *text)
{
    size_t at = (size_t)spread(text) & (index->room - 1);
    while (index->slots[at].text && strcmp(index->slots[at].text, text) != 0)
        at = (at + 1) & (index->room - 1);
    return &index->slots[at];
}

static bool widen(Index *index)
{
    Index wider = {NULL, index->count, index->room ? index->room * 2 : FIRST_ROOM};
    wider.slots = memory_resize(NULL, wider.room, sizeof *wider.slots);
    if (!wider.slots)
        return false;
    memset(wider.slots, 0, wider.room * sizeof *wider.slots);
    for (size_t i = 0; i < index->room; i++)
        if (index->slots[i].text)
            *slot_of(&wider, index->slots[i].text) = index->slots[i];
    memory_free(index->slots);
    *index = wider;
    return true;
}

long long index_find(const Index *index, const char *text)
{
    const IndexSlot *slot = index->room ? slot_of(index, text) : NULL;
    return slot && slot->text ? (long long)slot->place : INDEX_NOWHERE;
}

bool index_add(Index *index, const char *text, size_t place)
{
    if (index->count * 2 >= index->room && !widen(index))
        return false;
    *slot_of(index, text) = (IndexSlot){text, place};
    index->count++;
    return true;
}

void index_free(Index *index)
{
    memory_free(index->slots);
    *index = (Index){0};
}
