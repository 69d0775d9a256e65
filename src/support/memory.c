#include "support/memory.h"
#include <stdint.h>
#include <stdlib.h>

static long starve_after; /* 0: never. Set by tests only. */

static int starved(void)
{
    if (starve_after == 0)
        return 0;
    if (starve_after > 1) {
        starve_after--;
        return 0;
    }
    return 1;
}

void memory_starve_after(long requests)
{
    starve_after = requests;
}

void *memory_get(size_t size)
{
    return starved() ? NULL : malloc(size ? size : 1);
}

void *memory_resize(void *block, size_t count, size_t size)
{
    if (size != 0 && count > SIZE_MAX / size)
        return NULL;
    if (starved())
        return NULL;
    size_t bytes = count * size;
    return realloc(block, bytes ? bytes : 1);
}

void *memory_zeroed(size_t count, size_t size)
{
    return starved() ? NULL : calloc(count && size ? count : 1, size ? size : 1); /* calloc looks after the overflow */
}

void memory_free(void *block)
{
    free(block);
}
