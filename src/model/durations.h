/* durations.h - seconds by the tempo marks, and how often bars are played. Before the first mark the first one holds; where there is none, 120 crotchets a minute. */
#ifndef MODEL_DURATIONS_H
#define MODEL_DURATIONS_H
#include "model/movement.h"

double movement_rate_at(const Movement *movement, Ticks when); /* crotchets a minute */
/* From one written moment to a later one, without repeats. */
double movement_seconds(const Movement *movement, Ticks from, Ticks to);
double movement_bar_seconds(const Movement *movement, size_t bar);
double movement_played_seconds(const Movement *movement); /* the whole of it, repeats counted */
size_t movement_times_played(const Movement *movement, size_t bar); /* repeats counted */
#endif
