/* fourier.h - real Fourier transforms by FFTW, of one size. The plan is chosen by rule, not by timing, so that results are the same each time. */
#ifndef SOUND_FOURIER_H
#define SOUND_FOURIER_H
#include <complex.h>
#include <fftw3.h>
#include <stdbool.h>
#include <stddef.h>

typedef struct Fourier {
    size_t size, bins; /* bins = size / 2 + 1 */
    float *signal;            /* `size` */
    fftwf_complex *spectrum;  /* `bins` */
    fftwf_plan there, back;
} Fourier;

bool fourier_open(Fourier *fourier, size_t size); /* a power of two; false: no memory */
void fourier_close(Fourier *fourier);             /* also of a zeroed one, or one that was not opened */
void fourier_there(Fourier *fourier);             /* signal to spectrum */
void fourier_back(Fourier *fourier);              /* spectrum to signal, scaled; destroys the spectrum */
void fourier_add_product(fftwf_complex *sum, const fftwf_complex *a, const fftwf_complex *b, size_t bins); /* sum += a b */
size_t fourier_size(size_t at_least);             /* the next power of two */
#endif
