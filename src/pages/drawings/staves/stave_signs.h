/* stave_signs.h - what the bow does: slurs, bow marks, lines and accents over the notes of a drawn stave. */
#ifndef PAGES_DRAWINGS_STAVE_SIGNS_H
#define PAGES_DRAWINGS_STAVE_SIGNS_H
#include "pages/drawings/staves/stave_layout.h"

void stave_signs(const Line *line, size_t s);
#endif
