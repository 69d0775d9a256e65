/* evening_words.h - one seating for an evening: what it gives up, what a change at the interval would gain, which desks stay. */
#ifndef WORDING_EVENING_WORDS_H
#define WORDING_EVENING_WORDS_H
#include "wording/seasons/season_words.h"

/* 'One seating for the evening: violins opposed, ... . It gives up 45.2 points.' */
void say_one_seating(Buffer *out, spz_language language, const spz_planned_concert *concert);
/* 'Trois ecluses: Roues: 31.8 points; 45 bars, 1:38 of 1:54 (violins in three 1-31)'; nothing for one that gives up nothing. */
void say_given_up_by(Buffer *out, spz_language language, const spz_planned_movement *movement);
/* The same without the title. */
void say_given_up_there(Buffer *out, spz_language language, const spz_planned_movement *movement);
/* 'One change at the interval, to violins together, ..., gains 44 points: ...'; nothing where there is no interval. */
void say_interval_gain(Buffer *out, spz_language language, const spz_planned_concert *concert);
/* 'Vn I 1-7, Va 1': the desks of the new layout that stay, or those that are carried; nothing for none. */
void say_desks(Buffer *out, spz_language language, const spz_changeover *change, bool stay);
/* Both as sentences. */
void say_desks_of(Buffer *out, spz_language language, const spz_changeover *change);
/* Bars and seconds that all movements of the plan give up. */
size_t evening_lost_bars(const spz_other_plan *plan);
double evening_lost_seconds(const spz_other_plan *plan);
#endif
