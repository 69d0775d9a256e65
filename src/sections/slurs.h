/* slurs.h - which sounds are bound to each other, read off the slurs' beginnings and ends. */
#ifndef SECTIONS_SLURS_H
#define SECTIONS_SLURS_H
#include "sections/section_map.h"

/* Slurs that are open, by part, staff and voice. */
enum { SLUR_LINES = 128 };
typedef struct SlurBook {
    struct {
        uint16_t part;
        uint8_t staff, voice;
        int open, before; /* behind the moment at hand, whose notes may be several; before it */
        Ticks moment, length; /* the moment at hand, the length of its first note */
    } lines[SLUR_LINES];
    size_t count;
} SlurBook;

typedef struct SlurPlace {
    bool from, on; /* bound to what comes before, to what comes next */
} SlurPlace;
/* Ask it of every sound in turn, from the beginning. */
SlurPlace slur_place(SlurBook *book, const GroupSound *sounds, size_t count, size_t index);
#endif
