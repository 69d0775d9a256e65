/* performing.h - what the renderer is given and what it gives back. All musical and spatial decisions are taken before: here are tones
 * with their seconds, and the ways that sound takes from each place to the head. */
#ifndef SOUND_PERFORMING_H
#define SOUND_PERFORMING_H
#include "spezzato/listen.h"
#include <stddef.h>
#include <stdint.h>

enum { SOUND_RATE = 48000, SOUND_VERSIONS = SPZ_LISTEN_VERSIONS, SOUND_PATHS = 25, SOUND_PLAYERS = 2 };

enum { SWELL_POINTS = 9 }; /* from its beginning to its end, equally far apart */

/* One tone of one player. */
typedef struct SoundTone {
    double onset, length; /* seconds from the beginning of the file */
    double key;           /* MIDI key, its decimals are mistuning */
    uint16_t member;      /* who plays: a place of the cast */
    uint8_t player;       /* of that place, from 0, below SOUND_PLAYERS */
    uint8_t velocity;     /* 1..127 */
    uint8_t program;      /* General MIDI, 0..127 */
    uint8_t swell[SWELL_POINTS]; /* within a hairpin: velocities on its way, none above `velocity`; zeroed: it stays as loud */
} SoundTone;

/* One way from a source to the head: direct, or by walls. */
typedef struct SoundPath {
    double delay;           /* seconds */
    double gain;            /* of pressure; 1 is the direct sound from ten metres */
    double high;            /* further gain above the corner of the instrument's directivity */
    double front, left, up; /* unit vector from the head to where the sound seems to come from */
} SoundPath;

/* What is left of the sound once single reflections are no longer heard. */
typedef struct SoundTail {
    double seconds; /* reverberation time: a fall of 60 dB */
    double start;   /* seconds after a sound at which its tail may begin */
    double energy;  /* of the whole decay from the moment of the sound on; 1 is the direct sound's from ten metres */
} SoundTail;

/* Somebody who listens. */
typedef struct SoundSeat {
    const SoundPath *paths[SOUND_VERSIONS]; /* members times SOUND_PATHS of each version; a gain of 0 is no path */
    SoundTail tail;
} SoundSeat;

typedef struct Performance {
    const SoundTone *tones; /* by onset */
    size_t tone_count, members;
    double seconds;         /* up to the end of the last tone */
    SoundSeat seats[SPZ_SEAT_COUNT]; /* every instrument is played once for all of them */
    size_t seat_count;
    double reach;           /* seconds: by how much the longest way may be longer than the shortest, in whatever seat of the hall. What is heard in one seat does not hang on
                             * which others are listened from */
    bool loudspeakers;
    const char *font, *ears; /* files */
    double loudness;         /* LUFS asked for */
} Performance;

typedef struct Heard {
    float *frames[SOUND_VERSIONS]; /* left, right, left, right ..; memory_free */
    size_t count;                  /* frames of each */
    double loudness[SOUND_VERSIONS], peak[SOUND_VERSIONS]; /* LUFS and dBTP of what is handed out (ITU-R BS.1770) */
    double gain[SOUND_VERSIONS];   /* dB by which the version was brought to its loudness */
} Heard;

/* What a library of sound hands out under the name `spezzato_sound_engine`. */
typedef struct SoundEngine {
    unsigned edition; /* SOUND_EDITION of the program that built it */
    spz_status (*perform)(const Performance *performance, const spz_sink *sink, Heard *out); /* `out`: one for each seat */
    spz_status (*encode)(const float *frames, size_t count, spz_sound_form form, const spz_sink *sink, char **bytes, size_t *size);
    bool (*writes)(spz_sound_form form); /* whether libsndfile, as it is installed, can */
} SoundEngine;
#define SOUND_EDITION 3u
#define SOUND_ENGINE_NAME "spezzato_sound_engine"
#endif
