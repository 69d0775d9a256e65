#include "analysis/antiphony/telling/told_once.h"
#include "analysis/antiphony/telling/chain_facts.h"

static const double clear = 0.5; /* as told to users: what is clear is not told within what is not */

typedef struct Telling {
    const Texture *texture;
    const CandidateList *candidates;
    ChainList *chains;
} Telling;

static spz_status ask(const Telling *telling, size_t index)
{
    return chain_facts_keep(telling->texture, telling->candidates, &telling->chains->at[index]);
}

static int first_bar(const Telling *telling, size_t index)
{
    const Chain *chain = &telling->chains->at[index];
    const ChainFacts *facts = chain->facts;
    return chain_begins_at(chain, facts) == chain->onset ? chain->first : (int)facts->entries.at[0].bar;
}

/* Of chains in the same bars the weaker, which stands behind, is told by the other. */
static bool lies_within(const Telling *telling, size_t inner, size_t outer)
{
    int first = first_bar(telling, inner), begins = first_bar(telling, outer), last = telling->chains->at[inner].last, ends = telling->chains->at[outer].last;
    return begins <= first && ends >= last && (begins < first || ends > last || outer < inner);
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

static bool all_among(const Telling *telling, size_t inner, size_t outer)
{
    const ChainFacts *facts = telling->chains->at[inner].facts;
    for (size_t i = 0; i < facts->entries.count; i++)
        if (!is_among(telling->texture, &facts->entries.at[i], telling->chains->at[outer].facts))
            return false;
    return facts->entries.count > 0;
}

/* The first that tells all that the chain at `inner` does; `*teller` as many as there are: none does. */
static spz_status teller_of(const Telling *telling, size_t inner, size_t *teller)
{
    const Chain *chain = &telling->chains->at[inner];
    spz_status status = SPZ_OK;
    for (*teller = 0; *teller < telling->chains->count; ++*teller) {
        const Chain *outer = &telling->chains->at[*teller];
        if (*teller == inner || outer->last < chain->last || outer->first > chain->last || (outer->strength < clear && chain->strength >= clear))
            continue;
        status = ask(telling, inner);
        if (status == SPZ_OK)
            status = ask(telling, *teller);
        if (status != SPZ_OK || (lies_within(telling, inner, *teller) && all_among(telling, inner, *teller)))
            break;
    }
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

static void take_out(ChainList *chains, size_t index)
{
    chain_facts_forget(&chains->at[index]);
    for (size_t k = index + 1; k < chains->count; k++)
        chains->at[k - 1] = chains->at[k];
    chains->count--;
}

static spz_status tell_once(const Telling *telling, Arena *arena)
{
    spz_status status = SPZ_OK;
    for (size_t i = telling->chains->count; status == SPZ_OK && i-- > 0;) {
        size_t teller;
        status = teller_of(telling, i, &teller);
        if (status != SPZ_OK || teller == telling->chains->count)
            continue;
        status = take_in(&telling->chains->at[i], arena, &telling->chains->at[teller]);
        chain_facts_forget(&telling->chains->at[teller]);
        take_out(telling->chains, i);
    }
    return status;
}

spz_status chains_tell_once(const Texture *texture, const CandidateList *candidates, Arena *arena, ChainList *chains)
{
    Telling telling = {texture, candidates, chains};
    return tell_once(&telling, arena);
}
