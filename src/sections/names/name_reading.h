/* name_reading.h - what one name says by itself, before the rest of the score is looked at. */
#ifndef SECTIONS_NAME_READING_H
#define SECTIONS_NAME_READING_H
#include "sections/names/vocabulary.h"

typedef struct NameReading {
    Instrument instrument;
    Instrument also;      /* a second string section on the same part: 'Violoncello e Contrabbasso' */
    spz_family family;    /* INSTRUMENT_OTHER and where known else */
    int ordinal, ordinal2; /* 1 and 2 of 'Violini I e II'; 0 where not said */
    int division;         /* 'I.2', 'II B', 'div(2)' */
    int lines;            /* how many lines it lists: 'A B C' */
    int orchestra;
    bool plural;          /* names players, not a player */
    bool solo, concertino, tutti; /* said so */
    bool rest;            /* those that are left beside a solo: 'gli altri' */
    bool special;         /* a kind that one player plays: violino piccolo */
    bool continuo;
    bool choir_named;     /* 'Coro', 'Chor': a choir, when no instrument is named */
    bool reduction;       /* not played in the concert: a piano reduction, a guide */
    bool stray;           /* some word or number of it means nothing here, or nothing follows its 'and' */
    bool desk, desk_numbered; /* of some desk; it says which */
    size_t desk_start, desk_end; /* what it says of desks, bytes of the name */
} NameReading;

void name_read(const char *name, NameReading *out);

/* One of the four string instruments, or the bass line. */
bool instrument_has_section(Instrument instrument);
bool instrument_is_either(Instrument instrument);
#endif
