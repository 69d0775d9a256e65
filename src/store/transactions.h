/* transactions.h - the one file in which everything that was heard is kept: an SQLite database, asked and changed in transactions. The only place that
 * knows SQLite.
 *
 * Chosen for safety: a rollback journal, which holds on every file system that locks files (a write-ahead log needs shared memory, so it
 * can't lie on a network's disk nor be read where nothing may be written), and full synchronising, so that what was told to be kept is on
 * the disk. A process that is killed loses the transaction under way and nothing else (sqlite.org, "Atomic Commit In SQLite"). Two writers take
 * turns; one waits for the other for STORE_PATIENCE.
 *
 * A file that is no library, a damaged one, and one of a newer edition are told and never changed. */
#ifndef STORE_TRANSACTIONS_H
#define STORE_TRANSACTIONS_H
#include "spezzato/status.h"
#include <stdbool.h>
#include <stddef.h>

enum { STORE_PATIENCE = 60 }; /* seconds; the other's transactions take milliseconds */

typedef struct Store Store;
typedef enum StoreUse {
    STORE_READ,   /* it has to be there; an older one is brought up to date */
    STORE_WRITE,  /* it is made, with its folders, where it isn't there */
    STORE_PASSING /* in memory, gone with the run; without a path */
} StoreUse;

/* One SPZ_ERROR has gone to the sink where it fails. SPZ_CANNOT_OPEN (not there), SPZ_CANNOT_READ (no library, damaged, of a newer edition),
 * SPZ_CANNOT_WRITE (to be changed and can't be), SPZ_NO_MEMORY. */
spz_status store_open(const char *path, StoreUse use, const spz_sink *sink, Store **out);
void store_close(Store *store); /* takes NULL */
/* What went wrong since it was opened, in one sentence: the first of it, told once. A sink belongs to a thread, a transaction to any. */
void store_tell(Store *store, spz_severity severity, const spz_sink *sink);

/* A transaction: one thread at a time holds the store. store_end commits where `status` is SPZ_OK, else undoes all of it, and returns `status` or
 * what went wrong: SPZ_CANNOT_WRITE (disk full, read-only), SPZ_CANNOT_READ (damaged, or others held it too long), SPZ_NO_MEMORY; store_tell says it. */
spz_status store_begin(Store *store, bool writes);
spz_status store_end(Store *store, spz_status status);

/* One statement: values are bound in their order, rows read column by column. `sql` lives as long as the store (a literal): it is prepared
 * once. A failure is remembered and given by query_end, and by store_end. */
typedef struct Query {
    Store *store;
    void *statement;
    int bound;
    bool once;
} Query;
Query query_begin(Store *store, const char *sql);
Query query_once(Store *store, const char *sql); /* not kept: for a text that does not live on */
void store_forget(Store *store, const char *sql); /* a text that will not live on */
void query_text(Query *query, const char *text); /* NULL: nothing (as SQL's NULL); copied */
void query_piece(Query *query, const char *text, size_t length);
void query_integer(Query *query, long long value);
void query_some(Query *query, bool there, long long value); /* NULL where there is none */
void query_number(Query *query, double value);
bool query_row(Query *query); /* false past the last */
/* Of the row; texts live until the next row. */
const char *query_get_text(const Query *query, int column); /* never NULL */
long long query_get_integer(const Query *query, int column);
double query_get_number(const Query *query, int column);
bool query_is_null(const Query *query, int column);
spz_status query_end(Query *query);
spz_status query_run(Query *query); /* of a statement that gives no rows: does it and ends */
long long store_last(const Store *store); /* number of the row that was put in last */

/* SQLite's own checks of the whole file: each fault goes to the sink. Within a transaction. */
spz_status store_check(Store *store, const spz_sink *sink, long *faults);

#endif
