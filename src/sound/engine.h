/* engine.h - finds the library of sound, which is loaded only when somebody listens: so all other work needs none of what it needs. */
#ifndef SOUND_ENGINE_H
#define SOUND_ENGINE_H
#include "sound/performing.h"

/* What has to be installed for it, as Debian names it. */
#define SOUND_PACKAGES "libfluidsynth3 libmysofa1 libsndfile1 libfftw3-single3 libebur128-1 timgm6mb-soundfont"

/* `path` of the library. SPZ_CANNOT_OPEN and one SPZ_ERROR where it isn't there or misses a library of its own. It stays loaded. */
spz_status engine_open(const char *path, const spz_sink *sink, const SoundEngine **out);
/* The SoundFont of the system, or NULL. */
const char *engine_font(void);
/* The responses that libmysofa's package brings, or NULL. */
const char *engine_ears(void);
#endif
