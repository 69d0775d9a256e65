/* stage_svg.h - a plan of the stage to scale, as a drawing. */
#ifndef PAGES_DRAWINGS_STAGE_SVG_H
#define PAGES_DRAWINGS_STAGE_SVG_H
#include "spezzato/laying.h"

typedef const spz_section (*StagePairs)[2];

spz_status stage_svg(const spz_plan *plan, StagePairs pairs, size_t count, spz_language language, spz_document **out);
/* The same with everything that is laid out, on a grid of metres. */
spz_status stage_svg_laid(const spz_plan *plan, const spz_laying *laying, StagePairs pairs, size_t count, spz_language language, spz_document **out);
#endif
