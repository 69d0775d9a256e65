/* perform.c - the library of sound: plays all members, hears them in both seatings, brings both to one loudness. */
#include "sound/rendering/auditorium.h"
#include "sound/rendering/loudness.h"
#include "sound/rendering/sound_file.h"
#include "sound/rendering/synth.h"
#include "sound/rendering/tail.h"
#include "support/memory.h"

typedef struct Concert {
    const Performance *performance;
    Ears ears;
    Auditorium auditorium;
    Synth *synth;
    float *blocks; /* of all members */
    float *bus;    /* all members together: what reverberates */
    size_t bus_frames;
} Concert;

static spz_status concert_open(Concert *concert, const Performance *performance, const spz_sink *sink)
{
    *concert = (Concert){.performance = performance};
    spz_status status = ears_open(performance, sink, &concert->ears);
    if (!status)
        status = auditorium_open(&concert->auditorium, performance, &concert->ears);
    if (!status)
        status = synth_open(performance, sink, &concert->synth);
    if (status)
        return status;
    size_t block = concert->auditorium.block;
    concert->bus_frames = ((size_t)(performance->seconds * SOUND_RATE) / block + 1) * block;
    concert->blocks = memory_get(performance->members * block * sizeof *concert->blocks);
    concert->bus = memory_zeroed(concert->bus_frames, sizeof *concert->bus);
    return concert->blocks && concert->bus ? SPZ_OK : SPZ_NO_MEMORY;
}

static void concert_close(Concert *concert)
{
    synth_close(concert->synth);
    auditorium_close(&concert->auditorium);
    ears_close(&concert->ears);
    memory_free(concert->blocks);
    memory_free(concert->bus);
}

/* Room for what is heard in a seat: zeroed. */
static spz_status heard_open(const Performance *performance, const SoundTail *tail, Heard *out)
{
    out->count = (size_t)((performance->seconds + tail->seconds) * SOUND_RATE);
    for (int i = 0; i < SOUND_VERSIONS; i++)
        out->frames[i] = memory_zeroed(2 * out->count, sizeof *out->frames[i]);
    return out->frames[0] && out->frames[SOUND_VERSIONS - 1] ? SPZ_OK : SPZ_NO_MEMORY;
}

/* Every instrument is played once, whoever listens. */
static void play_all(Concert *concert, Heard *out)
{
    size_t block = concert->auditorium.block;
    for (size_t at = 0; at < concert->bus_frames; at += block) {
        synth_play(concert->synth, block, concert->blocks);
        for (size_t member = 0; member < concert->performance->members; member++)
            for (size_t i = 0; i < block; i++)
                concert->bus[at + i] += concert->blocks[member * block + i];
        auditorium_hear(&concert->auditorium, concert->blocks, at, out);
    }
}

/* What reverberates in a seat is alike in both seatings: the hall gets the same sound. */
static spz_status reverberate(Concert *concert, size_t seat, Heard *out)
{
    float *tail = memory_zeroed(2 * out->count, sizeof *tail), *response[2] = {NULL, NULL};
    size_t frames;
    spz_status status = tail ? tail_make(&concert->ears, &concert->performance->seats[seat].tail, concert->auditorium.at[seat].offset, response, &frames) : SPZ_NO_MEMORY;
    if (!status)
        status = tail_add(concert->bus, concert->bus_frames, response, frames, tail, out->count);
    for (int version = 0; version < SOUND_VERSIONS && !status; version++)
        for (size_t i = 0; i < 2 * out->count; i++)
            out->frames[version][i] += tail[i];
    memory_free(response[0]);
    memory_free(response[1]);
    memory_free(tail);
    return status;
}

static spz_status perform(const Performance *performance, const spz_sink *sink, Heard *out)
{
    Concert concert;
    for (size_t seat = 0; seat < performance->seat_count; seat++)
        out[seat] = (Heard){0};
    spz_status status = concert_open(&concert, performance, sink);
    for (size_t seat = 0; seat < performance->seat_count && !status; seat++)
        status = heard_open(performance, &performance->seats[seat].tail, &out[seat]);
    if (!status)
        play_all(&concert, out);
    for (size_t seat = 0; seat < performance->seat_count && !status; seat++) {
        status = reverberate(&concert, seat, &out[seat]);
        if (!status)
            status = loudness_match(&out[seat], performance->loudness);
    }
    concert_close(&concert);
    return status;
}

extern const SoundEngine spezzato_sound_engine;
__attribute__((visibility("default"))) const SoundEngine spezzato_sound_engine = {
    .edition = SOUND_EDITION, .perform = perform, .encode = sound_file_make, .writes = sound_file_writes,
};
