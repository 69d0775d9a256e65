/* hundredths.h - points as whole hundredths, so that equal plans are equal and ties are real ones. */
#ifndef SEASON_RESULTS_HUNDREDTHS_H
#define SEASON_RESULTS_HUNDREDTHS_H
#include "spezzato/season.h"
#include <stdbool.h>
#include <stdint.h>

typedef int64_t Hundredths;
enum { CONCERT_SEATINGS = SPZ_ARRANGEMENT_LIMIT };
#endif
