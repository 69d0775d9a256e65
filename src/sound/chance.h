/* chance.h - numbers that look random and are the same each time: SplitMix64 (Steele, Lea and Flood, OOPSLA 2014), constants from memory. */
#ifndef SOUND_CHANCE_H
#define SOUND_CHANCE_H
#include <stdint.h>

typedef struct Chance {
    uint64_t state;
} Chance;

static inline uint64_t chance_next(Chance *chance)
{
    uint64_t z = (chance->state += UINT64_C(0x9e3779b97f4a7c15));
    z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
    return z ^ (z >> 31);
}

static inline double chance_even(Chance *chance) /* 0..1 */
{
    return (double)(chance_next(chance) >> 11) / 9007199254740992.0;
}

/* About normal, mean 0, deviation 1, never beyond 3.47: the sum of four even ones. */
static inline double chance_normal(Chance *chance)
{
    double sum = -2;
    for (int i = 0; i < 4; i++)
        sum += chance_even(chance);
    return sum * 1.7320508075688772; /* the variance of an even one is 1/12 */
}
#endif
