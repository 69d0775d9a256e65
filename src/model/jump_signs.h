/* jump_signs.h - segnos, codas and endings of a movement, found once, so that no walk over its bars looks for them bar by bar. */
#ifndef MODEL_JUMP_SIGNS_H
#define MODEL_JUMP_SIGNS_H
#include "model/movement.h"

typedef struct LabelledSign {
    const char *label;
    int32_t bar;
} LabelledSign;

typedef struct JumpSigns {
    const Movement *movement;
    int32_t *segno_before, *segno_after; /* by bar: the nearest up to it, the next behind it; bar_count: none */
    int32_t *coda_after;                 /* the next behind it */
    int32_t *ending_end;                 /* of a bar in an ending: the bar behind that ending */
    bool *counts_after_jump;             /* of a bar in a row of endings: a backward sign of the row counts after a jump too */
    LabelledSign *segnos, *codas;        /* those with labels, by label, then bar */
    size_t segno_count, coda_count;
    int32_t last_leaving;                /* the last bar where players leave for a coda; -1: none */
} JumpSigns;

/* false: no memory. To be freed in any case; the movement must outlive it. */
bool jump_signs_find(const Movement *movement, JumpSigns *out);
void jump_signs_free(JumpSigns *signs);

/* Where 'dal segno' in that bar leads: to the nearest segno of its label before, else the first behind it; without one of that label to any; to
 * the first bar where there is none. */
size_t jump_signs_segno(const JumpSigns *signs, size_t bar);
/* The coda that 'to coda' in that bar means: of its label, else the next; bar_count: none. */
size_t jump_signs_coda(const JumpSigns *signs, size_t bar);
/* Players leave that bar for a coda, after a jump. With two coda signs and no 'to coda', the first sign is where they leave. */
bool jump_signs_leaves(const JumpSigns *signs, size_t bar);
/* The bar behind the ending that holds `bar`. */
size_t jump_signs_after_ending(const JumpSigns *signs, size_t bar);
#endif
