/* bar_lists.h - what touches each bar: a list of indices by bar, so that things are held only against those of their time. */
#ifndef ANALYSIS_MELODY_BAR_LISTS_H
#define ANALYSIS_MELODY_BAR_LISTS_H
#include "support/array.h"
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

typedef struct BarNote {
    uint32_t index, older; /* what is noted, and index + 1 of the note before in the same bar */
} BarNote;

typedef struct BarNotes {
    ARRAY(BarNote) notes;
    uint32_t *newest; /* by bar: index + 1 */
} BarNotes;

bool bar_notes_make(size_t bar_count, BarNotes *out); /* release it in any case; false when out of memory */
void bar_notes_release(BarNotes *notes);

/* Notes `index` down in bars first..last. False when out of memory. */
bool bar_notes_add(BarNotes *notes, int first, int last, uint32_t index);

/* The notes of a bar, the newest first, then the one before each; NULL at the end. */
static inline const BarNote *bar_notes_newest(const BarNotes *notes, int bar)
{
    return notes->newest[bar] ? &notes->notes.at[notes->newest[bar] - 1] : NULL;
}

static inline const BarNote *bar_notes_older(const BarNotes *notes, const BarNote *note)
{
    return note->older ? &notes->notes.at[note->older - 1] : NULL;
}
#endif
