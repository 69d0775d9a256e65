/* notation_writer.h - what the parts of the writer of MusicXML share. */
#ifndef TESTS_NOTATION_WRITER_H
#define TESTS_NOTATION_WRITER_H
#include "notation_score.h"
#include <libxml/xmlwriter.h>

/* Accidentals in force in a bar of one staff, by step and octave. */
struct accidentals {
    int alter[7][10];
};

struct writer {
    xmlTextWriterPtr xml;
    struct score *score;
    long ticks_per_division;
    bool failed;
    const struct part *part;
    int bar, staff;
    struct accidentals accidentals;
    const struct event *tied[MOST_STAVES][MOST_VOICES]; /* the event whose tie is open, with its octave shift */
    int tied_shift[MOST_STAVES][MOST_VOICES];
};

/* Elements and attributes; a failure is kept in w->failed (notation_xml.c). */
void open_element(struct writer *w, const char *name);
void close_element(struct writer *w);
void attribute(struct writer *w, const char *name, const char *value);
void number_attribute(struct writer *w, const char *name, long value);
void leaf(struct writer *w, const char *name, const char *text);
void number_leaf(struct writer *w, const char *name, long value);
void empty(struct writer *w, const char *name);
/* With one attribute, unless its value is NULL. */
void empty_with(struct writer *w, const char *name, const char *attribute_name, const char *value);

/* Clef, key, time and transposition where they change in the bar at hand; its key as written, in sharps (notation_write_signs.c). */
void write_attributes(struct writer *w);
int key_at(const struct writer *w);
/* What stands above and below the notes; `bar`: only what that bar has not left to another staff, NULL for all. */
void write_directions(struct writer *w, const struct direction *list, const struct bar *bar);

/* The notes and rests of a voice of the bar at hand (notation_write_notes.c). */
void write_voice(struct writer *w, const struct bar *bar, int number);
/* A bar of a staff begins: the key alone is in force. */
void reset_accidentals(struct writer *w);
#endif
