/* sound_ids.h - what a file says of a part's instrument in codes: MusicXML sound ids and General MIDI programs. */
#ifndef SECTIONS_SOUND_IDS_H
#define SECTIONS_SOUND_IDS_H
#include "sections/names/vocabulary.h"

typedef struct SoundReading {
    Instrument instrument; /* INSTRUMENT_NONE when the code says nothing */
    spz_family family;
} SoundReading;

/* MusicXML 4.0 sound id, 'strings.violin'. Ids this release doesn't know are taken by their first word. */
SoundReading sound_id_read(const char *id);

/* General MIDI program 1..128. */
SoundReading midi_program_read(int program);
#endif
