/* Numbers of bars that a printed edition would probably give otherwise; each kind is told once, at its first place. */
#include "checking/checks.h"
#include "model/bar_numbers.h"

static void add(spz_doubts *doubts, const Movement *m, spz_fault fault, size_t first, size_t last)
{
    doubts_add(doubts, m, (DoubtPlace){.part = -1, .bar = (int)last, .line = m->bars[last].line},
               (spz_doubt){.fault = fault, .name = m->bars[first].number, .other = m->bars[last].number});
}

void check_numbers(spz_doubts *doubts, const Movement *movement)
{
    size_t halves = halves_counted(movement, 0), leap = numbers_leap(movement, 0);
    if (upbeat_is_counted(movement))
        add(doubts, movement, SPZ_FAULT_UPBEAT_COUNTED, 0, 0);
    for (; halves < movement->bar_count; halves = halves_counted(movement, halves + 1))
        add(doubts, movement, SPZ_FAULT_HALVES_COUNTED, halves, halves + 1);
    if (leap < movement->bar_count)
        add(doubts, movement, SPZ_FAULT_NUMBERS_LEAP, leap - 1, leap);
}
