/* notes_language.h - the writer's notes in one language: each is a file of its own with the same few functions, written by hand, since
 * sentences can't be put together from words alone. */
#ifndef WORDING_NOTES_LANGUAGE_H
#define WORDING_NOTES_LANGUAGE_H
#include "citations/citation_facts.h"
#include "support/buffer.h"

typedef struct NotesLanguage {
    const char *code;
    const char *heading; /* over the citations */
    const char *nothing; /* where there is nothing to cite */
    void (*place)(Buffer *out, const Citation *citation);           /* 'Bars 66–71, 3 bars after letter B, at 2:15' */
    void (*sentence)(Buffer *out, const Citation *citation);        /* what to listen for */
    void (*paragraph)(Buffer *out, const Overview *overview);       /* the movement as a whole */
    void (*times)(Buffer *out, const Overview *overview);           /* how the times were found */
} NotesLanguage;
extern const NotesLanguage notes_english, notes_german, notes_french;

/* notes_words.c: what the languages share. */
enum { BODY_TEXT = 96, CLOCK_TEXT = 32 };
char *clock_text(double seconds, char text[CLOCK_TEXT]); /* '2:15', '1:02:15' */

/* What an interval is called, by its size: an index, or -1 where it has no name that a listener would use. */
typedef enum IntervalName {
    INTERVAL_NAMELESS = -1, INTERVAL_SAME, INTERVAL_STEP, INTERVAL_THIRD, INTERVAL_FOURTH, INTERVAL_FIFTH, INTERVAL_SIXTH, INTERVAL_SEVENTH,
    INTERVAL_OCTAVE, INTERVAL_TENTH, INTERVAL_TWELFTH, INTERVAL_TWO_OCTAVES, INTERVAL_NAMES
} IntervalName;
IntervalName interval_name(int semitones);

/* Bars as printed with an en dash between: '66–71'. A bar without a number shows its place in the file in brackets. */
void put_bars(Buffer *out, const Citation *citation);
bool letter_is_number(const Citation *citation); /* a rehearsal figure rather than a letter */
#endif
