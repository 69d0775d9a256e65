/* inside.h - the library inside. */
#ifndef LIBRARY_INSIDE_H
#define LIBRARY_INSIDE_H
#include "spezzato/library.h"
#include "store/transactions.h"

struct spz_library {
    Store *store;
    spz_sink sink; /* for what goes wrong with it */
};
/* Ends a call: tells what went wrong. Returns `status`. */
spz_status library_end(spz_library *library, spz_status status);
#endif
