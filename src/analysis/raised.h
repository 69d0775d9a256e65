/* raised.h - what was heard and not reported, and the conductor holds to be something: a line of [passages] that gives a weight where no passage
 * stands makes one of the match there that covers most of its bars; one that names two sections and `coupling` or `split line` makes that of these bars, where the
 * notes bear it. A division is what stands in the parts: no line makes one. */
#ifndef ANALYSIS_RAISED_H
#define ANALYSIS_RAISED_H
#include "analysis/passages/findings.h"
#include "spezzato/settings.h"

/* Adds such passages; they have the strength that the match alone has. Listens anew where a line asks for it: the time of spz_passages_find. SPZ_BAD_SETTINGS
 * as rulings_read; SPZ_NO_MEMORY. */
spz_status raised_add(Findings *findings, const spz_settings *settings, const spz_sink *sink);
#endif
