/* arrangement.h - orders of the sections from house left to house right: the four standard ones and the user's own. */
#ifndef SEATING_ARRANGEMENT_H
#define SEATING_ARRANGEMENT_H
#include "seating/stage/house_rules.h"
#include "spezzato/seating.h"
#include "support/arena.h"

enum { STANDARD_ARRANGEMENTS = SPZ_OWN_ARRANGEMENT };

typedef struct Arrangement {
    const char *name;
    spz_order order;
    BassPlace basses; /* where they stand when they are not in the order */
    bool opposed;     /* another section sits between first and second violins */
} Arrangement;

typedef struct ArrangementList {
    Arrangement at[SPZ_ARRANGEMENT_LIMIT];
    size_t count; /* the first four are the standard ones */
} ArrangementList;

/* The standard ones, then every [arrangement NAME] of the settings. SPZ_BAD_SETTINGS (told to the sink) for an order that names
 * no section, names one twice, or leaves out a violin section; names are copied into the arena. */
spz_status arrangements_list(const spz_settings *settings, const spz_sink *sink, Arena *arena, ArrangementList *out);
const Arrangement *arrangements_find(const ArrangementList *list, const char *name); /* NULL: none of that name */
/* Third violins sit beside the seconds, on the inner side; an order that names them already is kept. */
void arrangement_add_thirds(Arrangement *arrangement);
bool arrangement_has(const Arrangement *arrangement, spz_section section);
#endif
