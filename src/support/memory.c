#include "support/memory.h"
#include <stdbool.h>
#include <stdint.h>
#include <stdlib.h>

static long starve_after; /* 0: never. Set by tests only. */

static _Thread_local size_t shortages;
static long refuse_once;  /* 0: none, or it has failed */

static int starved(void)
{
    if (refuse_once > 0 && --refuse_once == 0)
        return 1;
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

int memory_refuse_once(long request)
{
    int failed = refuse_once == 0;
    refuse_once = request;
    return failed;
}

size_t memory_shortages(void)
{
    return shortages;
}

static void *counted(void *block)
{
    shortages += block == NULL;
    return block;
}

void *memory_get(size_t size)
{
    return counted(starved() ? NULL : malloc(size ? size : 1));
}

void *memory_resize(void *block, size_t count, size_t size)
{
    bool fits = size == 0 || count <= SIZE_MAX / size;
    size_t bytes = fits ? count * size : 0;
    return counted(!fits || starved() ? NULL : realloc(block, bytes ? bytes : 1));
}

void *memory_zeroed(size_t count, size_t size)
{
    return counted(starved() ? NULL : calloc(count && size ? count : 1, size ? size : 1)); /* calloc looks after the overflow */
}

void memory_free(void *block)
{
    free(block);
}
