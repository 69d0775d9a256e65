/* sheets.h - documents for the hands that use them: what the librarian writes into the parts, the same put into the score file, and
 * what the programme-note writer cites. Nothing is found here that spz_passages_find hasn't found. */
#ifndef SPEZZATO_SHEETS_H
#define SPEZZATO_SHEETS_H

#include "spezzato/allotment.h"
#include "spezzato/language.h"
#include "spezzato/report.h"

SPZ_C_BEGIN

/* Which passages the sheets and the marks are about. */
typedef struct spz_sheet_options {
    double strength;         /* this strength at least, 0..1 */
    unsigned kinds;          /* sum of 1u << spz_kind; 0 for all kinds */
    const char *arrangement; /* seating by its name, for 'across the stage'; NULL: the one recommended for each movement */
    int year;                /* spz_score_mark: of composition; 0: as the score says */
    spz_language language;   /* of what is written; tables (SPZ_AS_CSV) are English */
} spz_sheet_options;
#define SPZ_SHEET_USUAL (SPZ_VALUE(spz_sheet_options){ 0.5, 0, NULL, 0, SPZ_ENGLISH })

/* For each string part, in bar order, what to write into it: who leads and who answers, how a divided section shares its lines desk by
 * desk, where it is one again, with whom it moves. `readings` have to reach SPZ_TO_SEATING and be made with the same `settings` (NULL:
 * all defaults); SPZ_AS_TEXT, SPZ_AS_CSV, SPZ_AS_JSON, SPZ_AS_HTML (one file, for paper of A4 or Letter size). SPZ_BAD_ARGUMENT for another format,
 * a reading that stops before, an arrangement that the settings don't know; SPZ_NO_MEMORY. */
SPZ_API spz_status spz_sheet_parts(const spz_reading *const *readings, size_t count, const spz_settings *settings,
                                   const spz_sheet_options *options, spz_format format, spz_document **out);

/* For the bowing committee: gestures that two or more sections share, together or one after the other, held against each other: where slurs, dots, lines,
 * accents, bow marks, pizzicato and tremolo differ, by bar and beat; as HTML with their notes above each other. As above; SPZ_AS_TEXT, SPZ_AS_HTML,
 * SPZ_AS_CSV, SPZ_AS_JSON. `settings` and the options' arrangement are not needed. */
SPZ_API spz_status spz_sheet_bowings(const spz_reading *const *readings, size_t count, const spz_settings *settings,
                                     const spz_sheet_options *options, spz_format format, spz_document **out);

/* For the rehearsal: the passages by who has to be called for them, the longest and most exposed first, how long each lasts at the tempo in
 * force, what to listen for and from where. As above; SPZ_AS_TEXT, SPZ_AS_HTML, SPZ_AS_CSV, SPZ_AS_JSON. */
SPZ_API spz_status spz_sheet_rehearsal(const spz_reading *const *readings, size_t count, const spz_settings *settings,
                                       const spz_sheet_options *options, spz_format format, spz_document **out);

/* The score of `path` with the same things put in as MusicXML directions (words, brackets, dashed lines). Nothing else changes: plain
 * text stays the same byte for byte, whatever its encoding; of a compressed score all other members stay as they are packed. Marks
 * of an earlier run are replaced. `compressed`: the result is a compressed score (a zip archive: the document is not text). `marks` (may be NULL)
 * counts the directions. The result can be valid MusicXML only where the input was: each direction has an id, which MusicXML knows from 3.1 on.
 * Codes of spz_reading_make; SPZ_NOT_XML for an encoding in which nothing can be added (UTF-32 and others that don't write ASCII
 * as ASCII); SPZ_BAD_ARGUMENT for a collection of several scores that is to be written as one plain file, or an unknown arrangement. Every
 * fault of the file or the options has gone to the sink as one SPZ_ERROR. */
SPZ_API spz_status spz_score_mark(const char *path, const spz_settings *settings, const spz_sheet_options *options, bool compressed,
                                  const spz_sink *sink, spz_document **out, size_t *marks);
/* The score without the marks of spz_score_mark: what was marked comes back byte for byte (a compressed score: each of its members). */
SPZ_API spz_status spz_score_unmark(const char *path, bool compressed, const spz_sink *sink, spz_document **out, size_t *marks);

/* A moment of a performance that the user knows: the bar of that printed number begins, the first time that it sounds. */
typedef struct spz_note_anchor {
    const char *bar;        /* borrowed */
    double seconds;         /* from the first note */
} spz_note_anchor;

typedef struct spz_note_options {
    spz_language language;
    const double *lasts;    /* seconds that each movement lasts, in order of the readings' movements; NULL or 0: by the score's tempo marks */
    size_t lasts_count;
    size_t citations;       /* at most so many a movement; 0: all passages of the strength */
    double strength;        /* this strength at least */
    const spz_note_anchor *anchors; /* in order of time; they hold for every movement of the readings, so give one */
    size_t anchor_count;
    bool notation;          /* SPZ_AS_HTML: with the notes of each citation as a picture */
    const char *engraver, *cache; /* as in spz_report_options: folder of what engraves them, and where engravings are kept; NULL: drawn; not kept */
    bool listeners;         /* for the audience: a time line of each movement as a picture, SPZ_AS_HTML or, of one movement, SPZ_AS_SVG */
} spz_note_options;
#define SPZ_NOTES_USUAL (SPZ_VALUE(spz_note_options){ SPZ_ENGLISH, NULL, 0, 6, 0.5, NULL, 0, false, NULL, NULL, false })

/* What a picture of notes is saved as. PDF and EPS are made by rsvg-convert (librsvg), where it is at hand. */
typedef enum spz_picture { SPZ_PICTURE_SVG, SPZ_PICTURE_PDF, SPZ_PICTURE_EPS } spz_picture;
/* Takes a picture and its name without an ending, unlike all others: 'symphony-1-66-71'. Owns the document. Anything but SPZ_OK ends it all. */
typedef spz_status spz_picture_taker(void *context, const char *name, spz_document *picture);
/* Whether pictures can be saved so on this machine. */
SPZ_API bool spz_picture_possible(spz_picture form);
/* The notes of each citation, the first call and its answer, for the booklet: engraved where `options` names an engraver that can do it, else drawn. Also
 * SPZ_BAD_ARGUMENT for a form that isn't possible. */
SPZ_API spz_status spz_sheet_notes_pictures(const spz_reading *const *readings, size_t count, const spz_note_options *options, spz_picture form,
                                            spz_picture_taker *take, void *context);

/* For the programme-note writer: a paragraph for each movement, and the passages most worth citing, chosen for strength and variety, each
 * with bars, rehearsal letter, the time at which it sounds and one sentence about what to listen for. SPZ_AS_TEXT, SPZ_AS_MARKDOWN,
 * SPZ_AS_HTML, SPZ_AS_JSON, SPZ_AS_CSV (the bare citations with their times), SPZ_AS_ODT (a word processor's file with styles: not text). Readings have to reach SPZ_TO_SEATING. */
SPZ_API spz_status spz_sheet_notes(const spz_reading *const *readings, size_t count, const spz_note_options *options,
                                   spz_format format, spz_document **out);

/* Seconds from the first sound to the moment `when` (ticks as written) of bar `bar`, the `pass`th time that the bar sounds (0: the first),
 * repeats counted, by the tempo marks; `lasts` above 0 stretches the movement to that many seconds. Before the first tempo mark, and where there
 * is none, the first one or 120 crotchets a minute holds. Negative when the bar doesn't sound so often. */
SPZ_API double spz_movement_sounding(const spz_movement *movement, size_t bar, spz_ticks when, size_t pass, double lasts);
/* A length of time as people write it, in seconds: '7:10', '7.10', '1:02:15', '430', the last with decimals where
 * wanted (430.5; but minutes and two figures behind a point, 7.10, are minutes and seconds). Below 0 where it is none. */
SPZ_API double spz_seconds_from_text(const char *text);
/* Length of the movement as played, by its tempo marks, in seconds. */
SPZ_API double spz_movement_duration(const spz_movement *movement);

SPZ_C_END
#endif
