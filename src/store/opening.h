/* opening.h - the store inside: what opening.c fills and store.c works with. */
#ifndef STORE_OPENING_H
#define STORE_OPENING_H
#include "store/transactions.h"
#include "support/array.h"
#include <pthread.h>
#include <sqlite3.h>

typedef struct Prepared {
    const char *sql;
    sqlite3_stmt *statement;
} Prepared;

struct Store {
    sqlite3 *base;
    char *path;
    const char *trouble; /* what went wrong first; NULL: nothing */
    bool told;
    spz_status failure; /* of the transaction under way */
    pthread_mutex_t lock;
    ARRAY(Prepared) statements;
};

/* Remembers the failure. */
spz_status store_fail(Store *store, int code);
#endif
