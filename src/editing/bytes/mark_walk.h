/* mark_walk.h - where a direction may be put into a score file: bar by bar, part by part, with the musical time of each place. */
#ifndef EDITING_BYTES_MARK_WALK_H
#define EDITING_BYTES_MARK_WALK_H
#include "model/movement.h"
#include "editing/bytes/mark_xml.h"
#include "support/array.h"

enum { PART_NAME_MOST = 64 };

typedef struct Place {
    size_t offset;    /* of the '<' before which the direction goes */
    Ticks at;         /* from the start of the bar */
    double divisions; /* of the file, to the crotchet, in force here */
    int staff;        /* of the note that stands here */
    char voice[PART_NAME_MOST];
    bool note;        /* false: the end of the bar */
} Place;
typedef ARRAY(Place) PlaceList;

/* Who wants to know; any of them may be NULL. */
typedef struct WalkListener {
    void *context;
    /* A bar of a part has ended. false stops the walk: out of memory. */
    bool (*bar)(void *context, size_t part, size_t bar, const PlaceList *places);
    /* A bracket or a dashed line of the part, as numbered in the file. */
    void (*line)(void *context, size_t part, int number);
} WalkListener;

/* Walks the whole file, which must be the one that `movement` was read from. SPZ_NOT_XML where it is cut off, SPZ_NO_MEMORY. */
spz_status mark_walk(const char *text, size_t length, const Movement *movement, const WalkListener *listener);
#endif
