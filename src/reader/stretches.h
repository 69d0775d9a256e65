/* stretches.h - where one file holds several movements: which bars belong to which. */
#ifndef READER_STRETCHES_H
#define READER_STRETCHES_H
#include "reader/reader.h"

typedef struct Stretch {
    size_t first, end;  /* bars */
    const char *title;  /* of its own; NULL */
} Stretch;
typedef ARRAY(Stretch) StretchList;

/* At least one stretch for a score of bars. false when out of memory. */
bool stretches_find(Reader *reader, StretchList *out);
#endif
