/* auditorium.h - all sources at once, on their ways to every head that listens: each is transformed once, whatever the number of its reflections, of
 * the versions and of the seats from which it is heard. */
#ifndef SOUND_AUDITORIUM_H
#define SOUND_AUDITORIUM_H
#include "sound/rendering/ears.h"
#include "sound/rendering/fourier.h"

/* One seat. */
typedef struct Listening {
    double offset;            /* seconds taken off every delay: the nearest source is heard at once */
    fftwf_complex *responses; /* [member][version][ear][bin] */
    fftwf_complex *sums;      /* [version][ear][bin] */
} Listening;

typedef struct Auditorium {
    Fourier fourier;
    size_t members, seats, length, block; /* frames of a response; that are taken in at once */
    Listening at[SPZ_SEAT_COUNT];
} Auditorium;

spz_status auditorium_open(Auditorium *auditorium, const Performance *performance, Ears *ears);
void auditorium_close(Auditorium *auditorium);
/* Takes in one block of every member (in[member * block]) and adds what is heard of it in each seat to its frames from `from` on. */
void auditorium_hear(Auditorium *auditorium, const float *in, size_t from, Heard *heard);
#endif
