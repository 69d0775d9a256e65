/* finding.h - pieces of an answer that several questions share. */
#ifndef LIBRARY_FINDING_H
#define LIBRARY_FINDING_H
#include "library/conditions.h"
#include "library/shelf.h"

/* The movements that meet `where` (' AND ...', values bound), by composer, work and place, into the shelf: of the first `most` works; `shelf->total` counts all. Within a
 * transaction. */
spz_status find_movements(Store *store, const Where *where, size_t most, spz_shelf *shelf);
/* Of each movement found, the passages that meet the conditions: how many, and the `most` strongest. */
spz_status find_passages(Store *store, const spz_conditions *conditions, size_t most, spz_shelf *shelf);
/* Numbers of the works of that name: whole, with or without composer; else those that have it in their name. At most `most` are written; how many
 * there are is returned. */
size_t find_works(Store *store, const char *name, long long *works, size_t most);
/* A new shelf, with the store's transaction begun. SPZ_OK, or the library's status, told; the shelf is NULL then. */
spz_status shelf_begin(spz_library *library, spz_shelf_kind kind, const char *question, spz_shelf **shelf);
/* The shelf, closed, where all went well; else it is freed. Ends the transaction. */
spz_status shelf_finish(spz_library *library, spz_status status, spz_shelf *shelf, spz_shelf **out);
spz_interval interval_from(long long semitones, long long steps);
#endif
