/* spezzato.h - the whole library: from a score file to a seating that can be defended with bar numbers.
 *
 *   spz_reading *reading;
 *   if (spz_reading_make("symphony.mxl", NULL, 0, SPZ_TO_SEATING, NULL, &reading) == SPZ_OK) {
 *       puts(spz_verdict_sentence(spz_reading_at(reading, 0).verdict, SPZ_ENGLISH, text, sizeof text));
 *       spz_reading_free(reading);
 *   }
 */
#ifndef SPEZZATO_SPEZZATO_H
#define SPEZZATO_SPEZZATO_H

#include "spezzato/check.h"
#include "spezzato/explain.h"
#include "spezzato/laying.h"
#include "spezzato/library.h"
#include "spezzato/listen.h"
#include "spezzato/reading.h"
#include "spezzato/report.h"
#include "spezzato/season.h"
#include "spezzato/sheets.h"
#include "spezzato/version.h"

#endif
