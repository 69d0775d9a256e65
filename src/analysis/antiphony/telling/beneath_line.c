#include "analysis/antiphony/telling/beneath_line.h"
#include "analysis/melody/roles.h"

/* Set on 21 movements: of the passages below `line` none is striking to the readers and eleven of fifteen are not even clear; see docs/method.md, section 10. */
static const struct {
    double striking, clear; /* the scale of passages.h; the most that an accompaniment is told as */
    double line;            /* mean chance of the line from which a passage is more than an accompaniment */
} rule = {.striking = 0.8, .clear = 0.79, .line = 0.1};

enum { BARS_BESIDE = 2 }; /* on either side: what goes on around tells who goes on with it */

static double line_in_statements(const Roles *roles, const ChainFacts *facts)
{
    double sum = 0;
    for (size_t i = 0; i < facts->entries.count; i++)
        sum += roles_line_share(roles, facts->entries.at[i].players, facts->entries.at[i].onset, facts->entries.at[i].end);
    return facts->entries.count ? sum / (double)facts->entries.count : 0;
}

static void weigh(const Roles *roles, const ChainFacts *facts, Chain *chain)
{
    uint64_t players = 0;
    for (size_t i = 0; i < facts->entries.count; i++)
        players |= facts->entries.at[i].players;
    if (line_in_statements(roles, facts) >= rule.line || roles_line_share(roles, players, chain->onset, chain->end) >= rule.line)
        return;
    chain->accompanies = true;
    chain->strength = rule.clear;
}

/* Striking but for its place beneath the line, in bars first..last. */
static bool would_strike(const Chain *chain, int first, int last)
{
    return (chain->accompanies || chain->strength >= rule.striking) && chain->first <= last && chain->last >= first;
}

/* Bars that hold a chain and all striking ones that overlap it or each other, with some on either side. */
static void bars_around(const ChainList *chains, const Chain *chain, int *first, int *last)
{
    *first = chain->first - BARS_BESIDE;
    *last = chain->last + BARS_BESIDE;
    for (size_t i = 0; i < chains->count; i++) {
        const Chain *other = &chains->at[i];
        if (!would_strike(other, *first, *last) || (other->first - BARS_BESIDE >= *first && other->last + BARS_BESIDE <= *last))
            continue;
        *first = other->first - BARS_BESIDE < *first ? other->first - BARS_BESIDE : *first;
        *last = other->last + BARS_BESIDE > *last ? other->last + BARS_BESIDE : *last;
        i = SIZE_MAX; /* once more with the wider bars */
    }
}

static spz_status weigh_bars(const Texture *texture, const CandidateList *candidates, ChainList *chains, int first, int last)
{
    Arena arena;
    Roles roles;
    size_t from = first > 0 ? (size_t)first : 0, to = (size_t)last, bars = texture->map->movement->bar_count;
    arena_init(&arena);
    spz_status status = roles_of(texture->map, from, to < bars ? to : bars - 1, &arena, &roles);
    for (size_t i = 0; status == SPZ_OK && i < chains->count; i++) {
        Chain *chain = &chains->at[i];
        if (!would_strike(chain, first, last))
            continue;
        status = chain_facts_keep(texture, candidates, chain);
        if (status == SPZ_OK)
            weigh(&roles, chain->facts, chain);
    }
    arena_release(&arena);
    return status;
}

spz_status chains_weigh_lines(const Texture *texture, const CandidateList *candidates, ChainList *chains)
{
    spz_status status = SPZ_OK;
    for (size_t i = 0; status == SPZ_OK && i < chains->count; i++) {
        int first, last;
        bool weighed = false;
        if (!would_strike(&chains->at[i], chains->at[i].first, chains->at[i].last))
            continue;
        bars_around(chains, &chains->at[i], &first, &last);
        for (size_t k = 0; k < i; k++)
            weighed |= would_strike(&chains->at[k], first, last);
        if (!weighed)
            status = weigh_bars(texture, candidates, chains, first, last);
    }
    return status;
}
