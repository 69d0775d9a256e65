/* sound_file.h - sound files by libsndfile, whole in memory. */
#ifndef SOUND_SOUND_FILE_H
#define SOUND_SOUND_FILE_H
#include "sound/performing.h"

bool sound_file_writes(spz_sound_form form);
spz_status sound_file_make(const float *frames, size_t count, spz_sound_form form, const spz_sink *sink, char **bytes, size_t *size);
#endif
