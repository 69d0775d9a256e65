/* digest.h - what a season needs to know of a score once it was read and judged: small, kept in the cache and in lines, the same however
 * it was come by. Points are whole hundredths for that reason. */
#ifndef SEASON_DIGEST_H
#define SEASON_DIGEST_H
#include "season/concert.h"
#include "support/arena.h"
#include "support/array.h"

typedef struct DigestSeat { /* the movement in one arrangement */
    const char *name, *losses;
    Hundredths points; /* sum of its terms */
} DigestSeat;

typedef struct DigestMovement {
    const char *title, *statement;
    size_t bars;
    spz_confidence confidence;
    bool strings; /* some play */
    bool thirds, two_orchestras;
    DigestSeat *seats; /* best first, as judged; none when nothing could be judged */
    size_t seat_count;
} DigestMovement;

typedef struct DigestMessage { /* what the reader had to say */
    spz_severity severity;
    long line;
    const char *part, *bar, *text; /* NULL where there is none; `text` never */
} DigestMessage;

typedef struct Digest {
    Arena arena;
    spz_status status; /* of the reading; then there are no movements */
    ARRAY(DigestMovement) movements;
    ARRAY(DigestMessage) messages;
    size_t messages_left_out; /* past DIGEST_MESSAGES_MOST */
} Digest;

enum { DIGEST_MESSAGES_MOST = 50 };

Digest *digest_new(void); /* NULL: no memory */
void digest_free(Digest *digest);
/* Reads and judges the score `data`, named `path`. Inputs that are no scores are no failure here: the digest says so. SPZ_NO_MEMORY. */
spz_status digest_make(const void *data, size_t size, const char *path, const spz_settings *settings, int year, Digest *digest);
/* Hands the messages on under the name `path`. */
void digest_tell(const Digest *digest, const char *path, const spz_sink *sink);
#endif
