/* Sources: sounds.xml of MusicXML 4.0 (W3C Community Group); General MIDI Level 1 sound set (MIDI Association), from memory. */
#include "sections/names/sound_ids.h"
#include <string.h>

/* The longest entry that the id equals or begins with (at a '.') counts. */
static const struct { const char *id; Instrument instrument; spz_family family; } sounds[] = {
    { "strings", INSTRUMENT_OTHER_STRING, SPZ_FAMILY_STRINGS }, /* erhu, rebec, viols ...: bowed, of no section */
    { "strings.violin", INSTRUMENT_VIOLIN, SPZ_FAMILY_STRINGS },
    { "strings.viola", INSTRUMENT_VIOLA, SPZ_FAMILY_STRINGS },
    { "strings.cello", INSTRUMENT_CELLO, SPZ_FAMILY_STRINGS },
    { "strings.contrabass", INSTRUMENT_BASS, SPZ_FAMILY_STRINGS },
    { "strings.octobass", INSTRUMENT_BASS, SPZ_FAMILY_STRINGS },
    { "strings.viol.violone", INSTRUMENT_BASS, SPZ_FAMILY_STRINGS },
    { "strings.violono.piccolo", INSTRUMENT_VIOLIN, SPZ_FAMILY_STRINGS }, /* so spelt in the standard */
    { "strings.fiddle", INSTRUMENT_VIOLIN, SPZ_FAMILY_STRINGS },
    { "strings.fiddle.hardanger", INSTRUMENT_OTHER_STRING, SPZ_FAMILY_STRINGS },
    { "strings.group", INSTRUMENT_STRINGS, SPZ_FAMILY_STRINGS },
    { "wind", INSTRUMENT_OTHER, SPZ_FAMILY_WOODWIND },
    { "brass", INSTRUMENT_OTHER, SPZ_FAMILY_BRASS },
    { "drum", INSTRUMENT_OTHER, SPZ_FAMILY_PERCUSSION },
    { "effect", INSTRUMENT_OTHER, SPZ_FAMILY_PERCUSSION },
    { "metal", INSTRUMENT_OTHER, SPZ_FAMILY_PERCUSSION },
    { "pitched-percussion", INSTRUMENT_OTHER, SPZ_FAMILY_PERCUSSION },
    { "rattle", INSTRUMENT_OTHER, SPZ_FAMILY_PERCUSSION },
    { "wood", INSTRUMENT_OTHER, SPZ_FAMILY_PERCUSSION },
    { "keyboard", INSTRUMENT_OTHER, SPZ_FAMILY_KEYBOARD },
    { "pluck", INSTRUMENT_OTHER, SPZ_FAMILY_PLUCKED },
    { "voice", INSTRUMENT_OTHER, SPZ_FAMILY_VOICES },
};

SoundReading sound_id_read(const char *id)
{
    SoundReading best = { INSTRUMENT_NONE, SPZ_FAMILY_UNKNOWN };
    size_t longest = 0;
    for (size_t i = 0; i < sizeof sounds / sizeof sounds[0]; i++) {
        size_t length = strlen(sounds[i].id);
        if (length > longest && strncmp(id, sounds[i].id, length) == 0 && (id[length] == '\0' || id[length] == '.')) {
            best = (SoundReading){ sounds[i].instrument, sounds[i].family };
            longest = length;
        }
    }
    return best;
}

SoundReading midi_program_read(int program)
{
    static const struct { int first, last; Instrument instrument; spz_family family; } programs[] = {
        { 2, 8, INSTRUMENT_OTHER, SPZ_FAMILY_KEYBOARD }, /* 1, the first piano, is what stands there when nobody chose */
        { 9, 16, INSTRUMENT_OTHER, SPZ_FAMILY_PERCUSSION }, { 17, 24, INSTRUMENT_OTHER, SPZ_FAMILY_KEYBOARD },
        { 25, 40, INSTRUMENT_OTHER, SPZ_FAMILY_PLUCKED }, { 41, 41, INSTRUMENT_VIOLIN, SPZ_FAMILY_STRINGS },
        { 42, 42, INSTRUMENT_VIOLA, SPZ_FAMILY_STRINGS }, { 43, 43, INSTRUMENT_CELLO, SPZ_FAMILY_STRINGS },
        { 44, 44, INSTRUMENT_BASS, SPZ_FAMILY_STRINGS }, { 45, 46, INSTRUMENT_STRINGS, SPZ_FAMILY_STRINGS },
        { 47, 47, INSTRUMENT_OTHER, SPZ_FAMILY_PLUCKED }, { 48, 48, INSTRUMENT_OTHER, SPZ_FAMILY_PERCUSSION },
        { 49, 52, INSTRUMENT_STRINGS, SPZ_FAMILY_STRINGS }, { 53, 55, INSTRUMENT_OTHER, SPZ_FAMILY_VOICES },
        { 57, 64, INSTRUMENT_OTHER, SPZ_FAMILY_BRASS }, { 65, 80, INSTRUMENT_OTHER, SPZ_FAMILY_WOODWIND },
        { 105, 108, INSTRUMENT_OTHER, SPZ_FAMILY_PLUCKED }, { 110, 110, INSTRUMENT_OTHER, SPZ_FAMILY_WOODWIND },
        { 111, 111, INSTRUMENT_OTHER_STRING, SPZ_FAMILY_STRINGS }, { 112, 112, INSTRUMENT_OTHER, SPZ_FAMILY_WOODWIND },
        { 113, 120, INSTRUMENT_OTHER, SPZ_FAMILY_PERCUSSION },
    };
    for (size_t i = 0; i < sizeof programs / sizeof programs[0]; i++)
        if (program >= programs[i].first && program <= programs[i].last)
            return (SoundReading){ programs[i].instrument, programs[i].family };
    return (SoundReading){ INSTRUMENT_NONE, SPZ_FAMILY_UNKNOWN };
}
