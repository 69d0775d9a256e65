/* result_store.h - results of scores already read, kept in the store and named by what they depend on: the content of the score, and the terms (settings,
 * year, edition of the program). So nothing in it is ever out of date. Results come from runs here, and as lines from other computers. */
#ifndef SEASON_RESULTS_RESULT_STORE_H
#define SEASON_RESULTS_RESULT_STORE_H
#include "season/results/result_lines.h"
#include "store/transactions.h"

/* NULL: not whole there, or not usable, or out of memory. */
ScoreResult *results_find(Store *store, const LineHead *head);
/* A result that can't be kept is read anew the next time; what went wrong is the store's to tell. */
void results_keep(Store *store, const LineHead *head, const ScoreResult *result);
/* All lines of a file in one transaction; they replace what is there. Damaged ones are doubts, told with their line and left out. SPZ_CANNOT_OPEN,
 * SPZ_CANNOT_READ (told), SPZ_CANNOT_WRITE, SPZ_NO_MEMORY. */
spz_status results_read_lines(Store *store, const char *path, const spz_sink *sink);
#endif
