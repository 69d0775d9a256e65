/* score.h - a score file as the reader understood it: movements, bars, parts, notes, marks. Views only; times are exact.
 *
 * Time is counted in ticks; a movement says how many ticks make a crotchet (quarter note), so that every written duration
 * of that movement is a whole number of ticks. All times are from the start of the movement as written (repeats not
 * unfolded); spz_movement_played gives the order in which the bars sound. */
#ifndef SPEZZATO_SCORE_H
#define SPEZZATO_SCORE_H

#include "spezzato/status.h"
#include <stddef.h>
#include <stdint.h>

SPZ_C_BEGIN

typedef struct spz_score spz_score;       /* one file */
typedef struct spz_movement spz_movement; /* one movement of it */
typedef int64_t spz_ticks;

/* A fraction in lowest terms; `under` is above 0. */
typedef struct spz_fraction {
    int64_t over, under;
} spz_fraction;

typedef struct spz_pitch { /* sounding */
    signed char step;   /* 0 C .. 6 B */
    signed char alter;  /* semitones: 1 sharp, -1 flat */
    signed char octave; /* 4 begins with middle C */
    short midi;         /* 60 middle C; -1 where it has no pitch */
} spz_pitch;
enum { SPZ_PITCH_TEXT = 16 };
SPZ_API char *spz_pitch_text(spz_pitch pitch, char text[SPZ_PITCH_TEXT]); /* as in data: "Eb4", "F#5", "unpitched" */

/* Reads a MusicXML score, plain or compressed (told apart by content, not by name). On failure `*out` is NULL and one
 * SPZ_ERROR message has gone to the sink. No network, no external entity. Codes: all input codes of status.h. */
SPZ_API spz_status spz_score_read(const char *path, const spz_sink *sink, spz_score **out);

/* The same from memory; `name` is used in messages and as the file name of reports. */
SPZ_API spz_status spz_score_read_memory(const void *data, size_t size, const char *name, const spz_sink *sink,
                                         spz_score **out);
SPZ_API void spz_score_free(spz_score *score);

SPZ_API const char *spz_score_file(const spz_score *score);
SPZ_API size_t spz_score_movement_count(const spz_score *score); /* at least 1 */
SPZ_API const spz_movement *spz_score_movement(const spz_score *score, size_t index); /* NULL past the end */

SPZ_API const char *spz_movement_title(const spz_movement *movement); /* 'Work: movement'; never NULL, may be "" */
SPZ_API const char *spz_movement_file(const spz_movement *movement);
SPZ_API size_t spz_movement_bars(const spz_movement *movement);
SPZ_API const char *spz_movement_bar_number(const spz_movement *movement, size_t bar); /* as printed */
SPZ_API size_t spz_movement_parts(const spz_movement *movement);
SPZ_API const char *spz_movement_part_name(const spz_movement *movement, size_t part);
SPZ_API int spz_movement_year(const spz_movement *movement); /* of composition, when the file states one; 0 if not */

SPZ_C_END
#endif
