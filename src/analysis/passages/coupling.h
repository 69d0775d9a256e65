/* coupling.h - two groups that move together: unison, octaves, parallel thirds or sixths in one rhythm. It argues for sitting
 * together, the more so the faster, softer and more exact it is. Every two groups get a pairing (shares of the movement); of the
 * stretches only those worth a conductor's mark become passages. Cost: one merge of two melodies for each pair. */
#ifndef ANALYSIS_PASSAGES_COUPLING_H
#define ANALYSIS_PASSAGES_COUPLING_H
#include "analysis/passages/findings.h"
#include "spezzato/settings.h"

spz_status detect_coupling(Findings *findings, const spz_settings *settings);
#endif
