/* library.h - a library of scores that answers questions: what was heard of each score is kept in one file, and asked with plain conditions.
 *
 * The file is an SQLite database; docs/scores.md explains its tables and views. It is safe under several programs at once; what was told to be
 * kept is on the disk, and a program that is killed loses the scores in hand. A file that is no library, a damaged one and one of a newer edition
 * are told and left as they are. */
#ifndef SPEZZATO_LIBRARY_H
#define SPEZZATO_LIBRARY_H

#include "spezzato/season.h"

SPZ_C_BEGIN

typedef struct spz_library spz_library;
typedef enum spz_library_use { SPZ_LIBRARY_ASK, SPZ_LIBRARY_CHANGE } spz_library_use;

/* SPZ_LIBRARY_CHANGE makes it, with its folders, where it isn't there; SPZ_LIBRARY_ASK brings an older one up to date and changes nothing else.
 * What is wrong has gone to the sink, which is borrowed until it is closed. SPZ_CANNOT_OPEN, SPZ_CANNOT_READ, SPZ_CANNOT_WRITE, SPZ_NO_MEMORY. */
SPZ_API spz_status spz_library_open(const char *path, spz_library_use use, const spz_sink *sink, spz_library **out);
SPZ_API void spz_library_free(spz_library *library); /* closes it */

typedef struct spz_adding {
    const spz_settings *settings; /* the house's; NULL: all defaults */
    int jobs;                     /* scores read at a time, 1..64; 0: 1 */
    int year;                     /* of composition, where the scores don't say it; 0: none */
    void (*progress)(void *context, const spz_progress *progress); /* called from the calling thread; NULL */
    bool (*stop)(void *context);  /* asked between scores; NULL */
    void *context;
} spz_adding;

typedef struct spz_added {
    size_t files;      /* looked at */
    size_t unchanged;  /* of these, known already */
    size_t heard;      /* read and kept */
    size_t unusable;   /* that can't be used: each was one SPZ_ERROR */
    size_t movements, bars; /* of those heard */
} spz_added;

/* Hears all scores (.musicxml, .mxl, .xml) that `places` name: files, and folders with all folders in them, hidden ones left out. What is known
 * under the same terms (bytes, settings, year, edition) is passed over. Each score is kept by itself, as soon as it was heard. SPZ_INTERRUPTED (what
 * was heard until then is kept), SPZ_CANNOT_WRITE, SPZ_CANNOT_READ, SPZ_BAD_SETTINGS, SPZ_NO_MEMORY. A place that isn't there is an SPZ_ERROR and counts
 * as unusable. */
SPZ_API spz_status spz_library_add(spz_library *library, const char *const *places, size_t count, const spz_adding *how, const spz_sink *sink, spz_added *added);

/* Takes files out: those of that path, below that folder, or of the work of that name. How many; 0 where it names none. */
SPZ_API spz_status spz_library_forget(spz_library *library, const char *name, size_t *forgotten);

typedef struct spz_library_state {
    size_t works, movements, passages, files;
    size_t missing;    /* files that are not there any more */
    size_t changed;    /* files whose bytes are others now */
    size_t outdated;   /* files heard under other settings than these, or by another edition: `add` hears them again */
    size_t unusable;   /* files that could not be used */
    size_t faults;     /* of the library's own file */
} spz_library_state;

/* Holds the library against the disk: each file that is missing or changed is an SPZ_DOUBT, each fault of its own an SPZ_ERROR. `settings` NULL: the
 * defaults. */
SPZ_API spz_status spz_library_check(spz_library *library, const spz_settings *settings, const spz_sink *sink, spz_library_state *out);

/* From a call to its answer, whatever the octave: by steps of the staff. */
typedef enum spz_interval {
    SPZ_ANY_INTERVAL, SPZ_AT_UNISON, SPZ_AT_SECOND, SPZ_AT_THIRD, SPZ_AT_FOURTH, SPZ_AT_FIFTH, SPZ_AT_SIXTH, SPZ_AT_SEVENTH, SPZ_AT_OCTAVE,
    SPZ_INTERVAL_COUNT
} spz_interval;
SPZ_API const char *spz_interval_name(spz_interval interval); /* as in data: "unison" .. "octave"; "" for any */
SPZ_API bool spz_interval_from_name(const char *name, spz_interval *out); /* false, and `out` unchanged, for any other name */

enum { SPZ_SHELF_SECTIONS = 5 }; /* Vn I, Vn II, Va, Vc, Db */

/* What is asked for; all 0 asks for everything. A work is found where it meets all that is said of works, and has a movement that meets all that is
 * said of movements; of passages it shows those that meet all that is said of passages. */
typedef struct spz_conditions {
    const char *composer, *title; /* part of it, whatever the capitals (ASCII's); NULL: any */
    int from, before;             /* year of composition: from this one on; before that one; 0: any */
    double shortest, longest;     /* minutes that the work lasts by its tempo marks; 0: any */
    int players[SPZ_SHELF_SECTIONS]; /* works that these can play; 0: any number */
    bool too_large;               /* instead: works that these can't play */
    bool two_orchestras, thirds;  /* only works for two; with violins in three */
    const char *seating;          /* movements whose recommended seating is one of these, '|' between whole names; NULL: any */
    unsigned kinds;               /* sum of 1u << spz_kind; 0: any */
    double strength;              /* passages at least as strong */
    spz_section between[2];       /* the sides of a passage; one alone: it has a part in it. SPZ_NO_SECTION: any */
    bool led;                     /* the first of them leads */
    spz_interval interval;        /* of its answer */
    size_t first;                 /* spz_library_find: works that are listed at most; 0: all */
} spz_conditions;

typedef struct spz_shelf_passage {
    spz_kind kind;
    const char *sides[2];              /* names of sections; "" for none */
    const char *first_bar, *last_bar;  /* as printed */
    const char *letter;
    double strength;
    int turns;
    spz_interval interval;             /* SPZ_ANY_INTERVAL where it has none */
} spz_shelf_passage;

typedef struct spz_shelf_movement {
    const char *title, *file;
    size_t number, bars;         /* place in its file, from 1; its bars */
    int year;                    /* 0 not known */
    double seconds;              /* that it lasts; 0 not known */
    const char *confidence;      /* "firm", "leaning", "open" */
    const char *arrangement;     /* recommended; "" where nothing was judged */
    double points;               /* given up in the seating that was asked for */
    const char *weakens;         /* what that weakens; "" */
    size_t found;                /* passages that meet what was asked */
    const spz_shelf_passage *passages; /* strongest first; at most as many as were asked for */
    size_t passage_count;
} spz_shelf_movement;

typedef struct spz_shelf_work {
    const char *composer, *name;
    int year;                    /* earliest of its movements; 0 not known */
    double seconds;              /* of the movements whose length is known */
    size_t lengths_unknown;      /* movements without a tempo mark */
    int orchestras;              /* 1 or 2 */
    bool thirds;                 /* violins in three somewhere */
    int needs[SPZ_SHELF_SECTIONS]; /* least number of players; 0 where the section does not play */
    const char *seating;         /* fits, partners: the one that was asked for, or that serves both; "" */
    double points;               /* given up in it by all movements */
    double partner;              /* partners: given up in it by the other work */
    const spz_shelf_movement *movements; /* those found, in order */
    size_t movement_count;
} spz_shelf_work;

/* An answer: works in the order in which they answer the question best. */
typedef struct spz_shelf spz_shelf;
typedef enum spz_shelf_kind { SPZ_SHELF_FOUND, SPZ_SHELF_SHOWN, SPZ_SHELF_FITS, SPZ_SHELF_PARTNERS, SPZ_SHELF_ALIKE } spz_shelf_kind;
SPZ_API spz_shelf_kind spz_shelf_kind_of(const spz_shelf *shelf); /* which question it answers */
SPZ_API size_t spz_shelf_count(const spz_shelf *shelf); /* works that are listed */
SPZ_API size_t spz_shelf_total(const spz_shelf *shelf); /* works that answer, listed or not (`first`) */
SPZ_API const spz_shelf_work *spz_shelf_at(const spz_shelf *shelf, size_t index); /* NULL past the end */
SPZ_API const char *spz_shelf_question(const spz_shelf *shelf);                   /* FITS: the seating; SHOWN, PARTNERS: the name asked for; ALIKE: the passage in words of data; else "" */
SPZ_API void spz_shelf_free(spz_shelf *shelf); /* takes NULL */

/* By composer, work and place. `most`: passages shown of a movement. SPZ_BAD_ARGUMENT for conditions that contradict each other. */
SPZ_API spz_status spz_library_find(spz_library *library, const spz_conditions *conditions, size_t most, spz_shelf **out);
/* The works of that name: whole, or with its composer before it ('Caldremi: Concerto grosso'), else those whose name has it in it. An empty
 * shelf where there is none. */
SPZ_API spz_status spz_library_show(spz_library *library, const char *name, size_t most, spz_shelf **out);

/* As spz_seatings_meant, of the seatings that the library's works were compared in. An empty library knows of none: SPZ_OK and "". */
SPZ_API spz_status spz_library_seatings_meant(spz_library *library, const char *words, char *out, size_t size);
/* Which works that meet the conditions lose least in the seating that the evening has anyway: best first, at most `most` works. `seating`: as the words of
 * spz_library_seatings_meant; of several the better one for each work. NULL: the one in which the work `with` loses least; that work is then left out. A movement for
 * which nothing speaks loses nothing. An empty shelf where no work, or more than one, is named `with`. */
typedef struct spz_evening {
    const char *seating, *with;
} spz_evening;
SPZ_API spz_status spz_library_fits(spz_library *library, const spz_evening *evening, const spz_conditions *conditions, size_t most, spz_shelf **out);
/* Which works that meet the conditions could share a concert with the work `name` without a chair being moved: one arrangement for both, the one in which they lose least
 * together, and as many orchestras. */
SPZ_API spz_status spz_library_partners(spz_library *library, const char *name, const spz_conditions *conditions, size_t most, spz_shelf **out);
/* Other works with passages like the strongest one of that kind of the work `name` at the bar of that printed number: of the same kind, the same section leads the same
 * other one at the same interval. At most `first` works are listed (0: all), `passages` of each movement are shown. `name` may also be that of a movement: its title, or a part of it that no other has. SPZ_EMPTY where nothing
 * has that name, SPZ_BAD_ARGUMENT where several have it. */
SPZ_API spz_status spz_library_alike(spz_library *library, const char *name, const char *bar, size_t first, size_t passages, spz_shelf **out);

/* The answer as a document: SPZ_AS_TEXT, SPZ_AS_CSV, SPZ_AS_JSON, SPZ_AS_HTML. */
SPZ_API spz_status spz_report_shelf(const spz_shelf *shelf, spz_format format, const spz_season_look *look, spz_document **out);

SPZ_C_END
#endif
