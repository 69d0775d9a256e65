/* division_desks.h - who plays which line of a divided section, in words. */
#ifndef EDITING_DIVISION_DESKS_H
#define EDITING_DIVISION_DESKS_H
#include "spezzato/allotment.h"
#include "support/buffer.h"

/* 'line 1 (top): desks 1, 4, outside player of desk 7; line 2: ...; 5, 5 and 4 players, 1.07, 1.07 and 0.86 of an equal share':
 * by the players of the settings. Nothing for other passages, or where there are fewer players than lines. */
void division_desks(const spz_passage *passage, const spz_settings *settings, Buffer *out);
#endif
