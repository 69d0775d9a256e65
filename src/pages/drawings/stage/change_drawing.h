/* change_drawing.h - a change of seating desk by desk: the stage as it was and as it is afterwards, to one scale. */
#ifndef PAGES_DRAWINGS_CHANGE_DRAWING_H
#define PAGES_DRAWINGS_CHANGE_DRAWING_H
#include "spezzato/season.h"
#include "writing/markup.h"

/* Before: each desk as it stood, those that leave their place with the way that they go, those that are struck crossed out. After: each as it
 * stands, those that came outlined. */
void change_drawing(Markup *html, spz_language language, const spz_changeover *change, bool after);
#endif
