/* synth.h - plays the tones by libfluidsynth, each member of the cast on an output of its own, without effects: what a microphone at the
 * instrument would get. */
#ifndef SOUND_SYNTH_H
#define SOUND_SYNTH_H
#include "sound/performing.h"

typedef struct Synth Synth;

/* SPZ_CANNOT_OPEN and one SPZ_ERROR where the SoundFont can't be used. */
spz_status synth_open(const Performance *performance, const spz_sink *sink, Synth **out);
void synth_close(Synth *synth);
/* The next `frames` of every member, one channel each: out[member * frames]. */
void synth_play(Synth *synth, size_t frames, float *out);
#endif
