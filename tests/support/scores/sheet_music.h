/* sheet_music.h - a score in notation as a file on the disk, read as far as its seating: for tests of what is printed about it. */
#ifndef TESTS_SHEET_MUSIC_H
#define TESTS_SHEET_MUSIC_H
#include "spezzato/spezzato.h"

typedef struct SheetMusic {
    char path[200];
    char *xml; /* as it stands in the file */
    size_t length;
    spz_reading *reading;
} SheetMusic;

/* Each fails the test in hand when something goes wrong. */
SheetMusic sheet_music(const char *notation);
SheetMusic sheet_music_of_bytes(const char *bytes, size_t length); /* reading stays NULL */
void sheet_music_end(SheetMusic *music);

spz_movement_reading first_movement(const SheetMusic *music);
/* The text of a document, which is freed; in memory that the caller frees. */
char *text_of(spz_document *document, size_t *length);
/* How often `what` stands in `text`. */
int count_of(const char *text, const char *what);
#endif
