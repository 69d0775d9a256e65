/* hall.h - the room as a box: the ways from a place on the stage to a head, direct and by one or two walls (image sources: Allen and Berkley,
 * JASA 65 (1979) 943), and what reverberates. Coordinates as in stage.h; the box is open to no side. */
#ifndef SOUND_HALL_H
#define SOUND_HALL_H
#include "seating/stage/desk_layout.h"
#include "sound/performing.h"

typedef struct Hall {
    double width, length, height; /* metres */
    double back;                  /* y of the wall behind the orchestra */
    double floor;                 /* z of the floor of the seats */
    double seconds;               /* reverberation time */
    double celsius;
} Hall;

typedef struct Head {
    Place at;             /* middle of the head */
    double front_x, front_y; /* unit vector: where it looks */
} Head;

/* An instrument: where it is, and how it sends out what lies high. */
typedef struct Source {
    Place at;     /* metres */
    Place facing; /* unit vector of its strongest direction */
    double beam;  /* dB from there to the opposite, above the corner; 0: alike to all sides */
} Source;

/* The hall of the settings, large enough for its stage and seats. */
void hall_read(const spz_settings *settings, const Rules *rules, Hall *out);
Head hall_head(const Hall *hall, const Rules *rules, spz_seat seat);

/* Share of energy that a wall takes so that the box reverberates for that long (Eyring, JASA 1 (1930) 217). */
double hall_absorption(const Hall *hall);
/* All paths up to the second order, direct first; SOUND_PATHS of them. */
void hall_paths(const Hall *hall, const Source *source, const Head *head, SoundPath out[SOUND_PATHS]);
/* Energy of the reverberation (Barron and Lee, JASA 84 (1988) 618), told as in SoundTail; it may begin when the direct sound has come. */
SoundTail hall_tail(const Hall *hall, double nearest);
/* Gain above the corner toward a unit vector; over all directions its power is 1. */
double hall_directivity(const Source *source, Place toward);
#endif
