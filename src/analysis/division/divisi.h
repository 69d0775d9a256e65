/* divisi.h - divided sections: in two, in three or more, and all violins together in three or more. What counts is written in
 * docs/method-divisi.md. Cost: one sweep over the sounds of each group and one over the bars. */
#ifndef ANALYSIS_DIVISION_DIVISI_H
#define ANALYSIS_DIVISION_DIVISI_H
#include "analysis/passages/findings.h"
#include "spezzato/settings.h"

spz_status detect_divisi(Findings *findings, const spz_settings *settings);
#endif
