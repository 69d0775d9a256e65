#include "sound/rendering/auditorium.h"
#include "support/memory.h"
#include <math.h>
#include <string.h>

static double nearest(const Performance *performance)
{
    double delay = INFINITY;
    for (int version = 0; version < SOUND_VERSIONS; version++)
        for (size_t i = 0; i < performance->members * SOUND_PATHS; i++)
            if (performance->paths[version][i].gain != 0)
                delay = fmin(delay, performance->paths[version][i].delay);
    return isfinite(delay) ? delay : 0;
}

static fftwf_complex *response_of(const Auditorium *auditorium, size_t member, int version, int ear)
{
    return auditorium->responses + (((size_t)member * SOUND_VERSIONS + (size_t)version) * 2 + (size_t)ear) * auditorium->fourier.bins;
}

static void fill(Auditorium *auditorium, const Performance *performance, Ears *ears, size_t member, int version, float *pair)
{
    Fourier *fourier = &auditorium->fourier;
    float *sides[2] = {pair, pair + auditorium->length};
    memset(pair, 0, 2 * auditorium->length * sizeof *pair);
    for (size_t i = 0; i < SOUND_PATHS; i++)
        ears_add(ears, &performance->paths[version][member * SOUND_PATHS + i], auditorium->offset, sides[0], sides[1], auditorium->length);
    for (int ear = 0; ear < 2; ear++) {
        memset(fourier->signal, 0, fourier->size * sizeof *fourier->signal);
        memcpy(fourier->signal, sides[ear], auditorium->length * sizeof *pair);
        fourier_there(fourier);
        memcpy(response_of(auditorium, member, version, ear), fourier->spectrum, fourier->bins * sizeof *fourier->spectrum);
    }
}

spz_status auditorium_open(Auditorium *auditorium, const Performance *performance, Ears *ears)
{
    *auditorium = (Auditorium){.members = performance->members, .offset = nearest(performance)};
    for (int version = 0; version < SOUND_VERSIONS; version++) {
        size_t length = ears_length(ears, performance->paths[version], performance->members * SOUND_PATHS, auditorium->offset);
        auditorium->length = length > auditorium->length ? length : auditorium->length;
    }
    size_t size = fourier_size(2 * auditorium->length);
    auditorium->block = size - auditorium->length + 1;
    float *pair = memory_zeroed(2 * auditorium->length, sizeof *pair);
    bool room = pair && fourier_open(&auditorium->fourier, size);
    if (room) {
        auditorium->responses = memory_zeroed(auditorium->members * SOUND_VERSIONS * 2 * auditorium->fourier.bins, sizeof *auditorium->responses);
        auditorium->sums = memory_zeroed(SOUND_VERSIONS * 2 * auditorium->fourier.bins, sizeof *auditorium->sums);
        room = auditorium->responses && auditorium->sums;
    }
    for (size_t member = 0; room && member < auditorium->members; member++)
        for (int version = 0; version < SOUND_VERSIONS; version++)
            fill(auditorium, performance, ears, member, version, pair);
    memory_free(pair);
    return room ? SPZ_OK : SPZ_NO_MEMORY;
}

void auditorium_close(Auditorium *auditorium)
{
    fourier_close(&auditorium->fourier);
    memory_free(auditorium->responses);
    memory_free(auditorium->sums);
}

static bool is_silent(const float *in, size_t frames)
{
    for (size_t i = 0; i < frames; i++)
        if (in[i] != 0)
            return false;
    return true;
}

static void take_in(Auditorium *auditorium, const float *in)
{
    Fourier *fourier = &auditorium->fourier;
    memset(auditorium->sums, 0, SOUND_VERSIONS * 2 * fourier->bins * sizeof *auditorium->sums);
    for (size_t member = 0; member < auditorium->members; member++) {
        const float *own = in + member * auditorium->block;
        if (is_silent(own, auditorium->block))
            continue;
        memset(fourier->signal, 0, fourier->size * sizeof *fourier->signal);
        memcpy(fourier->signal, own, auditorium->block * sizeof *own);
        fourier_there(fourier);
        for (int i = 0; i < SOUND_VERSIONS * 2; i++)
            fourier_add_product(auditorium->sums + (size_t)i * fourier->bins, fourier->spectrum, response_of(auditorium, member, i / 2, i % 2), fourier->bins);
    }
}

void auditorium_hear(Auditorium *auditorium, const float *in, size_t at, size_t frames, float *const out[SOUND_VERSIONS])
{
    Fourier *fourier = &auditorium->fourier;
    take_in(auditorium, in);
    for (size_t i = 0; i < SOUND_VERSIONS * 2; i++) {
        memcpy(fourier->spectrum, auditorium->sums + i * fourier->bins, fourier->bins * sizeof *fourier->spectrum);
        fourier_back(fourier);
        float *to = out[i / 2] + i % 2;
        for (size_t k = 0; k < fourier->size && at + k < frames; k++)
            to[2 * (at + k)] += fourier->signal[k];
    }
}
