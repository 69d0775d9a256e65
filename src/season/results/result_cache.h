/* result_cache.h - results of scores already read, one small file each, named by what it depends on: the content of the score, the settings,
 * the year, the edition of the program. So nothing in it is ever out of date; what is there is right or is not taken.
 *
 * Safe against two runs at once (a file appears whole, by renaming), against a torn file (its length and sum stand in its first line)
 * and against an old version (the first line says so, and its name differs). A cache that can't be written is no error: the season
 * is then read anew each time. */
#ifndef SEASON_RESULTS_RESULT_CACHE_H
#define SEASON_RESULTS_RESULT_CACHE_H
#include "season/results/result_lines.h"

/* NULL: not kept there, or not usable, or out of memory. */
ScoreResult *cache_find(const char *folder, const LineHead *head);
/* True when it is kept now. Makes the folder when it isn't there. */
bool cache_keep(const char *folder, const LineHead *head, const ScoreResult *result);
#endif
