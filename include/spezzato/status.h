/* status.h - what a call of the library can answer, and how it speaks to its caller.
 *
 * Ownership law of all public headers: arguments are borrowed for the length of the call. An object handed out through a last argument `T **out`
 * (spz_..._read, _new, _find, _judge, _plan, _make, _open, _of ..., spz_check, the documents of spz_report_...) is the caller's, to be given to
 * the ..._free of its type, which takes NULL; on failure `*out` is NULL. So is the verdict that spz_reading_take_verdict returns. Every other
 * pointer handed out is a const view that lives as long as the object it was asked of. Where a function takes an argument over, or borrows it
 * for longer than the call, it says so. Where it asks for room for a text, it writes there and returns it.
 *
 * Threads: the library keeps nothing between calls that could be changed, so several threads may use it at the same time, each with objects of
 * its own. An object that nobody changes may be read by several threads at once; one that is changed (settings that are set, a report that
 * grows, a reading whose verdict is taken, anything that is freed) belongs to one thread at that time. A sink is called from the thread that
 * made the call. libxml2 is set up by the library itself, once, when the first score is read. It never prints and never exits. */
#ifndef SPEZZATO_STATUS_H
#define SPEZZATO_STATUS_H

#include <stdbool.h>
#include <stddef.h>

#if defined(__GNUC__)
#define SPZ_API __attribute__((visibility("default")))
#else
#define SPZ_API
#endif

/* The headers are for C11 and C++11. */
#ifdef __cplusplus
#define SPZ_C_BEGIN extern "C" {
#define SPZ_C_END }
#define SPZ_VALUE(type) type
#else
#define SPZ_C_BEGIN
#define SPZ_C_END
#define SPZ_VALUE(type) (type)
#endif

SPZ_C_BEGIN

typedef enum spz_status {
    SPZ_OK = 0,
    SPZ_NO_MEMORY,     /* the system gave no more memory; the object of the call is unchanged */
    SPZ_BAD_ARGUMENT,  /* the caller asked for something that does not exist */
    SPZ_CANNOT_OPEN,   /* no such file, or no permission */
    SPZ_CANNOT_READ,   /* reading stopped with an error of the system */
    SPZ_CANNOT_WRITE,  /* writing failed: disk full, no permission */
    SPZ_EMPTY,         /* a file of no bytes, or a score of no bars */
    SPZ_NOT_XML,       /* not well formed, cut off, or in an encoding that can't be read */
    SPZ_NOT_MUSICXML,  /* XML, but no score */
    SPZ_BAD_ARCHIVE,   /* a compressed score that can't be unpacked */
    SPZ_OVER_LIMIT,    /* larger, deeper or denser than any real score: see docs/formats.md */
    SPZ_BAD_MUSIC,     /* a time or pitch that makes no sense */
    SPZ_BAD_SETTINGS,  /* a settings file or a table that can't be used */
    SPZ_NO_STRINGS,    /* nothing to seat: no string sections in the score */
    SPZ_INTERRUPTED,   /* the user stopped the run */
    SPZ_STATUS_COUNT
} spz_status;

/* One plain sentence for each status, never NULL; for a value outside the list too. */
SPZ_API const char *spz_status_text(spz_status status);

typedef enum spz_severity { SPZ_NOTE, SPZ_DOUBT, SPZ_ERROR } spz_severity;

/* What is doubtful in a score. In brackets: what `name`, `other` and `count` of a message or a doubt mean there. */
typedef enum spz_fault {
    SPZ_NO_FAULT,
    /* what the reader had to put right or to leave out */
    SPZ_FAULT_BRACKET_NOT_OPENED,
    SPZ_FAULT_PART_LISTED_TWICE,      /* [name: its id] */
    SPZ_FAULT_PART_NOT_LISTED,        /* [name: its id] */
    SPZ_FAULT_PART_WITHOUT_MUSIC,     /* [name: of the part] */
    SPZ_FAULT_REPEAT_BEFORE_START,    /* a sign that repeats bars, before there are any */
    SPZ_FAULT_REPEAT_COUNT,           /* a sign that repeats no number of bars [name: what it says] */
    SPZ_FAULT_SLASHES,                /* they stand for music that is not there */
    SPZ_FAULT_CHORD_NOTE_ALONE,
    SPZ_FAULT_NO_DURATION,
    SPZ_FAULT_STEP_BEHIND_BAR,        /* a step back before the bar's beginning */
    SPZ_FAULT_NO_DIVISIONS,
    SPZ_FAULT_REPEAT_AT_FIRST_BAR,
    SPZ_FAULT_REPEAT_INSIDE_BAR,
    SPZ_FAULT_REPEATS_CONTRADICT,
    SPZ_FAULT_NOTE_NAME,              /* [name: what stands there] */
    SPZ_FAULT_NOTE_INCOMPLETE,
    SPZ_FAULT_NOTE_BEYOND,
    SPZ_FAULT_ALTER,                  /* likewise */
    SPZ_FAULT_OCTAVE,                 /* likewise */
    SPZ_FAULT_DURATION,               /* likewise */
    SPZ_FAULT_DURATION_ROUNDED,       /* likewise */
    SPZ_FAULT_STAFF,                  /* likewise */
    SPZ_FAULT_STAVES,                 /* likewise */
    SPZ_FAULT_OFFSET,                 /* likewise */
    SPZ_FAULT_TRANSPOSITION,          /* likewise */
    SPZ_FAULT_SIGNATURE,              /* likewise */
    SPZ_FAULT_DIVISIONS,              /* likewise */
    SPZ_FAULT_TEMPO,                  /* likewise */
    SPZ_FAULT_SIGNS_LEFT_OUT,         /* [name: how many are read] */
    SPZ_FAULT_TEXT_CUT,               /* [name: how it begins] */
    SPZ_FAULT_NO_UTF8,
    SPZ_FAULT_BAR_OVERFULL,           /* by one part, while all others agree with the signature */
    /* what was doubtful when the parts were named */
    SPZ_FAULT_GUIDE,                  /* taken for a guide below the score */
    SPZ_FAULT_SOLOIST_BELOW,          /* taken for a soloist there */
    SPZ_FAULT_RIPIENO,                /* taken for one behind a concertino */
    SPZ_FAULT_SECOND_ORCHESTRA,       /* taken for one */
    SPZ_FAULT_STRINGS_UNTOLD,         /* strings of some section */
    SPZ_FAULT_PART_UNTOLD,            /* nothing says what it is */
    SPZ_FAULT_GUESSED,                /* taken for a section by clef, range and place [name: the section] */
    SPZ_FAULT_VIOLINS_UNNUMBERED,     /* taken for third violins [count: violin parts without a number] */
    SPZ_FAULT_VIOLINS_TOO_MANY,       /* the same, numbered past three */
    SPZ_FAULT_CORRECTION_STAFF,       /* a correction names a staff that isn't there [name = other: the entry] */
    SPZ_FAULT_CORRECTION_VOICE,       /* likewise a voice */
    SPZ_FAULT_CORRECTION_PART,        /* likewise a part [name: its key; other: the score] */
    SPZ_FAULT_CORRECTION_BAR,         /* a line of [bars] names a bar that isn't there [name: the line; other: the score] */
    SPZ_FAULT_NAME_UNKNOWN,
    SPZ_FAULT_NO_SECTION,             /* a string instrument of no section */
    /* what spz_check looks for: check.h says what figures come with these */
    SPZ_FAULT_BAR_OF_ALL,             /* a bar that all parts fill alike, too much or too little */
    SPZ_FAULT_BAR_OF_PART,            /* a bar that the part fills too much or too little */
    SPZ_FAULT_PART_ENDS,
    SPZ_FAULT_TIE_WITHOUT_END,
    SPZ_FAULT_TIE_WITHOUT_BEGINNING,
    SPZ_FAULT_OUT_OF_RANGE,
    SPZ_FAULT_NO_TEMPO,
    SPZ_FAULT_LATE_TEMPO,
    SPZ_FAULT_DIVISION_OPEN,          /* [name: the words that divide; other: the bar with which the division is taken to end, "" for the last] */
    SPZ_FAULT_DIVISION_NOT_PLAYED,    /* likewise */
    SPZ_FAULT_TOO_FEW_PLAYERS,        /* a division takes more players than there are [name: the section; other: how many there are; count: that it takes] */
    SPZ_FAULT_UPBEAT_COUNTED,         /* an upbeat that the file counts as bar 1 */
    SPZ_FAULT_HALVES_COUNTED,         /* both halves of a split bar are counted [name, other: their numbers] */
    SPZ_FAULT_NUMBERS_LEAP,           /* a bar's number doesn't follow [name: that before; other: its own] */
    SPZ_FAULT_NEVER_PLAYED,
    /* what could not be used of a season's table, and from SPZ_FAULT_WEEKDAY on what is doubtful in it */
    SPZ_FAULT_COLUMNS,                   /* columns of the table that nothing is done with [name: theirs] */
    SPZ_FAULT_ROW_WITHOUT_WORK,
    SPZ_FAULT_ROW_TOO_LONG,              /* cells beyond the header [name: the first] */
    SPZ_FAULT_QUOTE_OPEN,                /* a quotation mark that is never closed */
    SPZ_FAULT_NO_DATE,                   /* [name: what stands there, here and in the next seven] */
    SPZ_FAULT_DATE_TWO_WAYS,             /* nothing says which is the month [count: dates like it] */
    SPZ_FAULT_DATE_LIKE_THAT,            /* another one */
    SPZ_FAULT_NO_TIME,
    SPZ_FAULT_REHEARSAL,      /* no date, or one that can be read in two ways */
    SPZ_FAULT_NO_ORDER,
    SPZ_FAULT_NO_INTERVAL,               /* neither yes nor no */
    SPZ_FAULT_NO_YEAR,
    SPZ_FAULT_OTHER_HALL,                /* [name: a second hall of the concert; other: its first; count: the line of that] */
    SPZ_FAULT_SEATING_UNKNOWN,           /* [name: what is fixed; other: the seatings that there are] */
    SPZ_FAULT_SCORE_NOT_THERE,           /* [name: its file, here and in the next four] */
    SPZ_FAULT_SCORE_NEARLY_THERE,        /* only under a name like it [other: that name] */
    SPZ_FAULT_SCORES_WITHOUT_BAR,        /* several files with ';' or ',' between, where '|' belongs */
    SPZ_FAULT_SCORE_NOT_OPENED,
    SPZ_FAULT_FOLDER_WITHOUT_SCORE,
    SPZ_FAULT_WORK_WITHOUT_SCORE,        /* [name: its title] */
    SPZ_FAULT_SCORE_UNREADABLE,          /* [name: its file; other: why; count: the spz_status] */
    SPZ_FAULT_NOT_ON_SHELF,              /* no such work in the library [name: it] */
    SPZ_FAULT_SEVERAL_ON_SHELF,          /* several [name: what they have in common; other: their names; count: how many] */
    SPZ_FAULT_CONCERT_EMPTY,             /* no work [name: the concert] */
    SPZ_FAULT_CONCERT_NOT_PLANNED,    /* season.h says why [name: the concert] */
    SPZ_FAULT_WEEKDAY,                   /* not that of the date [name: the date as it stands] */
    SPZ_FAULT_ROW_TWICE,                 /* the same work once more [name: its title; count: the line of the first] */
    SPZ_FAULT_ORDER_TWICE,               /* [name: the place] */
    SPZ_FAULT_INTERVALS,                 /* more than a concert has [name: the concert; count: how many] */
    SPZ_FAULT_HALL_WITHOUT_SETTINGS,     /* [name: the hall] */
    SPZ_FAULT_COUNT
} spz_fault;
SPZ_API const char *spz_fault_name(spz_fault fault); /* as in data: "chord-note-alone"; "" for none */

/* What the library has to say about a place in an input. Any pointer may be NULL and `line` 0 when not known. The strings
 * live only during the call of the sink. */
typedef struct spz_message {
    spz_severity severity;
    const char *file; /* as given by the caller; inside an archive 'archive:member' */
    long line;        /* line in the file, from 1 */
    const char *part; /* name of the part as printed */
    const char *bar;  /* bar number as printed */
    const char *text; /* one sentence in English, no newline */
    spz_fault fault;  /* of a doubt about a score; what follows belongs to it */
    const char *name, *other;
    long count;
} spz_message;

/* The caller's ear. A NULL sink, or a sink with `say` NULL, drops every message. */
typedef struct spz_sink {
    void (*say)(void *context, const spz_message *message);
    void *context;
} spz_sink;

/* Which of many words was meant by one that isn't known: begin with the word, look at each, and read `meant` (NULL where none is near). Near is what begins
 * with the word, or is made of it by few letters put in, left out, changed or exchanged; small and capital letters are alike. */
typedef struct spz_guess {
    const char *word;
    const char *meant; /* borrowed: as looked at */
    size_t away;       /* letters; of `meant` */
} spz_guess;
SPZ_API bool spz_guess_look(spz_guess *guess, const char *word); /* whether it is nearer than all before it */

SPZ_C_END
#endif
