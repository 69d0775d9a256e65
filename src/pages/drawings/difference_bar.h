/* difference_bar.h - what speaks for the one and what for the other: a bar from the middle line toward the side that it speaks for. */
#ifndef PAGES_DRAWINGS_DIFFERENCE_BAR_H
#define PAGES_DRAWINGS_DIFFERENCE_BAR_H
#include "spezzato/language.h"
#include "writing/markup.h"

/* `points` above 0 speak for the one at the left: a filled bar; below 0 for the other: a hollow one. `longest`: the most that is drawn beside it. */
void difference_bar(Markup *html, spz_language language, double points, double longest);
#endif
