/* stage_svg.h - a plan of the stage to scale, as a drawing. */
#ifndef PAGES_DRAWINGS_STAGE_SVG_H
#define PAGES_DRAWINGS_STAGE_SVG_H
#include "spezzato/report.h"

typedef const spz_section (*StagePairs)[2];

spz_status stage_svg(const spz_plan *plan, StagePairs pairs, size_t count, spz_language language, spz_document **out);
spz_status stage_text(const spz_plan *plan, StagePairs pairs, size_t count, spz_language language, spz_document **out);
#endif
