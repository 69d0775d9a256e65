/* shared_staff.h - two sections on one staff as two voices: who plays the bars in which only one voice is written.
 *
 * Scores write unison of the two in the upper voice alone. The same is written where the second section rests (its rests aren't
 * kept in the model), so a stretch of the upper voice alone counts as both when no mark says 'I.' or 'solo', and when no bar of
 * the lower voice alone stands next to it: such neighbours answer each other. Common practice. */
#ifndef SECTIONS_SHARED_STAFF_H
#define SECTIONS_SHARED_STAFF_H
#include "sections/section_map.h"

/* For each bar: 1 where both sections read the upper voice, else 0. `second` says of each voice of the part whether it is the second
 * section's. From `arena`; NULL when out of memory. */
unsigned char *shared_staff_bars(const Movement *movement, size_t part, const bool *second, Arena *arena);
#endif
