/* limits.h - what no real score reaches. A file beyond one of these is refused with the limit named; docs/formats.md lists them. */
#ifndef READER_LIMITS_H
#define READER_LIMITS_H
#include <stddef.h>
#include <stdint.h>

enum {
    LIMIT_DEPTH = 64,            /* elements inside elements; MusicXML 4.0 needs fewer than 20 */
    LIMIT_NAMES = 5000,          /* different names of elements and attributes; MusicXML 4.0 has about 600 */
    LIMIT_PIECE = 1 << 16,       /* bytes from one '>' to the next: an element's head with all its attributes, or a text */
    LIMIT_TEXT = 4096,           /* bytes of one word, name or number */
    LIMIT_NAME = 1000,           /* bytes of a name of an element */
    LIMIT_PARTS = 500,
    LIMIT_BARS = 50000,          /* of one part; the longest operas have fewer than 10000 a part */
    LIMIT_MOVEMENTS = 100,       /* of one file; what follows is taken as one */
    LIMIT_CELLS = 4000000,       /* bars of all parts together */
    LIMIT_NOTES = 4000000,       /* of a file */
    LIMIT_MARKS = 1000000,
    LIMIT_VOICES = 200,          /* of a part */
    LIMIT_STAVES = 32,           /* of a part */
    LIMIT_DIRECTION_ITEMS = 64,  /* signs in one <direction> */
    LIMIT_GROUP_DEPTH = 32,      /* brackets over brackets */
    LIMIT_DIGITS = 12,           /* of a whole number */
    LIMIT_DECIMALS = 6,
    LIMIT_DIVISIONS = 1000000,   /* MusicXML names 16383 as the largest that MIDI can hold */
    LIMIT_BAR_CROTCHETS = 10000, /* length of one bar, also an unmeasured one */
    LIMIT_ARCHIVE_ENTRIES = 10000,
    LIMIT_ARCHIVE_RATIO = 400,   /* unpacked to packed, once more than LIMIT_RATIO_FROM is unpacked; real scores reach 60 */
    LIMIT_RATIO_FROM = 1 << 20,
    LIMIT_LINKS = 500,           /* scores that one collection names */
    LIMIT_LINK_DEPTH = 8         /* collections in collections */
};
static const int64_t limit_per_crotchet = INT64_C(10000000000); /* ticks; with LIMIT_BAR_CROTCHETS far below 2^63 */
static const int64_t limit_length = INT64_C(1) << 60;           /* ticks of a movement */
static const size_t limit_archive_bytes = (size_t)128 << 20;    /* of the packed file */
static const size_t limit_bytes = (size_t)512 << 20;            /* of the unpacked XML */
#endif
