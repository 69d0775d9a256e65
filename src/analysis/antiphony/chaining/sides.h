/* sides.h - who stands on each side of a match: the caller and the groups that play along with it, the responder and its company,
 * named as a musician would ('violins' for both sections together). */
#ifndef ANALYSIS_ANTIPHONY_CHAINING_SIDES_H
#define ANALYSIS_ANTIPHONY_CHAINING_SIDES_H
#include "analysis/antiphony/chaining/evidence.h"

typedef struct Side {
    uint64_t melodies;      /* bit i: melody i */
    spz_section section; /* the name that fits them all */
    size_t group;        /* the single group meant, SIZE_MAX for several */
    int orchestra;       /* the one that they all belong to; 0 for players of both, or where there is only one */
} Side;

/* sides[0] calls, sides[1] answers. Groups that play on both sides are on neither (they accompany). */
void sides_of(const SectionMap *map, const Match *match, const Evidence *evidence, Side sides[2]);

/* Names a side by its melodies, one of which speaks for it; of the violins only those of `speakers`, who have its line. */
void side_name(const SectionMap *map, size_t principal, uint64_t speakers, Side *side);

/* Whether one of these bears the side's name. */
bool side_named_after(const SectionMap *map, const Side *side, uint64_t melodies);

/* Whose notes are told of a side: of `principal`, who speaks on it, unless the side bears another section's name: then of the highest group of that section. */
size_t side_voice(const SectionMap *map, const Side *side, size_t principal);

/* A doubling viola is left out of the name (the readers' protocol): violas who have the gesture together with one violin section are named after
 * it, with cellos and no violins after these; not where the other side bears that name. `company`: who else has it. */
void side_join_company(const SectionMap *map, uint64_t company, const Side *other, Side *side);

/* Whether the two sides are these two sections, whoever calls. */
static inline bool sides_are(const Side sides[2], spz_section one, spz_section other)
{
    return (sides[0].section == one && sides[1].section == other) || (sides[0].section == other && sides[1].section == one);
}

/* The same for two pairs of sides whose passages are one story of one pair, whoever calls. */
uint64_t sides_pair_key(const Side sides[2]);
#endif
