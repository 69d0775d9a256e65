/* divisi_texture.h - of a divided stretch, how its lines go together and what shows that they are several players': the facts told of it. */
#ifndef ANALYSIS_DIVISION_DIVISI_TEXTURE_H
#define ANALYSIS_DIVISION_DIVISI_TEXTURE_H
#include "analysis/division/divisi_stretch.h"

spz_writing divisi_writing_told(const Stretch *stretch);
spz_division divisi_told(const Stretch *stretch);
#endif
