/* evening_words.h - one seating for an evening: what it gives up, what a change at the interval would gain, which desks stay. */
#ifndef WORDING_EVENING_WORDS_H
#define WORDING_EVENING_WORDS_H
#include "wording/seasons/season_words.h"

/* Whether every work is chamber music: then there is no seating of sections to speak of. */
bool chamber_alone(const spz_planned_concert *concert);
/* 'One seating for the evening: violins opposed, ... . It gives up 45.2 points.' */
void say_one_seating(Buffer *out, spz_language language, const spz_planned_concert *concert);
/* 'Trois ecluses: Roues: 31.8 points; 45 bars, 1:38 of 1:54 (violins in three 1-31)'; nothing for one that gives up nothing. */
void say_given_up_by(Buffer *out, spz_language language, const spz_planned_movement *movement);
/* The same without the title. */
void say_given_up_there(Buffer *out, spz_language language, const spz_planned_movement *movement);
/* Whether the plan's only change is the best one at the interval. */
bool interval_is_planned(const spz_planned_concert *concert);
/* 'One change at the interval, to violins together, ..., gains 44 points: ...'; nothing where there is no interval. */
void say_interval_gain(Buffer *out, spz_language language, const spz_planned_concert *concert);
/* The desks that stay and those that are carried, a sentence each. */
void say_desks_of(Buffer *out, spz_language language, const spz_changeover *change);
#endif
