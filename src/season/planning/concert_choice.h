/* concert_choice.h - the seatings of one concert, chosen exactly: least evidence given up plus price of the changes, then fewest changes, then
 * fewest movements out of the house's usual seating, then the arrangements that stand first in the list.
 *
 * Points are whole hundredths, so that equal plans are equal and ties are real ones. The order of comparison is a sum over steps in
 * each of its parts; dynamic programming over (step, seating) is therefore exact (Bellman, Dynamic Programming, 1957). */
#ifndef SEASON_PLANNING_CONCERT_CHOICE_H
#define SEASON_PLANNING_CONCERT_CHOICE_H
#include "season/results/hundredths.h"
#include <stdbool.h>
#include <stdint.h>

#define CONCERT_BANNED ((Hundredths)1 << 50) /* a change that the house doesn't allow */

typedef struct ConcertStep { /* one movement, or a work about whose movements nothing is known */
    spz_gap gap;                       /* what lies before it */
    Hundredths loss[CONCERT_SEATINGS]; /* evidence given up in each seating, 0 or more */
    uint32_t open;                     /* bit a: seating a may be taken here */
} ConcertStep;

typedef struct ConcertTask {
    const ConcertStep *steps;
    size_t count;
    int seatings;
    int usual; /* the stage before the concert; -1: it is empty, any seating can be set up for nothing */
    Hundredths price[SPZ_GAP_COUNT][CONCERT_SEATINGS][CONCERT_SEATINGS]; /* of a change from, to; CONCERT_BANNED */
} ConcertTask;

typedef struct ConcertChoice {
    Hundredths loss, price;
    int changes; /* within the concert; setting up before it is none */
    int unusual; /* steps that are not in the usual seating */
} ConcertChoice;

enum { CONCERT_ANY_CHANGES = -1 };

/* Fills `seatings` (room for task->count) and `choice`. `most`: changes within the concert, or CONCERT_ANY_CHANGES. `*possible` is false
 * when the fixed seatings and the forbidden changes leave no way; nothing is filled then. SPZ_NO_MEMORY. */
spz_status concert_choose(const ConcertTask *task, int most, int *seatings, ConcertChoice *choice, bool *possible);

/* What a given row of seatings costs; false when it is not allowed. */
bool concert_cost(const ConcertTask *task, const int *seatings, ConcertChoice *choice);

/* Negative when `a` is the better one. */
int concert_compare(const ConcertChoice *a, const ConcertChoice *b);
#endif
