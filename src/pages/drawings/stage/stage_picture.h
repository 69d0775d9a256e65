/* stage_picture.h - a seating as a picture that is recognised at once: each section an area of the half circle round the podium, the audience
 * below. Proportions come from the plan's desks; stage_svg.h draws the same to scale, with numbers. */
#ifndef PAGES_DRAWINGS_STAGE_PICTURE_H
#define PAGES_DRAWINGS_STAGE_PICTURE_H
#include "spezzato/language.h"
#include "spezzato/stage.h"
#include "sections/section_map.h"
#include "writing/markup.h"

typedef enum StageSize {
    STAGE_WHOLE,  /* with desks, players, winds and audience */
    STAGE_LITTLE, /* areas and names */
    STAGE_GLYPH   /* areas alone, 52 by 31 */
} StageSize;

/* `map` tells which winds are there, drawn on the whole stage, and whether there are basses; NULL: no winds, all strings. */
void stage_picture(Markup *html, spz_language language, const spz_plan *plan, const SectionMap *map, StageSize size);
/* A change of seating: the stage as it was, with an arrow to the place of each section that moves; `after`: the stage as it is then, with those that
 * have moved outlined. `moved`: bit s is section s. */
void stage_picture_change(Markup *html, spz_language language, const spz_plan *before, const spz_plan *later, unsigned moved, bool after);
/* The plan of that place in the ranking on the stage of the settings, or on the usual one where it doesn't fit there; NULL where it can't be laid out at
 * all. To be freed with spz_plan_free. */
spz_plan *stage_plan_of(const spz_settings *settings, const spz_verdict *verdict, size_t place);
#endif
