/* gesture.h - the one gesture of which the entries of a passage are instances: the beginning that most of its statements share, in rhythm and contour. */
#ifndef ANALYSIS_ANTIPHONY_TELLING_GESTURE_H
#define ANALYSIS_ANTIPHONY_TELLING_GESTURE_H
#include "analysis/antiphony/telling/statements.h"

typedef struct Gesture {
    const NoteEvent *first; /* as the statement has it that is most like the others; NULL: they share none */
    size_t notes;           /* by which it is known */
    double clearest;        /* chance of the clearest match */
    double told;            /* how much of the statements it tells: to be compared with another's */
    const NoteEvent *led;   /* where a long note leads into it and belongs to it; NULL: none does */
    bool heads;             /* what is broken off by a rest is an instance too */
    Ticks from;             /* nothing begins before */
    bool turned;            /* some of them have it upside down */
    bool even;              /* all of one note value: a row that looks the same from many of its notes */
} Gesture;

/* Of a chain's statements. */
Gesture gesture_of(const Texture *texture, const StatementList *statements);
/* Drops statements that don't begin with it, and lets those that begin a note or two beside it begin where it does. */
void gesture_keep(const Texture *texture, const Gesture *gesture, StatementList *statements);
/* Adds those that no match found: whoever begins the gesture before `to` where none of their statements lies. False: no memory. */
bool gesture_find(const Texture *texture, const Gesture *gesture, Ticks to, StatementList *statements);
#endif
