/* vocabulary_tables.h - how a line of the vocabulary is written, and where its tables are. */
#ifndef SECTIONS_NAMES_VOCABULARY_TABLES_H
#define SECTIONS_NAMES_VOCABULARY_TABLES_H
#include "sections/names/vocabulary.h"

#define VIOLIN(text) { text, WORD_STRING, INSTRUMENT_VIOLIN, false }
#define VIOLINS(text) { text, WORD_STRING, INSTRUMENT_VIOLIN, true }
#define VIOLA(text) { text, WORD_STRING, INSTRUMENT_VIOLA, false }
#define VIOLAS(text) { text, WORD_STRING, INSTRUMENT_VIOLA, true }
#define CELLO(text) { text, WORD_STRING, INSTRUMENT_CELLO, false }
#define CELLOS(text) { text, WORD_STRING, INSTRUMENT_CELLO, true }
#define BASS(text) { text, WORD_STRING, INSTRUMENT_BASS, false }
#define BASS_LINE(text) { text, WORD_STRING, INSTRUMENT_BASS_LINE, true }
#define CONTINUO(text) { text, WORD_STRING, INSTRUMENT_CONTINUO, false }
#define STRINGS(text) { text, WORD_STRING, INSTRUMENT_STRINGS, true }
#define BOWED(text) { text, WORD_STRING, INSTRUMENT_OTHER_STRING, false }
#define EITHER(text, what) { text, WORD_EITHER, INSTRUMENT_EITHER_##what, false }
#define WIND(text) { text, WORD_FAMILY, SPZ_FAMILY_WOODWIND, false }
#define REGISTER(text) { text, WORD_VOICE, SPZ_FAMILY_WOODWIND, false } /* gives way: 'Piccolo Trumpet' */
#define BRASS(text) { text, WORD_FAMILY, SPZ_FAMILY_BRASS, false }
#define DRUM(text) { text, WORD_FAMILY, SPZ_FAMILY_PERCUSSION, false }
#define KEYS(text) { text, WORD_FAMILY, SPZ_FAMILY_KEYBOARD, false }
#define PLUCK(text) { text, WORD_FAMILY, SPZ_FAMILY_PLUCKED, false }
#define FIGURED(text, family) { text, WORD_FAMILY, SPZ_FAMILY_##family, true }
#define VOICE(text) { text, WORD_VOICE, SPZ_FAMILY_VOICES, false }
#define SURELY(text, family) { text, WORD_FAMILY_SURE, SPZ_FAMILY_##family, false }
#define NTH(text, number) { text, WORD_ORDINAL, number, false }
#define SAYS(text, kind) { text, WORD_##kind, 0, false }

/* vocabulary_further.c: what the five languages of vocabulary.c lack. */
extern const Word further_words[];
extern const size_t further_word_count;
#endif
