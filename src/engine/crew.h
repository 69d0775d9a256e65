/* crew.h - many tasks, several at a time: each by any thread, what is done told one after the other; the calling thread watches. */
#ifndef ENGINE_CREW_H
#define ENGINE_CREW_H
#include "spezzato/status.h"
#include <stdbool.h>
#include <stddef.h>

enum { CREW_MOST = 64 };

typedef struct Crew {
    size_t count; /* tasks, 0 .. */
    int hands;    /* at work at a time */
    spz_status (*work)(void *context, size_t task); /* by any thread, several at once; in the order of the tasks */
    void (*done)(void *context, size_t task);       /* after a task that went well; one at a time */
    void (*look)(void *context);                    /* now and then, by the calling thread, never together with `done`; NULL */
    bool (*stop)(void *context);                    /* asked likewise: whether to leave the rest; NULL */
    void *context;
} Crew;

/* The first failure, after which the rest is left; SPZ_INTERRUPTED where some were left because `stop` said so. */
spz_status crew_run(const Crew *crew);
#endif
