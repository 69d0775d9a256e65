/* bowing_words.h - what a bowing committee has to settle, in words. */
#ifndef WORDING_BOWING_WORDS_H
#define WORDING_BOWING_WORDS_H
#include "advice/bowings.h"
#include "wording/passage_words.h"

/* 'Vn I and Vn II, bars 12-15'; of a gesture in turn 'Vn I in bar 4, Vn II in bar 6'. */
void say_meeting(Buffer *out, const Speaker *speaker, const BowingMeeting *meeting);
/* 'slurs', 'up-bow'. */
const char *words_bowing_sign(spz_language language, BowingSign sign);
/* '12'; where the other plays it in another bar '4, 6'. */
void say_bowing_bars(Buffer *out, const Speaker *speaker, const BowingDifference *difference);
/* The marks of one of the two groups, in beats of the difference's bar: '1-2, 3-4'; nothing where it has none. */
void say_bowing_marks(Buffer *out, const Speaker *speaker, const BowingList *list, const BowingDifference *difference, bool other);
/* 'Vn I 1-2, 3-4; Vn II none'. */
void say_bowing_difference(Buffer *out, const Speaker *speaker, const BowingList *list, const BowingMeeting *meeting, const BowingDifference *difference);
/* 'Sections share 12 gestures; in 5 of them they are bowed differently, in 9 bars.' */
void say_bowings(Buffer *out, const Speaker *speaker, const BowingList *list);
#endif
