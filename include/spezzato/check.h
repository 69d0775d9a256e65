/* check.h - what is doubtful in a score file, before anyone trusts an analysis of it. */
#ifndef SPEZZATO_CHECK_H
#define SPEZZATO_CHECK_H

#include "spezzato/language.h"
#include "spezzato/report.h"

SPZ_C_BEGIN

typedef enum spz_doubt_kind {
    SPZ_DOUBT_FILE,     /* what the reader had to put right or to leave out */
    SPZ_DOUBT_BAR,      /* a bar that holds more or less than its time signature asks for */
    SPZ_DOUBT_LENGTH,   /* parts of different length */
    SPZ_DOUBT_TIE,      /* a tie without its other end */
    SPZ_DOUBT_RANGE,    /* a note that the instrument does not have */
    SPZ_DOUBT_TEMPO,    /* no tempo */
    SPZ_DOUBT_SECTION,  /* a part that could not be named */
    SPZ_DOUBT_DIVISION, /* a division that begins and never ends */
    SPZ_DOUBT_ORDER,    /* repeat signs that contradict each other, bars that are never played */
    SPZ_DOUBT_KIND_COUNT
} spz_doubt_kind;
/* "file", "bar", "length", "tie", "range", "tempo", "section", "division", "order"; "" outside the list. */
SPZ_API const char *spz_doubt_kind_name(spz_doubt_kind kind);

/* Lowest and highest sounding note of an instrument, as orchestral players are asked for it. */
typedef struct spz_range {
    const char *sound;   /* MusicXML sound id or the beginning of several ('wind.flutes.flute') */
    const char *name;    /* in English, as in data */
    int lowest, highest; /* MIDI pitch, 60 middle C */
    const char *source;
} spz_range;
SPZ_API size_t spz_range_count(void); /* rows of the table of ranges */
SPZ_API const spz_range *spz_range_at(size_t index); /* NULL past the end */

typedef struct spz_doubt { /* views that live as long as the list; figures are 0 where the fault has none */
    spz_doubt_kind kind;    /* follows from the fault */
    spz_fault fault;
    spz_severity severity;  /* SPZ_DOUBT, or SPZ_NOTE for what is worth knowing and no fault */
    size_t movement;        /* index; 0 for what concerns the whole file */
    const char *title;      /* of the movement, "" */
    const char *part;       /* as printed; "" for all parts */
    const char *bar, *last_bar; /* as printed: the same for one bar, "" and "" for none */
    long line;              /* in the file; 0 unknown */
    const char *name, *other; /* what the fault calls so, "" */
    long count;             /* of the fault; OUT_OF_RANGE: such notes in the part; PART_ENDS: bars that the part has */
    long of;                /* PART_ENDS: bars that the longest part has */
    spz_fraction holds, asks; /* BAR_OF_...: crotchets in the bar, and as they should be */
    spz_pitch pitch;        /* TIE_..., OUT_OF_RANGE: the note */
    size_t range;           /* OUT_OF_RANGE: index for spz_range_at */
} spz_doubt;

typedef struct spz_doubts spz_doubts;

/* Reads the score and lists what is doubtful: by movement, then in the order of kinds, parts and bars. `settings` NULL: the usual; its
 * corrections of [sections] count. A file that can't be read is an error as in spz_score_read (codes there); its one message goes to the sink. */
SPZ_API spz_status spz_check(const char *path, const spz_settings *settings, const spz_sink *sink, spz_doubts **out);
SPZ_API void spz_doubts_free(spz_doubts *doubts); /* takes NULL */
SPZ_API const char *spz_doubts_file(const spz_doubts *doubts); /* as messages name it */
SPZ_API size_t spz_doubts_count(const spz_doubts *doubts); /* doubts and notes together */
SPZ_API const spz_doubt *spz_doubts_at(const spz_doubts *doubts, size_t index); /* NULL past the end */
/* How many are SPZ_DOUBT: 0 means that the file is clean. */
SPZ_API size_t spz_doubts_grave(const spz_doubts *doubts);

/* The lists of several files as one document: SPZ_AS_TEXT in that language, SPZ_AS_JSON and SPZ_AS_CSV in English; else
 * SPZ_BAD_ARGUMENT. */
SPZ_API spz_status spz_report_doubts(const spz_doubts *const *lists, size_t count, spz_format format, spz_language language, spz_document **out);

SPZ_C_END
#endif
