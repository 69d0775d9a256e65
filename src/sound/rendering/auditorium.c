#include "sound/rendering/auditorium.h"
#include "support/memory.h"
#include <math.h>
#include <string.h>

enum { SIDES = SOUND_VERSIONS * 2 }; /* two ears in each version */

static double nearest(const SoundSeat *seat, size_t members)
{
    double delay = INFINITY;
    for (int version = 0; version < SOUND_VERSIONS; version++)
        for (size_t i = 0; i < members * SOUND_PATHS; i++)
            if (seat->paths[version][i].gain != 0)
                delay = fmin(delay, seat->paths[version][i].delay);
    return isfinite(delay) ? delay : 0;
}

static fftwf_complex *response_of(const Auditorium *auditorium, const Listening *at, size_t member, int side)
{
    return at->responses + (member * SIDES + (size_t)side) * auditorium->fourier.bins;
}

static void fill(Auditorium *auditorium, Listening *at, const SoundPath *paths, Ears *ears, fftwf_complex *out, float *pair)
{
    Fourier *fourier = &auditorium->fourier;
    float *sides[2] = {pair, pair + auditorium->length};
    memset(pair, 0, 2 * auditorium->length * sizeof *pair);
    for (size_t i = 0; i < SOUND_PATHS; i++)
        ears_add(ears, &paths[i], at->offset, sides[0], sides[1], auditorium->length);
    for (size_t ear = 0; ear < 2; ear++) {
        memset(fourier->signal, 0, fourier->size * sizeof *fourier->signal);
        memcpy(fourier->signal, sides[ear], auditorium->length * sizeof *pair);
        fourier_there(fourier);
        memcpy(out + ear * fourier->bins, fourier->spectrum, fourier->bins * sizeof *fourier->spectrum);
    }
}

/* Who sits alike in both versions is heard alike. */
static spz_status sit_down(Auditorium *auditorium, Listening *at, const SoundSeat *seat, Ears *ears, float *pair)
{
    size_t bins = auditorium->fourier.bins;
    at->offset = nearest(seat, auditorium->members);
    at->responses = memory_zeroed(auditorium->members * SIDES * bins, sizeof *at->responses);
    at->sums = memory_zeroed(SIDES * bins, sizeof *at->sums);
    for (size_t member = 0; at->responses && at->sums && member < auditorium->members; member++)
        for (int version = 0; version < SOUND_VERSIONS; version++) {
            const SoundPath *paths = &seat->paths[version][member * SOUND_PATHS], *before = &seat->paths[0][member * SOUND_PATHS];
            fftwf_complex *out = response_of(auditorium, at, member, 2 * version);
            if (version && memcmp(paths, before, SOUND_PATHS * sizeof *paths) == 0)
                memcpy(out, response_of(auditorium, at, member, 0), 2 * bins * sizeof *out);
            else
                fill(auditorium, at, paths, ears, out, pair);
        }
    return at->responses && at->sums ? SPZ_OK : SPZ_NO_MEMORY;
}

spz_status auditorium_open(Auditorium *auditorium, const Performance *performance, Ears *ears)
{
    *auditorium = (Auditorium){.members = performance->members, .seats = performance->seat_count, .length = ears_length(ears, performance->reach)};
    size_t size = fourier_size(2 * auditorium->length);
    auditorium->block = size - auditorium->length + 1;
    float *pair = memory_zeroed(2 * auditorium->length, sizeof *pair);
    spz_status status = pair && fourier_open(&auditorium->fourier, size) ? SPZ_OK : SPZ_NO_MEMORY;
    for (size_t i = 0; i < auditorium->seats && !status; i++)
        status = sit_down(auditorium, &auditorium->at[i], &performance->seats[i], ears, pair);
    memory_free(pair);
    return status;
}

void auditorium_close(Auditorium *auditorium)
{
    fourier_close(&auditorium->fourier);
    for (size_t i = 0; i < auditorium->seats; i++) {
        memory_free(auditorium->at[i].responses);
        memory_free(auditorium->at[i].sums);
    }
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
    for (size_t seat = 0; seat < auditorium->seats; seat++)
        memset(auditorium->at[seat].sums, 0, SIDES * fourier->bins * sizeof *auditorium->at[seat].sums);
    for (size_t member = 0; member < auditorium->members; member++) {
        const float *own = in + member * auditorium->block;
        if (is_silent(own, auditorium->block))
            continue;
        memset(fourier->signal, 0, fourier->size * sizeof *fourier->signal);
        memcpy(fourier->signal, own, auditorium->block * sizeof *own);
        fourier_there(fourier);
        for (size_t seat = 0; seat < auditorium->seats; seat++) {
            const Listening *at = &auditorium->at[seat];
            for (int side = 0; side < SIDES; side++)
                fourier_add_product(at->sums + (size_t)side * fourier->bins, fourier->spectrum, response_of(auditorium, at, member, side), fourier->bins);
        }
    }
}

void auditorium_hear(Auditorium *auditorium, const float *in, size_t from, Heard *heard)
{
    Fourier *fourier = &auditorium->fourier;
    take_in(auditorium, in);
    for (size_t seat = 0; seat < auditorium->seats; seat++)
        for (size_t side = 0; side < SIDES; side++) {
            memcpy(fourier->spectrum, auditorium->at[seat].sums + side * fourier->bins, fourier->bins * sizeof *fourier->spectrum);
            fourier_back(fourier);
            float *to = heard[seat].frames[side / 2] + side % 2;
            for (size_t k = 0; k < fourier->size && from + k < heard[seat].count; k++)
                to[2 * (from + k)] += fourier->signal[k];
        }
}
