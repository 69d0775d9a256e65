/* bar_numbers.h - the printed number. Musicians cite the printed edition; files often count an upbeat as bar 1, or both halves of a split bar. Gould,
 * Behind Bars (2011): bars are numbered from the first whole one, and the halves of a bar split by a repeat sign count once. */
#ifndef MODEL_BAR_NUMBERS_H
#define MODEL_BAR_NUMBERS_H
#include "model/movement.h"

/* The file counts a first bar that is shorter than its time signature. */
bool upbeat_is_counted(const Movement *movement);
/* The first pair of halves of one bar at or behind `from` of which both are counted: the first half; the bar count when there is none. */
size_t halves_counted(const Movement *movement, size_t from);
/* The first bar behind `from` whose number does not follow from that before it (a gap, the same again, a step back); likewise. */
size_t numbers_leap(const Movement *movement, size_t from);

/* How the edition numbers the bars, as the user says it; numbers are those of the file. */
typedef enum BarRuleKind {
    BARS_FIRST,  /* the first bar is `to`, and the others follow */
    BARS_JOINED, /* the bar numbered `to` is the second half of the one before it: from it on one less */
    BARS_NUMBER  /* the bar numbered `from` is `to`, and those behind it follow */
} BarRuleKind;
typedef struct BarRule {
    BarRuleKind kind;
    long from, to;
} BarRule;

/* Numbers that are no plain ones ('12a', '') stay as they are. SPZ_NO_MEMORY. */
spz_status bar_numbers_apply(Movement *movement, const BarRule *rules, size_t count, Arena *arena);
#endif
