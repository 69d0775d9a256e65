/* manner.h - how a note is played: what dots, hairpins and grace notes do to its length and loudness. */
#ifndef SOUND_MANNER_H
#define SOUND_MANNER_H
#include "sections/section_map.h"
#include "sections/slurs.h"

typedef struct Manners {
    const Movement *movement;
} Manners;
void manners_open(Manners *manners, const Movement *movement);
/* The dynamic in force as a place on the ladder of score.h; within a hairpin between two of them. An accent stands a step higher. */
double manner_rung(const Manners *manners, const GroupSound *sound);
/* The same at `count` moments from its beginning to its end, equally far apart. False: nothing changes within it. */
bool manner_swell(const Manners *manners, const GroupSound *sound, double *rungs, size_t count);

extern const double manner_grace_seconds;
/* How long it is held when it is written to last `written` seconds. */
double manner_length(const Note *note, double written, bool slurred, uint8_t program);
/* How often strokes through the stem have it struck in `duration` of it, where they are counted; else 1. */
int manner_repeats(const GroupSound *sound, Ticks duration, Ticks per_crotchet);
/* Plucked or as a tremolo where it says so; else `usual`. */
uint8_t manner_program(const Note *note, uint8_t usual);
/* By how much a grace note comes before the moment at which it stands; 0 for all others. */
double manner_grace_early(const GroupSound *sounds, size_t count, size_t index);
/* The step above, in the key. */
double manner_upper_neighbour(const Movement *movement, const Note *note);
#endif
