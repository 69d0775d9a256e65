/* stave_glyphs.h - the signs of notation as lines of a pen. Units: a space between two lines of a stave is four. */
#ifndef PAGES_DRAWINGS_STAVE_GLYPHS_H
#define PAGES_DRAWINGS_STAVE_GLYPHS_H
#include "writing/markup.h"

enum { STAVE_SPACE = 4 };

void glyph_path(Html *html, const char *class, double width, const char *format, const double *numbers, size_t count);
void glyph_clef(Html *html, int clef, double x, double top);
/* -2..2 semitones, 0 a natural. */
void glyph_accidental(Html *html, int alter, double x, double y);
void glyph_head(Html *html, int type, double x, double y);
void glyph_rest(Html *html, int type, double x, double top);
void glyph_flags(Html *html, int count, double x, double y, bool up);
void glyph_dot(Html *html, double x, double y);
#endif
