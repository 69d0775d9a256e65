/* label_space.h - where words have room on a drawn plan: chairs, stands and words already there are boxes that nothing may cover. */
#ifndef PAGES_DRAWINGS_LABEL_SPACE_H
#define PAGES_DRAWINGS_LABEL_SPACE_H
#include "support/array.h"
#include <stdbool.h>

typedef struct Box {
    double left, top, right, bottom; /* units of the drawing, downward */
} Box;

typedef struct LabelSpace {
    ARRAY(Box) taken;
} LabelSpace;

void label_space_free(LabelSpace *room);
/* False without memory. */
bool label_space_take(LabelSpace *room, Box box);
Box box_around(double x, double y, double width, double height);
/* A line of words whose middle stands at `x` on the line `y`: an estimate for a wide sans serif. */
Box box_of_words(const char *words, double x, double y, double size, bool bold);
/* Area of `box`, with a little air around it, that is taken already. */
double label_space_covered(const LabelSpace *room, Box box);
#endif
