/* playing_marks.h - the dynamic, pizzicato and mutes in force at each note. */
#ifndef READER_PLAYING_MARKS_H
#define READER_PLAYING_MARKS_H
#include "model/movement.h"
#include "reader/files/limits.h"

/* Notes and marks are sorted; staves are at most LIMIT_STAVES. */
void playing_marks_apply(Part *part);
#endif
