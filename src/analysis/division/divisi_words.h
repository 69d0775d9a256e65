/* divisi_words.h - what a musician would say of a divided stretch. */
#ifndef ANALYSIS_DIVISION_DIVISI_WORDS_H
#define ANALYSIS_DIVISION_DIVISI_WORDS_H
#include "analysis/division/divisi_stretch.h"

/* 'second violins in two: held upper notes over a moving lower line'; NULL when out of memory. */
char *divisi_reason(Arena *arena, spz_section section, const Stretch *stretch);

/* 'violins in four, each section in two: chords in one rhythm'. */
char *divisi_violins_reason(Arena *arena, const Stretch *first, const Stretch *second, int lines);
#endif
