/* auditorium.h - all sources at once, on their ways to the head: each is transformed once, whatever the number of its reflections and of
 * the versions that are heard of it. */
#ifndef SOUND_AUDITORIUM_H
#define SOUND_AUDITORIUM_H
#include "sound/rendering/ears.h"
#include "sound/rendering/fourier.h"

typedef struct Auditorium {
    Fourier fourier;
    size_t members, length, block;   /* frames of a response; that are taken in at once */
    double offset;                   /* seconds taken off every delay: the nearest source is heard at once */
    fftwf_complex *responses;        /* [member][version][ear][bin] */
    fftwf_complex *sums;             /* [version][ear][bin] */
} Auditorium;

spz_status auditorium_open(Auditorium *auditorium, const Performance *performance, Ears *ears);
void auditorium_close(Auditorium *auditorium);
/* Takes in one block of every member (in[member * block]) and adds what is heard of it to the frames from `at` on, `frames` of them in all. */
void auditorium_hear(Auditorium *auditorium, const float *in, size_t at, size_t frames, float *const out[SOUND_VERSIONS]);
#endif
