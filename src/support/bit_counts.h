/* bit_counts.h - how often each of 64 things was counted, for all of them at once: a bit each, in as many words as the largest count has binary places.
 * Words of zeros cost nothing, so start with `used` 0. */
#ifndef SUPPORT_BIT_COUNTS_H
#define SUPPORT_BIT_COUNTS_H
#include <stddef.h>
#include <stdint.h>

enum { BIT_COUNTS_PLACES = 32 };
typedef struct BitCounts {
    int used;
    uint64_t places[BIT_COUNTS_PLACES]; /* bit i of place p: bit p of the count of thing i */
} BitCounts;

static inline void bit_counts_add(BitCounts *counts, uint64_t things)
{
    for (int p = 0; things && p < BIT_COUNTS_PLACES; p++) {
        if (p == counts->used)
            counts->places[counts->used++] = 0;
        uint64_t carried = counts->places[p] & things;
        counts->places[p] ^= things;
        things = carried;
    }
}

/* The things counted more often than `times`. */
static inline uint64_t bit_counts_above(const BitCounts *counts, size_t times)
{
    uint64_t above = 0, level = UINT64_MAX;
    if (times >> counts->used)
        return 0;
    for (int p = counts->used; p-- > 0;)
        if (times >> p & 1)
            level &= counts->places[p];
        else {
            above |= level & counts->places[p];
            level &= ~counts->places[p];
        }
    return above;
}
#endif
