/* listen.h - a passage made audible in two seatings, from one seat of the hall: the same players, notes and level, two places to sit.
 *
 * A sketch of directions and distances with synthetic instruments, not a forecast of a hall. docs/listening.md tells how it is made, and by
 * which sources. */
#ifndef SPEZZATO_LISTEN_H
#define SPEZZATO_LISTEN_H

#include "spezzato/reading.h"
#include "spezzato/report.h"

SPZ_C_BEGIN

/* Forms of sound files, each of two channels at 48 kHz. */
typedef enum spz_sound_form { SPZ_WAV, SPZ_FLAC, SPZ_OPUS, SPZ_SOUND_FORM_COUNT } spz_sound_form; /* 24 bit; 24 bit; Ogg Opus */
SPZ_API const char *spz_sound_form_name(spz_sound_form form); /* as files end: "wav", "flac", "opus"; "" outside the list */

/* What is to be heard. Zeroed but for `engine` and the arrangements it is the first bar from the front seats. */
typedef struct spz_listen_wish {
    size_t first, last;                              /* bars, indices */
    const char *arrangements[SPZ_LISTEN_VERSIONS];   /* by name */
    bool thirds, two_orchestras;                     /* as spz_verdict_thirds and spz_verdict_orchestras say of the score */
    spz_seat seat;
    spz_players solo;    /* groups that are heard alone; 0: everybody */
    double tempo;        /* crotchets a minute throughout; 0: as the score says, 90 where it says nothing */
    bool loudspeakers;   /* false: for headphones */
    const char *font;    /* SoundFont, a file; NULL: the General MIDI one of the system */
    const char *ears;    /* head-related impulse responses, a SOFA file; NULL: libmysofa's own */
    const char *engine;  /* the library of sound that was built beside the program */
} spz_listen_wish;

typedef struct spz_listening spz_listening;

/* Whether sound can be made here. SPZ_CANNOT_OPEN and one SPZ_ERROR that names what to install where it can't. */
SPZ_API spz_status spz_listen_ready(const char *engine, const spz_sink *sink);
/* Plays and hears the passage in both seatings. Besides SPZ_NO_MEMORY: SPZ_CANNOT_OPEN where something of spz_listen_ready or one of the
 * files is missing, SPZ_BAD_ARGUMENT for bars that are not there or an arrangement that isn't known, SPZ_BAD_SETTINGS where the players don't fit on the stage,
 * SPZ_EMPTY where nothing sounds in those bars. One SPZ_ERROR has gone to the sink. `reading` must hold its sections. */
SPZ_API spz_status spz_listen(const spz_movement_reading *reading, const spz_settings *settings, const spz_listen_wish *wish,
                              const spz_sink *sink, spz_listening **out);
/* The same from several seats at once, 1 to SPZ_SEAT_COUNT of them (`wish->seat` is not looked at): every instrument is played once for all, so that it takes much less time than one
 * after the other, and each of `out` is byte for byte what spz_listen gives from that seat. Each further seat takes about 40 MB more for half a
 * minute of thirty sources (measured). As spz_listen; all of `out` is NULL where it fails. */
SPZ_API spz_status spz_listen_seats(const spz_movement_reading *reading, const spz_settings *settings, const spz_listen_wish *wish, const spz_seat *seats, size_t count,
                                    const spz_sink *sink, spz_listening **out);
SPZ_API void spz_listening_free(spz_listening *listening); /* takes NULL */
SPZ_API double spz_listening_seconds(const spz_listening *listening); /* how long each version lasts */
SPZ_API const char *spz_listening_bar(const spz_listening *listening, bool last); /* as printed */
SPZ_API const char *spz_listening_arrangement(const spz_listening *listening, size_t version); /* its name; `version` 0 or 1 */
SPZ_API spz_seat spz_listening_seat(const spz_listening *listening); /* from which it is heard */
SPZ_API bool spz_listening_for_loudspeakers(const spz_listening *listening); /* false: for headphones */
SPZ_API size_t spz_listening_sources(const spz_listening *listening); /* desks, soloists and winds that have a place of their own */
/* Loudness in LUFS and true peak in dB of a version as it is written (ITU-R BS.1770), and by how many dB it was raised for that. */
typedef struct spz_level {
    double loudness, peak, gain;
} spz_level;
SPZ_API spz_level spz_listening_level(const spz_listening *listening, size_t version); /* all 0 for a version that there isn't */
SPZ_API bool spz_listening_writes(const spz_listening *listening, spz_sound_form form); /* whether libsndfile, as it is installed, writes it */
/* A version as a sound file in memory. */
SPZ_API spz_status spz_listening_file(const spz_listening *listening, size_t version, spz_sound_form form, const spz_sink *sink, spz_document **out);
/* Both versions as a script for the page beside which it lies: it hands `name` and two data: addresses (RFC 2397) to the page's player. Ogg Opus,
 * or what is written of the other forms. */
SPZ_API spz_status spz_listening_script(const spz_listening *listening, const char *name, const spz_sink *sink, spz_document **out);
/* The samples themselves: left and right in turn, from -1 to 1; `*count` pairs of them. */
SPZ_API const float *spz_listening_samples(const spz_listening *listening, size_t version, size_t *count);

/* What was made audible, as text: the seat, each seating with its level and its files, and what it is not. `files` holds `count` names, first
 * and second seating in turn. */
SPZ_API spz_status spz_report_listening(const spz_listening *listening, const char *const *files, size_t count, spz_language language, spz_document **out);

SPZ_C_END
#endif
