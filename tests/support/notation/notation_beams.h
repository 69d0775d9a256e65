/* Beams: which notes of a voice hang together, beat by beat. */
#ifndef SPEZZATO_TEST_NOTATION_BEAMS_H
#define SPEZZATO_TEST_NOTATION_BEAMS_H

#include "notation_score.h"

enum { MOST_BEAMS = 4 };

/* One note's beams from the first level on: begin, continue, end, forward hook, backward hook; NULL where there is none. */
struct beams {
    const char *states[MOST_BEAMS];
};

/* Fills beams (zeroed, one for each event of the voice). */
void find_beams(const struct voice *voice, int beats, int unit, struct beams *beams);

#endif
