#include "analysis/antiphony/telling/told_once.h"
#include "analysis/antiphony/telling/chain_facts.h"

static const double clear = 0.5; /* as told to users: what is clear is not told within what is not */

/* Of chains in the same bars the weaker, which stands behind, is told by the other. */
static bool lies_within(const Chain *inner, const Chain *outer)
{
    bool longer = outer->first < inner->first || outer->last > inner->last;
    return outer->first <= inner->first && outer->last >= inner->last && (longer || outer < inner) && (outer->strength >= clear || inner->strength < clear);
}

/* Its players have it there too, from a note sooner or later on. */
static bool is_among(const Texture *texture, const spz_entry *entry, const ChainFacts *facts)
{
    const Movement *m = texture->map->movement;
    Ticks beat = m->bars[entry->bar].beat > 0 ? m->bars[entry->bar].beat : m->per_crotchet;
    for (size_t i = 0; i < facts->entries.count; i++) {
        const spz_entry *other = &facts->entries.at[i];
        Ticks apart = entry->onset > other->onset ? entry->onset - other->onset : other->onset - entry->onset;
        if (apart < beat && !(entry->players & ~other->players))
            return true;
    }
    return false;
}

static bool all_among(const Texture *texture, const ChainFacts *inner, const ChainFacts *outer)
{
    for (size_t i = 0; i < inner->entries.count; i++)
        if (!is_among(texture, &inner->entries.at[i], outer))
            return false;
    return inner->entries.count > 0;
}

/* Whether the longer chain tells all that the other does. */
static spz_status tells(const Texture *texture, const CandidateList *candidates, const Chain *outer, const ChainFacts *inner, bool *told)
{
    ChainFacts facts;
    spz_status status = chain_facts_make(texture->map, texture, candidates, outer, &facts);
    *told = status == SPZ_OK && all_among(texture, inner, &facts);
    chain_facts_release(&facts);
    return status;
}

/* The first that tells it, NULL: none does. */
static spz_status teller_of(const Texture *texture, const CandidateList *candidates, ChainList *chains, const Chain *inner, Chain **teller)
{
    ChainFacts facts = {.turns = 0};
    bool made = false, told = false;
    spz_status status = SPZ_OK;
    *teller = NULL;
    for (size_t i = 0; status == SPZ_OK && !told && i < chains->count; i++) {
        Chain *outer = &chains->at[i];
        if (outer == inner || !lies_within(inner, outer))
            continue;
        status = made ? SPZ_OK : chain_facts_make(texture->map, texture, candidates, inner, &facts);
        made = true;
        if (status == SPZ_OK)
            status = tells(texture, candidates, outer, &facts, &told);
        *teller = told ? outer : NULL;
    }
    chain_facts_release(&facts);
    return status;
}

/* As clear as the clearest, and named after it; the violins, on whom the seating turns, keep their name. */
static spz_status take_in(const Chain *inner, Arena *arena, Chain *teller)
{
    AbsorbedPair *absorbed = arena_take(arena, 1, sizeof *absorbed);
    if (!absorbed)
        return SPZ_NO_MEMORY;
    *absorbed = (AbsorbedPair){inner->candidates, inner->candidate_count, teller->absorbed};
    teller->absorbed = absorbed;
    if (inner->strength <= teller->strength)
        return SPZ_OK;
    teller->strength = inner->strength;
    bool violins = sides_are(teller->sides, SPZ_VN1, SPZ_VN2);
    for (int i = 0; i < 2 && !violins; i++)
        teller->sides[i] = inner->sides[i];
    return SPZ_OK;
}

spz_status chains_tell_once(const Texture *texture, const CandidateList *candidates, Arena *arena, ChainList *chains)
{
    spz_status status = SPZ_OK;
    for (size_t i = chains->count; status == SPZ_OK && i-- > 0;) {
        Chain *teller;
        status = teller_of(texture, candidates, chains, &chains->at[i], &teller);
        if (!teller)
            continue;
        status = take_in(&chains->at[i], arena, teller);
        for (size_t k = i + 1; k < chains->count; k++)
            chains->at[k - 1] = chains->at[k];
        chains->count--;
    }
    return status;
}
