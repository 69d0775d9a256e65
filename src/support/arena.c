#include "support/arena.h"
#include "support/memory.h"
#include "support/numbers.h"
#include <stdalign.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

struct ArenaBlock {
    ArenaBlock *older;
    size_t used, size;
    alignas(max_align_t) unsigned char bytes[];
};

static const size_t usual_block = 64 * 1024;

void arena_init(Arena *arena)
{
    arena->newest = NULL;
    arena->taken = 0;
}

void arena_release(Arena *arena)
{
    while (arena->newest) {
        ArenaBlock *older = arena->newest->older;
        memory_free(arena->newest);
        arena->newest = older;
    }
    arena->taken = 0;
}

static ArenaBlock *add_block(Arena *arena, size_t bytes)
{
    size_t size = bytes > usual_block ? bytes : usual_block;
    if (size > SIZE_MAX - sizeof(ArenaBlock))
        return NULL;
    ArenaBlock *block = memory_get(sizeof *block + size);
    if (!block)
        return NULL;
    block->used = 0;
    block->size = size;
    /* A large request gets a block of its own behind the newest, so that the rest of the newest is not wasted. */
    if (bytes > usual_block && arena->newest) {
        block->older = arena->newest->older;
        arena->newest->older = block;
    } else {
        block->older = arena->newest;
        arena->newest = block;
    }
    return block;
}

void *arena_take(Arena *arena, size_t count, size_t size)
{
    if (size != 0 && count > (SIZE_MAX / 2) / size)
        return NULL;
    size_t align = alignof(max_align_t);
    size_t bytes = (count * size + align - 1) / align * align;
    ArenaBlock *block = arena->newest;
    if (!block || block->size - block->used < bytes)
        block = add_block(arena, bytes);
    if (!block)
        return NULL;
    void *place = block->bytes + block->used;
    block->used += bytes;
    arena->taken += bytes;
    return memset(place, 0, bytes);
}

char *arena_text(Arena *arena, const char *text, size_t length)
{
    char *copy = arena_take(arena, length + 1, 1);
    if (copy && length)
        memcpy(copy, text, length);
    return copy;
}

char *arena_string(Arena *arena, const char *text)
{
    return text ? arena_text(arena, text, strlen(text)) : NULL;
}

char *arena_format(Arena *arena, const char *format, ...)
{
    va_list list;
    va_start(list, format);
    int length = number_format(NULL, 0, format, list);
    va_end(list);
    char *text = length < 0 ? NULL : arena_take(arena, (size_t)length + 1, 1);
    if (text) {
        va_start(list, format);
        number_format(text, (size_t)length + 1, format, list);
        va_end(list);
    }
    return text;
}
