/* array.h - typed growing arrays: ARRAY(Type) declares one, zeroed is empty. The owner calls array_free. */
#ifndef SUPPORT_ARRAY_H
#define SUPPORT_ARRAY_H
#include "support/memory.h"
#include <stdbool.h>
#include <stddef.h>

#define ARRAY(Type) struct { Type *at; size_t count, capacity; }

/* Room for one more; false when out of memory (the array is then as it was). */
#define array_reserve(array) \
    ((array)->count < (array)->capacity || array_grow((void **)&(array)->at, &(array)->capacity, sizeof *(array)->at))
#define array_push(array, item) (array_reserve(array) ? ((array)->at[(array)->count++] = (item), true) : false)
#define array_free(array) (memory_free((array)->at), (array)->at = NULL, (array)->count = (array)->capacity = 0)

static inline bool array_grow(void **at, size_t *capacity, size_t size)
{
    size_t larger = *capacity ? *capacity * 2 : 16;
    void *block = larger > *capacity ? memory_resize(*at, larger, size) : NULL;
    if (!block)
        return false;
    *at = block;
    *capacity = larger;
    return true;
}
#endif
