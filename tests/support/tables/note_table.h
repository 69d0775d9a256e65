/* note_table.h - compares a movement with an independent table of it: at each moment, for each part, the highest sounding pitch, repeats
 * unfolded (the NAME.csv files of the shared scores; `E-4` is E flat 4).
 *
 * The table has habits of its own, found by looking into the scores where the two differed. They are modelled, so that a difference is called
 * explained only when the table's habit yields exactly what the table says:
 *   - times are rounded to four decimals, and a note is entered only once the note before it is over: a note of a sixth of a crotchet at x.3333
 *     begins 'before' its predecessor's end at x.3334 and is missed, as is a higher note that enters over a held one
 *   - after a bar in which the whole orchestra rests, its clock runs ahead by the time from its last moment to the end of that bar
 *   - it enters cue notes (the small note that shows what a harmonic sounds)
 *   - parts with one name stand in one column
 *   - some second winds repeat the first where the file gives them a written rest ('1.'): the table follows another state of the score
 *   - notes without pitch (percussion) stand in it as the pitch that their place on the staff would be */
#ifndef TESTS_NOTE_TABLE_H
#define TESTS_NOTE_TABLE_H
#include "model/movement.h"

enum { NOTE_TABLE_TEXT = 2048 };

typedef struct NoteTableResult {
    long moments, moments_agreeing;
    long compared, agreeing; /* moments x parts */
    long missed;             /* differences that its rounding and its waiting for the note before explain */
    long doubled;            /* it repeats the part above where the file has a rest of a whole bar */
    long unexplained;
    long unpitched;          /* entries of percussion, not compared */
    int pauses;              /* general pauses after which the table's clock was set right */
    int parts, parts_compared;
    char missed_bars[NOTE_TABLE_TEXT], doubled_bars[NOTE_TABLE_TEXT];
    char pause_bars[NOTE_TABLE_TEXT];  /* bars of the pauses */
    char strangers[256];               /* columns that are no part of the file */
    char first_unexplained[400];       /* "" when there is none */
} NoteTableResult;

/* false when the table can't be read. */
bool note_table_compare(const char *path, const Movement *movement, NoteTableResult *result);
#endif
