/* stave_glyphs.h - the signs of notation as lines of a pen. Units: a space between two lines of a stave is four. */
#ifndef PAGES_DRAWINGS_STAVE_GLYPHS_H
#define PAGES_DRAWINGS_STAVE_GLYPHS_H
#include "writing/markup.h"

enum { STAVE_SPACE = 4 };

void glyph_path(Markup *html, const char *class, double width, const char *format, const double *numbers, size_t count);
void glyph_clef(Markup *html, int clef, double x, double top);
/* -2..2 semitones, 0 a natural. */
void glyph_accidental(Markup *html, int alter, double x, double y);
void glyph_head(Markup *html, int type, double x, double y); /* a hollow one: 0 a semibreve, 1 a minim */
void glyph_full_head(Buffer *path, double x, double y);        /* for a pen of class 'heads' */
/* Adds to a path: each '#' of the format is the next number. Then the path as one element of that class, nothing where it is empty; it is emptied. */
void glyph_trace(Buffer *path, const char *format, const double *numbers, size_t count);
void glyph_traced(Markup *html, const char *class, Buffer *path);
void glyph_rest(Markup *html, int type, double x, double top);
void glyph_flags(Markup *html, int count, double x, double y, bool up);
void glyph_dot(Markup *html, double x, double y);
#endif
