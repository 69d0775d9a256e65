/* A qsort that puts elements which compare as equal in the order opposite to the one they came in; to be loaded before a program (LD_PRELOAD). What comes out of the program
 * must not hang on that order: the C standard leaves it open (C11 7.22.5.2), and C libraries differ. */
#include <stdlib.h>
#include <string.h>

void qsort(void *base, size_t count, size_t size, int (*compare)(const void *, const void *))
{
    char *at = base, held[4096];
    if (size > sizeof held)
        abort();
    for (size_t i = 1; i < count; i++) {
        size_t low = 0, high = i; /* before the first that is not smaller */
        memcpy(held, at + i * size, size);
        while (low < high) {
            size_t middle = low + (high - low) / 2;
            if (compare(at + middle * size, held) < 0)
                low = middle + 1;
            else
                high = middle;
        }
        memmove(at + (low + 1) * size, at + low * size, (i - low) * size);
        memcpy(at + low * size, held, size);
    }
}
