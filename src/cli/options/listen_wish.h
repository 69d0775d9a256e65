/* listen_wish.h - what a command line wants to hear: bars or a passage, two seatings, a seat. */
#ifndef CLI_LISTEN_WISH_H
#define CLI_LISTEN_WISH_H
#include "cli/options/arguments.h"

typedef struct ListenWords { /* as given; NULL where not */
    const char *bars, *solo;
    const char *seating, *against; /* whole names, '|' between */
    int passage, movement; /* from 1; 0 not given */
} ListenWords;

/* Fills bars, arrangements, soloists and what the verdict says of the orchestra. `*movement` is the movement meant. False after one SPZ_ERROR. */
bool listen_wish_make(const spz_reading *reading, const ListenWords *words, const spz_sink *sink, size_t *movement, spz_listen_wish *wish);
/* Only the seatings, as the movement's verdict has them, and how its players sit. False as above. */
bool listen_wish_seatings(const spz_reading *reading, size_t movement, const spz_sink *sink, spz_listen_wish *wish);
#endif
