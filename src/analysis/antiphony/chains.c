#include "analysis/antiphony/chains.h"
#include "analysis/melody/bar_lists.h"
#include <stdlib.h>
#include <string.h>

const double chains_least_chance = 0.10;
const int chains_beside = 2;

static const struct {
    double add;            /* a match joins its pair's passages when it adds this share of its time */
    double equal, add_equal; /* ... or, when its chance is this share of what is beside it and it begins before, this smaller one: an
                              exchange that goes to and fro begins with its first call */
    double near_share;     /* ... and has this share of the chance of the passage beside it */
    double own;            /* ... or shares no bar with one, and is as strong as this by itself: clear */
    double rest;           /* chance from which the part of a lost passage that its teller leaves out stands by itself */
    int gap_bars;          /* fewer bars than this between two stretches: one passage */
    double same_story;     /* share of bars in which a weaker pair's passage is told by a stronger one */
    double violins, choirs, lower, orchestras; /* preferences when pairs compete for a story: first and second violins, on which the
                              seating turns; all violins and violas; violas and cellos; two orchestras */
} rule = {
    .add = 0.5, .equal = 0.9, .add_equal = 0.2, .near_share = 0.75, .own = 0.5, .rest = 0.5, .gap_bars = 1, .same_story = 0.5,
    .violins = 1.4, .choirs = 1.2, .lower = 0.8, .orchestras = 1.4,
};

static int stronger_first(const void *left, const void *right)
{
    const Candidate *const *a = left, *const *b = right;
    uint64_t ka = sides_pair_key((*a)->sides), kb = sides_pair_key((*b)->sides);
    if (ka != kb)
        return ka < kb ? -1 : 1;
    if ((*a)->evidence.chance != (*b)->evidence.chance)
        return (*a)->evidence.chance > (*b)->evidence.chance ? -1 : 1;
    if ((*a)->match.onset != (*b)->match.onset)
        return (*a)->match.onset < (*b)->match.onset ? -1 : 1;
    return (*a < *b) ? -1 : *a > *b;
}

static int earlier_first(const void *left, const void *right)
{
    const Candidate *const *a = left, *const *b = right;
    if ((*a)->match.onset != (*b)->match.onset)
        return (*a)->match.onset < (*b)->match.onset ? -1 : 1;
    return (*a < *b) ? -1 : *a > *b;
}

/* Marks the time of a match as told in `told` (one byte a half crotchet); returns the share that was new. */
static double tell(const Texture *texture, unsigned char *told, const Match *match, bool mark)
{
    size_t first = texture_cell_at(texture, match->onset), last = texture_cell_at(texture, match->end - 1), fresh = 0;
    for (size_t c = first; c <= last; c++) {
        fresh += !told[c];
        if (mark)
            told[c] = 1;
    }
    return (double)fresh / (double)(last - first + 1);
}

static void enter(Ticks *enters, size_t melody_count, uint64_t melodies, Ticks when)
{
    for (size_t t = 0; t < melody_count && t < 64; t++)
        if ((melodies >> t & 1) && when < enters[t])
            enters[t] = when;
}

static bool are(const Side sides[2], spz_section one, spz_section other)
{
    return (sides[0].section == one && sides[1].section == other) || (sides[0].section == other && sides[1].section == one);
}

/* How much the pair is preferred when others tell the same story. */
static double preference(const Side sides[2])
{
    if (sides[0].orchestra != sides[1].orchestra)
        return sides[0].orchestra && sides[1].orchestra ? rule.orchestras : 1;
    if (are(sides, SPZ_VN1, SPZ_VN2))
        return rule.violins;
    if (are(sides, SPZ_VIOLINS, SPZ_VA))
        return rule.choirs;
    return are(sides, SPZ_VA, SPZ_VC) ? rule.lower : 1;
}

typedef struct Joiner { /* where chains are put together */
    const Texture *texture;
    Candidate *base;
    Arena *arena;
    ChainList *out;
} Joiner;

static bool push_chain(const Joiner *joiner, Candidate **run, size_t count)
{
    size_t melody_count = joiner->texture->melody_count;
    Chain chain = {.first = run[0]->first, .last = run[0]->last, .onset = run[0]->match.onset, .end = run[0]->match.end};
    chain.candidates = arena_take(joiner->arena, count, sizeof *chain.candidates);
    chain.enters = arena_take(joiner->arena, melody_count, sizeof *chain.enters);
    if (!chain.candidates || !chain.enters)
        return false;
    for (size_t t = 0; t < melody_count; t++)
        chain.enters[t] = INT64_MAX;
    const Candidate *best = run[0];
    double miss = 1;
    for (size_t i = 0; i < count; i++) {
        chain.candidates[i] = (uint32_t)(run[i] - joiner->base);
        enter(chain.enters, melody_count, run[i]->sides[0].melodies, run[i]->match.onset);
        enter(chain.enters, melody_count, run[i]->sides[1].melodies, run[i]->match.onset + run[i]->match.lag);
        if (run[i]->last > chain.last)
            chain.last = run[i]->last;
        if (run[i]->match.end > chain.end)
            chain.end = run[i]->match.end;
        if (run[i]->evidence.chance > best->evidence.chance)
            best = run[i];
        chain.chain_melodies |= run[i]->sides[0].melodies | run[i]->sides[1].melodies;
        miss *= 1 - 0.25 * run[i]->evidence.chance;
    }
    /* A second good match in the passage confirms the first, a little. */
    double confirmed = 1 - miss;
    double chance = best->evidence.chance + (1 - best->evidence.chance) * 0.3 * (confirmed - 0.25 * best->evidence.chance);
    chain.strength = strength_told(chance);
    chain.sides[0] = run[0]->sides[0];
    chain.sides[1] = run[0]->sides[1];
    chain.claim = chance * preference(chain.sides);
    chain.candidate_count = count;
    return array_push(joiner->out, chain);
}

/* The taken matches of one pair, in time order, cut where two bars or more lie between. */
static spz_status cut_into_chains(const Joiner *joiner, Candidate **taken, size_t count)
{
    qsort(taken, count, sizeof *taken, earlier_first);
    size_t start = 0;
    int last = count ? taken[0]->last : 0;
    for (size_t i = 1; i <= count; i++) {
        if (i < count && taken[i]->first - last - 1 < rule.gap_bars) {
            if (taken[i]->last > last)
                last = taken[i]->last;
            continue;
        }
        if (!push_chain(joiner, taken + start, i - start))
            return SPZ_NO_MEMORY;
        start = i;
        if (i < count)
            last = taken[i]->last;
    }
    return SPZ_OK;
}

/* What one pair has taken so far: which cells are told, and the strongest match over each bar. */
typedef struct StrengthByBar {
    const Texture *texture;
    unsigned char *told;
    double *strongest;
} StrengthByBar;

static double strongest_within(const StrengthByBar *by_bar, int first, int last)
{
    double strongest = 0;
    for (int bar = first; bar <= last; bar++)
        if (by_bar->strongest[bar] > strongest)
            strongest = by_bar->strongest[bar];
    return strongest;
}

/* The strongest match taken nearby; weak echoes of a strong passage would only blur where it begins and ends. */
static double strongest_beside(const StrengthByBar *by_bar, const Candidate *candidate)
{
    int bars = (int)by_bar->texture->map->movement->bar_count;
    int first = candidate->first > chains_beside ? candidate->first - chains_beside : 0;
    int last = candidate->last + chains_beside < bars ? candidate->last + chains_beside : bars - 1;
    return strongest_within(by_bar, first, last);
}

static void enter_in(StrengthByBar *by_bar, Candidate *candidate)
{
    candidate->taken = true;
    tell(by_bar->texture, by_bar->told, &candidate->match, true);
    for (int bar = candidate->first; bar <= candidate->last; bar++)
        if (candidate->evidence.chance > by_bar->strongest[bar])
            by_bar->strongest[bar] = candidate->evidence.chance;
}

/* Whether a match adds to what its pair has taken: time that is new, without blurring where a stronger passage begins and ends. */
static bool adds(const StrengthByBar *by_bar, const Candidate *candidate)
{
    double chance = candidate->evidence.chance, beside = strongest_beside(by_bar, candidate);
    bool begins_before = strongest_within(by_bar, candidate->first, candidate->first) == 0;
    bool apart = strongest_within(by_bar, candidate->first, candidate->last) == 0;
    double least = chance >= rule.equal * beside && begins_before ? rule.add_equal : rule.add;
    if (tell(by_bar->texture, by_bar->told, &candidate->match, false) < least)
        return false;
    return chance >= rule.near_share * beside || (apart && strength_told(chance) >= rule.own);
}

static size_t take_best(StrengthByBar *by_bar, Candidate **pair, size_t count)
{
    size_t taken = 0;
    memset(by_bar->told, 0, by_bar->texture->cell_count * sizeof *by_bar->told);
    for (size_t bar = 0; bar < by_bar->texture->map->movement->bar_count; bar++)
        by_bar->strongest[bar] = 0;
    for (size_t i = 0; i < count; i++) {
        Candidate *candidate = pair[i];
        if (!adds(by_bar, candidate))
            continue;
        enter_in(by_bar, candidate);
        pair[i] = pair[taken];
        pair[taken++] = candidate;
    }
    return taken;
}

static int stronger_chain_first(const void *left, const void *right)
{
    const Chain *a = left, *b = right;
    if (a->claim != b->claim)
        return a->claim > b->claim ? -1 : 1;
    if (a->first != b->first)
        return a->first < b->first ? -1 : 1;
    uint64_t ka = sides_pair_key(a->sides), kb = sides_pair_key(b->sides);
    return ka < kb ? -1 : ka > kb;
}

static int shared_bars(const Chain *a, const Chain *b)
{
    int first = a->first > b->first ? a->first : b->first, last = a->last < b->last ? a->last : b->last;
    return last >= first ? last - first + 1 : 0;
}

static bool same_story(const Chain *weak, const Chain *strong)
{
    if (!(weak->chain_melodies & strong->chain_melodies))
        return false;
    return shared_bars(weak, strong) >= rule.same_story * (weak->last - weak->first + 1);
}

static bool hand_over(const Joiner *joiner, const Chain *from, Chain *to)
{
    AbsorbedPair *retelling = arena_take(joiner->arena, 1, sizeof *retelling);
    if (!retelling)
        return false;
    *retelling = (AbsorbedPair){from->candidates, from->candidate_count, to->absorbed};
    to->absorbed = retelling;
    to->chain_melodies |= from->chain_melodies;
    for (size_t t = 0; t < joiner->texture->melody_count; t++)
        if (from->enters[t] < to->enters[t])
            to->enters[t] = from->enters[t];
    return true;
}

/* The strongest kept chain that already tells the story of `weak`, NULL when none does. The kept ones stand by strength;
 * `neighbours`: those that touch each bar. */
static Chain *teller_of(const Chain *weak, Chain *kept, const BarNotes *neighbours)
{
    Chain *teller = NULL;
    for (int bar = weak->first; bar <= weak->last; bar++)
        for (const BarNote *note = bar_notes_newest(neighbours, bar); note; note = bar_notes_older(neighbours, note)) {
            Chain *strong = &kept[note->index];
            if ((!teller || strong < teller) && same_story(weak, strong))
                teller = strong;
        }
    return teller;
}

/* What a lost passage holds outside its teller's bars is a story of its own; added behind all others. */
static spz_status keep_rest(const Joiner *joiner, const Chain *lost, int first, int last)
{
    Candidate **rest = arena_take(joiner->arena, lost->candidate_count, sizeof *rest);
    size_t count = 0;
    for (size_t i = 0; rest && i < lost->candidate_count; i++) {
        Candidate *c = &joiner->base[lost->candidates[i]];
        int from = c->first > first ? c->first : first, to = c->last < last ? c->last : last;
        int told = to >= from ? to - from + 1 : 0;
        if (2 * told < c->last - c->first + 1 && c->evidence.chance >= rule.rest)
            rest[count++] = c;
    }
    bool own = count > 0 && count < lost->candidate_count;
    return !rest ? SPZ_NO_MEMORY : own ? cut_into_chains(joiner, rest, count) : SPZ_OK;
}

static spz_status keep_tellers(const Joiner *joiner, BarNotes *neighbours)
{
    ChainList *chains = joiner->out;
    size_t kept = 0;
    for (size_t i = 0; i < chains->count; i++) {
        Chain chain = chains->at[i];
        Chain *teller = teller_of(&chain, chains->at, neighbours);
        if (teller ? !hand_over(joiner, &chain, teller) : !bar_notes_add(neighbours, chain.first, chain.last, (uint32_t)kept))
            return SPZ_NO_MEMORY;
        if (!teller)
            chains->at[kept++] = chain;
        else if (keep_rest(joiner, &chain, teller->first, teller->last) != SPZ_OK)
            return SPZ_NO_MEMORY;
    }
    chains->count = kept;
    return SPZ_OK;
}

/* Drops what a stronger pair already tells; what remains learns which other groups spoke. */
static spz_status drop_retellings(const Joiner *joiner)
{
    BarNotes neighbours;
    spz_status status = bar_notes_make(joiner->texture->map->movement->bar_count, &neighbours) ? SPZ_OK : SPZ_NO_MEMORY;
    if (joiner->out->count)
        qsort(joiner->out->at, joiner->out->count, sizeof *joiner->out->at, stronger_chain_first);
    if (status == SPZ_OK)
        status = keep_tellers(joiner, &neighbours);
    bar_notes_release(&neighbours);
    return status;
}

static size_t eligible(CandidateList *candidates, Candidate **out)
{
    size_t count = 0;
    for (size_t i = 0; i < candidates->count; i++)
        if (candidates->at[i].evidence.chance >= chains_least_chance)
            out[count++] = &candidates->at[i];
    if (count)
        qsort(out, count, sizeof *out, stronger_first);
    return count;
}

spz_status chains_make(const Texture *texture, CandidateList *candidates, Arena *arena, ChainList *out)
{
    Candidate **order = memory_get(candidates->count * sizeof *order);
    StrengthByBar by_bar = {.texture = texture, .told = memory_get(texture->cell_count),
                     .strongest = memory_get(texture->map->movement->bar_count * sizeof *by_bar.strongest)};
    Joiner joiner = {texture, candidates->at, arena, out};
    spz_status status = order && by_bar.told && by_bar.strongest ? SPZ_OK : SPZ_NO_MEMORY;
    size_t count = status == SPZ_OK ? eligible(candidates, order) : 0;
    for (size_t start = 0, end; start < count && status == SPZ_OK; start = end) {
        uint64_t key = sides_pair_key(order[start]->sides);
        for (end = start; end < count && sides_pair_key(order[end]->sides) == key;)
            end++;
        size_t taken = take_best(&by_bar, order + start, end - start);
        status = cut_into_chains(&joiner, order + start, taken);
    }
    if (status == SPZ_OK)
        status = drop_retellings(&joiner);
    memory_free(by_bar.strongest);
    memory_free(by_bar.told);
    memory_free(order);
    return status;
}
