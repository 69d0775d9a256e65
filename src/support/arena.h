/* arena.h - memory of one lifetime, released as a whole. Nothing taken from an arena is freed by itself. */
#ifndef SUPPORT_ARENA_H
#define SUPPORT_ARENA_H
#include <stddef.h>

typedef struct ArenaBlock ArenaBlock;
typedef struct Arena {
    ArenaBlock *newest;
    size_t taken; /* bytes handed out, for limits and for the tests */
} Arena;

void arena_init(Arena *arena);
void arena_release(Arena *arena);                               /* all of it; the arena can be used again */
void *arena_take(Arena *arena, size_t count, size_t size);      /* zeroed, aligned for any type; NULL when out of memory */
char *arena_text(Arena *arena, const char *text, size_t length); /* a copy, ended with a zero byte */
char *arena_string(Arena *arena, const char *text);             /* the same for a whole string; NULL gives NULL */
char *arena_format(Arena *arena, const char *format, ...) __attribute__((format(printf, 2, 3)));
#endif
