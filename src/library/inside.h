/* inside.h - the library inside. */
#ifndef LIBRARY_INSIDE_H
#define LIBRARY_INSIDE_H
#include "spezzato/library.h"
#include "store/transactions.h"

struct spz_library {
    Store *store;
};
#endif
