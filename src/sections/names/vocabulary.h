/* vocabulary.h - the words that part names are made of, in English, German, French, Italian and Spanish, and in
 * the further languages of vocabulary_further.c. */
#ifndef SECTIONS_NAMES_VOCABULARY_H
#define SECTIONS_NAMES_VOCABULARY_H
#include "sections/names/name_tokens.h"
#include "spezzato/sections.h"

typedef enum Instrument {
    INSTRUMENT_NONE,
    INSTRUMENT_VIOLIN, INSTRUMENT_VIOLA, INSTRUMENT_CELLO, INSTRUMENT_BASS,
    INSTRUMENT_BASS_LINE,    /* 'Bassi': cellos and basses unless the score gives the cellos a part of their own */
    INSTRUMENT_CONTINUO,     /* the same with a keyboard */
    INSTRUMENT_STRINGS,      /* 'Strings': not said which */
    INSTRUMENT_OTHER_STRING, /* bowed, but of no section: viols, viola d'amore */
    INSTRUMENT_OTHER,        /* its family says what */
    /* Words that mean a string section among strings and a voice among voices. */
    INSTRUMENT_EITHER_BASS, INSTRUMENT_EITHER_VIOLA, INSTRUMENT_EITHER_VIOLIN
} Instrument;

typedef enum WordKind {
    WORD_UNKNOWN,
    WORD_STRING,    /* value: Instrument */
    WORD_EITHER,    /* value: Instrument */
    WORD_SOLO_KIND, /* value: Instrument; a special member of a family that one player plays: violino piccolo */
    WORD_FAMILY,    /* value: spz_family */
    WORD_FAMILY_SURE, /* the same, outranks other family words of the name: 'English' horn */
    WORD_VOICE,     /* a register that gives way to an instrument: 'Tenor' trombone */
    WORD_ORDINAL,   /* value: number */
    WORD_SUFFIX,    /* ordinal ending after digits: 'st', 'ers' */
    WORD_AND, WORD_SOLO, WORD_CONCERTINO, WORD_TUTTI, WORD_REST, WORD_ORCHESTRA, WORD_CHOIR, WORD_DESK, WORD_DIVIDED, WORD_COUNT, WORD_COUNTED,
    WORD_HALF, WORD_REDUCTION, WORD_FILLER
} WordKind;

typedef struct Word {
    const char *text; /* folded; a final '*' stands for any ending; several words with single spaces */
    WordKind kind;
    int value;
    bool more;        /* string words: names players, not a player; family words: an instrument of the continuo */
} Word;

/* The longest entry that matches the tokens from `index` on; `taken` gets how many tokens it covers. NULL when none does. */
const Word *vocabulary_find(const NameTokens *tokens, size_t index, size_t *taken);
#endif
