/* ears.h - what comes to the two ears, or out of two loudspeakers, of a sound from one direction.
 *
 * Headphones: the measured responses of a SOFA file (AES69), by libmysofa. Loudspeakers, 30 degrees to either side: amplitudes alone, by the law of
 * tangents (Bennett, Barker and Edeko, JAES 33 (1985) 314; from memory), so that a source stands where it sits. */
#ifndef SOUND_EARS_H
#define SOUND_EARS_H
#include "sound/performing.h"

typedef struct Ears {
    void *set;      /* of libmysofa; NULL for loudspeakers */
    int taps;       /* of a response */
    float *left, *right;
    double delays[2]; /* seconds before each */
} Ears;

spz_status ears_open(const Performance *performance, const spz_sink *sink, Ears *out);
void ears_close(Ears *ears);
/* Fills left, right and delays for a direction (a unit vector of the head). */
void ears_turn(Ears *ears, double front, double left, double up);

/* Adds a path to a pair of responses of `length` frames, `offset` seconds taken off its delay. */
void ears_add(Ears *ears, const SoundPath *path, double offset, float *left, float *right, size_t length);
/* Frames that a path needs which comes so many seconds after the first. */
size_t ears_length(const Ears *ears, double reach);
#endif
