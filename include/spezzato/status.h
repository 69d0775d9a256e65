/* status.h - what a call of the library can answer, and how it speaks to its caller.
 *
 * Ownership law of all public headers: arguments are borrowed for the length of the call; a pointer handed out
 * through `out` of a function named ..._read, ..._new, ..._find, ..._judge or ..._plan is the caller's, to be given to the
 * matching ..._free (which takes NULL); every other pointer handed out is a const view that lives as long as the object it
 * was asked of. The library never prints, never exits, keeps no global state but the allocator of the tests. */
#ifndef SPEZZATO_STATUS_H
#define SPEZZATO_STATUS_H

#if defined(__GNUC__)
#define SPZ_API __attribute__((visibility("default")))
#else
#define SPZ_API
#endif

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

/* What the library has to say about a place in an input. Any pointer may be NULL and `line` 0 when not known. The strings
 * live only during the call of the sink. */
typedef struct spz_message {
    spz_severity severity;
    const char *file; /* as given by the caller; inside an archive 'archive:member' */
    long line;        /* line in the file, from 1 */
    const char *part; /* name of the part as printed */
    const char *bar;  /* bar number as printed */
    const char *text; /* one sentence, no newline */
} spz_message;

/* The caller's ear. A NULL sink, or a sink with `say` NULL, drops every message. */
typedef struct spz_sink {
    void (*say)(void *context, const spz_message *message);
    void *context;
} spz_sink;

#endif
