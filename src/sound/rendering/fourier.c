#include "sound/rendering/fourier.h"
#include <string.h>

size_t fourier_size(size_t at_least)
{
    size_t size = 256;
    while (size < at_least)
        size *= 2;
    return size;
}

bool fourier_open(Fourier *fourier, size_t size)
{
    *fourier = (Fourier){.size = size, .bins = size / 2 + 1};
    fourier->signal = fftwf_alloc_real(size);
    fourier->spectrum = fftwf_alloc_complex(fourier->bins);
    if (fourier->signal && fourier->spectrum) {
        fourier->there = fftwf_plan_dft_r2c_1d((int)size, fourier->signal, fourier->spectrum, FFTW_ESTIMATE);
        fourier->back = fftwf_plan_dft_c2r_1d((int)size, fourier->spectrum, fourier->signal, FFTW_ESTIMATE);
    }
    return fourier->there && fourier->back;
}

void fourier_close(Fourier *fourier)
{
    if (fourier->there)
        fftwf_destroy_plan(fourier->there);
    if (fourier->back)
        fftwf_destroy_plan(fourier->back);
    fftwf_free(fourier->signal);
    fftwf_free(fourier->spectrum);
    memset(fourier, 0, sizeof *fourier);
}

void fourier_there(Fourier *fourier)
{
    fftwf_execute(fourier->there);
}

void fourier_back(Fourier *fourier)
{
    float scale = 1.0f / (float)fourier->size;
    fftwf_execute(fourier->back);
    for (size_t i = 0; i < fourier->size; i++)
        fourier->signal[i] *= scale;
}

/* Parts by hand: a product of complex numbers in C looks after infinities, which costs several times as much. */
void fourier_add_product(fftwf_complex *sum, const fftwf_complex *a, const fftwf_complex *b, size_t bins)
{
    float *to = (float *)sum;
    const float *one = (const float *)a, *other = (const float *)b;
    for (size_t i = 0; i < 2 * bins; i += 2) {
        to[i] += one[i] * other[i] - one[i + 1] * other[i + 1];
        to[i + 1] += one[i] * other[i + 1] + one[i + 1] * other[i];
    }
}
