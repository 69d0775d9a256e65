/* sorting.c - a natural merge sort: runs that are in order already are found and merged, which keeps equal elements in their order. */
#include "reader/sorting.h"
#include "support/memory.h"
#include <string.h>

static bool note_before(const Note *a, const Note *b)
{
    if (a->onset != b->onset)
        return a->onset < b->onset;
    if (a->bar != b->bar) /* an after-grace at the end of a bar goes before what the next bar begins with */
        return a->bar < b->bar;
    if (a->staff != b->staff)
        return a->staff < b->staff;
    return a->voice < b->voice;
}

static bool mark_before(const Direction *a, const Direction *b)
{
    return a->onset < b->onset;
}

/* One function for both types: SORT(name, Type, before) makes `static bool name(Type *, size_t)`. */
#define SORT(name, Type, before)                                                                                                  \
    static size_t name##_run(const Type *at, size_t from, size_t count)                                                           \
    {                                                                                                                             \
        size_t end = from + 1;                                                                                                    \
        while (end < count && !before(&at[end], &at[end - 1]))                                                                    \
            end++;                                                                                                                \
        return end < count ? end : count;                                                                                         \
    }                                                                                                                             \
    static void name##_merge(Type *at, Type *spare, size_t from, size_t middle, size_t end)                                       \
    {                                                                                                                             \
        size_t left = 0, lefts = middle - from, right = middle;                                                                   \
        memcpy(spare, at + from, lefts * sizeof *at);                                                                             \
        for (size_t to = from; left < lefts; to++)                                                                                \
            at[to] = right < end && before(&at[right], &spare[left]) ? at[right++] : spare[left++];                               \
    }                                                                                                                             \
    static bool name(Type *at, size_t count)                                                                                      \
    {                                                                                                                             \
        if (count < 2 || name##_run(at, 0, count) == count)                                                                       \
            return true;                                                                                                          \
        Type *spare = memory_resize(NULL, count, sizeof *at);                                                                     \
        if (!spare)                                                                                                               \
            return false;                                                                                                         \
        for (bool merged = true; merged;) {                                                                                       \
            merged = false;                                                                                                       \
            for (size_t from = 0; from < count;) {                                                                                \
                size_t middle = name##_run(at, from, count);                                                                      \
                size_t end = middle < count ? name##_run(at, middle, count) : count;                                              \
                if (middle < count) {                                                                                             \
                    name##_merge(at, spare, from, middle, end);                                                                   \
                    merged = true;                                                                                                \
                }                                                                                                                 \
                from = end;                                                                                                       \
            }                                                                                                                     \
        }                                                                                                                         \
        memory_free(spare);                                                                                                       \
        return true;                                                                                                              \
    }

SORT(merge_notes, Note, note_before)
SORT(merge_marks, Direction, mark_before)

bool sort_notes(Note *notes, size_t count)
{
    return merge_notes(notes, count);
}

bool sort_marks(Direction *marks, size_t count)
{
    return merge_marks(marks, count);
}
