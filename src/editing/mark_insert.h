/* mark_insert.h - directions put into the text of a score, and taken out again. Every byte of the score stays what it was.
 *
 * Each direction carries an id that begins with OWN_MARK_ID (own_marks.h), by which it is known again. It is followed by a copy of the white space
 * before it, so that taking out the direction and the white space behind it gives the file as it was. */
#ifndef EDITING_MARK_INSERT_H
#define EDITING_MARK_INSERT_H
#include "model/movement.h"
#include "support/buffer.h"

typedef enum WishSign { WISH_WORDS, WISH_BRACKET, WISH_DASHES } WishSign;

/* One direction that is wanted. */
typedef struct Wish {
    size_t part, bar;
    Ticks at;           /* from the start of the bar */
    int staff;          /* 0: the part's first */
    const char *voice;  /* NULL: any */
    const char *words;  /* NULL or "": none */
    int raised;         /* tenths of a staff space above where words stand by themselves */
    WishSign sign;
    int number;         /* of the bracket or dashes */
    bool stop;          /* the sign ends here */
} Wish;

/* The text with all wishes fulfilled; `movement` is what was read from this text, or one of several. Wishes may come in any order; those
 * for one place are written ends first, then as they come. `marked`: how many directions the text has already. SPZ_NO_MEMORY,
 * SPZ_NOT_XML. */
spz_status mark_insert(const Buffer *text, const Movement *movement, Wish *wishes, size_t count, size_t marked, Buffer *out);

/* The text without the directions of mark_insert; `taken` counts them. */
spz_status mark_strip(const Buffer *text, Buffer *out, size_t *taken);

/* Bit n: the part has brackets or dashes of number n already. `used` holds as many as the movement has parts. */
spz_status mark_lines_used(const Buffer *text, const Movement *movement, uint32_t *used);
#endif
