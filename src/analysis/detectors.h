/* detectors.h - the table of detectors: each reads the section map and adds passages, nothing else. To add one, write
 * `spz_status detect_X(Findings *, const spz_settings *)` in a file of its own and give it a line in detectors.c. */
#ifndef ANALYSIS_DETECTORS_H
#define ANALYSIS_DETECTORS_H
#include "analysis/passages/findings.h"
#include "spezzato/settings.h"

typedef struct Detector {
    const char *name; /* for the bench */
    spz_status (*detect)(Findings *findings, const spz_settings *settings);
} Detector;

const Detector *detectors_all(size_t *count);
#endif
