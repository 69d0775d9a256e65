/* strings_and_winds.h - strings against winds: the same line of detection as antiphony.h, over two voices only: the upper line of all strings
 * and that of all woodwind and brass. Reported for the listener; the seating of the strings does not hang on it. */
#ifndef ANALYSIS_ANTIPHONY_STRINGS_AND_WINDS_H
#define ANALYSIS_ANTIPHONY_STRINGS_AND_WINDS_H
#include "analysis/passages/findings.h"
#include "spezzato/settings.h"

spz_status detect_winds(Findings *findings, const spz_settings *settings);
#endif
