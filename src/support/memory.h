/* memory.h - the one place that asks the system for memory: sizes are checked for overflow, and the tests can make any
 * request fail. */
#ifndef SUPPORT_MEMORY_H
#define SUPPORT_MEMORY_H
#include <stddef.h>

void *memory_get(size_t size);                              /* NULL when there is none; size 0 is a byte */
void *memory_resize(void *block, size_t count, size_t size); /* count * size bytes; NULL leaves `block` as it was */
void *memory_zeroed(size_t count, size_t size);             /* all bits 0; what is never touched costs nothing */
void memory_free(void *block);                              /* takes NULL */
/* How many requests of the calling thread have failed so far. Where the count has grown while a document was made, a piece may be missing in it. */
size_t memory_shortages(void);

/* Tests only: the n-th request from now fails, and all after it; 0 ends the famine. */
void memory_starve_after(long requests);
/* Tests only: the n-th request from now fails, and no other; 0 forgets it. Returns whether the one asked for before has failed. */
int memory_refuse_once(long request);
#endif
