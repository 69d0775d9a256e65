/* sorting.h - order of notes and marks in time; what stands together keeps the order of the file. */
#ifndef READER_SORTING_H
#define READER_SORTING_H
#include "model/movement.h"

/* false when out of memory. Linear where the notes are nearly in order already, as one voice after the other in a bar. */
bool sort_notes(Note *notes, size_t count);
bool sort_marks(Direction *marks, size_t count);
#endif
