/* sharing_habits.h - how many lines are usually shared out, what the house wants, and how many players it has. */
#ifndef ANALYSIS_DIVISION_SHARING_HABITS_H
#define ANALYSIS_DIVISION_SHARING_HABITS_H
#include "spezzato/allotment.h"

spz_sharing sharing_usual(int lines);
bool sharing_fits(spz_sharing sharing, int lines);
#endif
