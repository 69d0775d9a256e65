/* loudness.h - all versions brought to one loudness (ITU-R BS.1770, by libebur128), none of them clipped. */
#ifndef SOUND_LOUDNESS_H
#define SOUND_LOUDNESS_H
#include "sound/performing.h"

/* Loudness in LUFS and true peak in dBTP; false: no memory. -INFINITY where it is too short or silent. */
bool loudness_measure(const float *frames, size_t count, double *loudness, double *peak);
spz_status loudness_match(Heard *heard, double wanted);
#endif
