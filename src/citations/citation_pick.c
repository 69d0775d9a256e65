/* Which passages to cite: each choice takes the passage that is worth most beside those already chosen. */
#include "citations/citation_facts.h"
#include "support/memory.h"
#include <stdlib.h>
#include <string.h>

/* How much a listener without a score hears of each kind, against an exchange; common practice, no source. */
static const double audible[SPZ_KIND_COUNT] = {
    [SPZ_EXCHANGE] = 1.0, [SPZ_HOCKET] = 1.0, [SPZ_SPLIT_LINE] = 0.9, [SPZ_IMITATION] = 0.85,
    [SPZ_DIV2] = 0.4,     [SPZ_DIV3] = 0.6,   [SPZ_COUPLING] = 0.35,
};
/* What is left of a passage's worth for each one already chosen that it resembles. */
static const double same_kind = 0.8, same_sections = 0.85, overlapping = 0.3;
/* What is worth less than this isn't cited, however much room there is. */
static const double least_worth = 0.15;
/* A passage at the back of the texture is worth this share of one at its front. */
static const double least_foreground = 0.5;

static double worth_alone(const spz_passage *passage)
{
    double front = spz_kind_is_antiphony(passage->kind) ? least_foreground + (1 - least_foreground) * passage->foreground : 1;
    return passage->strength * audible[passage->kind] * front;
}

static bool same_who(const spz_passage *a, const spz_passage *b)
{
    return a->sides[0].section == b->sides[0].section && a->sides[1].section == b->sides[1].section;
}

static double worth_beside(const spz_findings *findings, const PlaceInFindings *picked, const spz_passage *passage)
{
    double worth = worth_alone(passage);
    for (size_t i = 0; i < picked->count; i++) {
        const spz_passage *other = spz_findings_at(findings, picked->at[i]);
        if (other == passage)
            return -1;
        worth *= other->kind == passage->kind ? same_kind : 1;
        worth *= same_who(other, passage) ? same_sections : 1;
        worth *= other->onset < passage->end && passage->onset < other->end ? overlapping : 1;
    }
    return worth;
}

static int in_order(const void *a, const void *b)
{
    size_t one = *(const size_t *)a, two = *(const size_t *)b;
    return one < two ? -1 : one > two;
}

/* The best one left; the count of the findings when none is. Of equals, the earlier. */
static size_t best_left(const spz_findings *findings, const PlaceInFindings *picked, double strength)
{
    size_t count = spz_findings_count(findings), best = count;
    double most = least_worth;
    for (size_t i = 0; i < count; i++) {
        const spz_passage *passage = spz_findings_at(findings, i);
        double worth = passage->strength >= strength ? worth_beside(findings, picked, passage) : -1;
        if (worth > most) {
            most = worth;
            best = i;
        }
    }
    return best;
}

static spz_status pick_all(const spz_findings *findings, double strength, PlaceInFindings *picked)
{
    for (size_t i = 0; i < spz_findings_count(findings); i++)
        if (spz_findings_at(findings, i)->strength >= strength && !array_push(picked, i))
            return SPZ_NO_MEMORY;
    return SPZ_OK;
}

spz_status notes_pick(const spz_findings *findings, double strength, size_t most, PlaceInFindings *picked)
{
    if (most == 0)
        return pick_all(findings, strength, picked);
    while (picked->count < most) {
        size_t best = best_left(findings, picked, strength);
        if (best == spz_findings_count(findings))
            break;
        if (!array_push(picked, best))
            return SPZ_NO_MEMORY;
    }
    if (picked->count)
        qsort(picked->at, picked->count, sizeof *picked->at, in_order); /* the findings are in order of bars */
    return SPZ_OK;
}
