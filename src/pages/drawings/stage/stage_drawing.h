/* stage_drawing.h - a drawing of the stage under way: the stage as the audience sees it on paper, podium and audience below, house left at the
 * left. One metre is `scale` units; places are given in metres from the podium, what is drawn in units. */
#ifndef PAGES_DRAWINGS_STAGE_DRAWING_H
#define PAGES_DRAWINGS_STAGE_DRAWING_H
#include "pages/drawings/label_space.h"
#include "spezzato/laying.h"
#include "writing/markup.h"

enum { MARGIN = 56, TOP = 92, LINE = 17 }; /* units */

typedef struct Drawing {
    Markup html;
    const spz_plan *plan;
    const spz_laying *laying; /* NULL: the strings alone, without the grid */
    spz_language language;
    double scale, left, width, height;
    double deep;     /* metres from the stage edge that are drawn */
    LabelSpace room; /* what words must not cover */
    bool failed;
} Drawing;

double stage_across(const Drawing *d, double x);
double stage_down(const Drawing *d, double y);
void stage_line(Drawing *d, double x1, double y1, double x2, double y2, const char *class);
void stage_words(Drawing *d, double x, double y, const char *class, const char *text);
void stage_box(Drawing *d, double x, double y, double width, double height, const char *class);
void stage_circle(Drawing *d, double x, double y, double radius, const char *class, const char *fill);
void stage_take(Drawing *d, Box box);
const char *stage_fill(spz_section section);
double stage_seat(spz_section section); /* half the width of chair or stool, metres */

/* stage_floor.c: the floor with its edge and the podium; of a laying also grid, risers and ways. Then those who are no desks. */
void stage_floor(Drawing *d);
void stage_others(Drawing *d);
#endif
