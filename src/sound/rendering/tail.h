/* tail.h - what reverberates once single reflections are gone: noise that dies away and comes from all sides, so that the two ears get as
 * much alike of it as in a hall. */
#ifndef SOUND_TAIL_H
#define SOUND_TAIL_H
#include "sound/rendering/ears.h"

/* Left and right response from the moment of the sound on (less `offset` seconds), `*length` frames each; memory_free. */
spz_status tail_make(Ears *ears, const SoundTail *tail, double offset, float *out[2], size_t *length);
/* Adds `signal` convolved with `response` to every second of the frames that begin at `out`, `frames` of them. */
spz_status tail_add(const float *signal, size_t signal_frames, float *const response[2], size_t length, float *out, size_t frames);
#endif
