#include "analysis/antiphony/chaining/chains.h"
#include "analysis/antiphony/chaining/stories.h"
#include <math.h>
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
    int gap_bars;          /* fewer bars than this between two stretches: one passage; as many with the same gesture (the readers' protocol) */
    double other_lag, other_share; /* a new gesture: at a distance more than so many times as long or as short, and this share of the shorter
                              stretch at most is in the other (protocol: where the gesture changes, a new passage begins). A distance that is halved may be
                              the same exchange that hurries on */
    double violins, choirs, orchestras; /* preferences when pairs compete for a story: first and second violins, on which the seating
                              turns; all violins and violas; two orchestras */
} rule = {
    .add = 0.35, .equal = 0.9, .add_equal = 0.2, .near_share = 0.75, .own = 0.5, .gap_bars = 1, .other_lag = 2, .other_share = 0.2,
    .violins = 1.4, .choirs = 1.2, .orchestras = 1.5,
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

/* How much the pair is preferred when others tell the same story. */
static double preference(const Side sides[2])
{
    if (sides[0].orchestra != sides[1].orchestra)
        return sides[0].orchestra && sides[1].orchestra ? rule.orchestras : 1;
    if (sides_are(sides, SPZ_VN1, SPZ_VN2))
        return rule.violins;
    return sides_are(sides, SPZ_VIOLINS, SPZ_VA) ? rule.choirs : 1;
}

static bool push_chain(const ChainMaker *maker, Candidate **run, size_t count)
{
    Chain chain = {.first = run[0]->first, .last = run[0]->last, .onset = run[0]->match.onset, .end = run[0]->match.end};
    chain.candidates = arena_take(maker->arena, count, sizeof *chain.candidates);
    if (!chain.candidates)
        return false;
    const Candidate *best = run[0];
    double miss = 1;
    for (size_t i = 0; i < count; i++) {
        chain.candidates[i] = (uint32_t)(run[i] - maker->base);
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
    return array_push(maker->out, chain);
}

static bool is_another_gesture(const Match *next, const Match *before)
{
    double longer = fmax((double)next->lag, (double)before->lag), shorter = fmin((double)next->lag, (double)before->lag);
    double least = fmin((double)(next->end - next->onset), (double)(before->end - before->onset)), shared = (double)before->end - (double)next->onset;
    return longer > rule.other_lag * shorter && shared <= rule.other_share * least;
}

/* The same passage goes on: without a bar between or, with the same gesture, which is known by its distance, after an empty bar. */
static bool belongs_to(const Candidate *next, const Candidate *before, int last)
{
    int between = next->first - last - 1;
    if (is_another_gesture(&next->match, &before->match))
        return false;
    return between < rule.gap_bars || (between == rule.gap_bars && next->match.lag == before->match.lag);
}

spz_status chains_cut(const ChainMaker *maker, Candidate **taken, size_t count)
{
    qsort(taken, count, sizeof *taken, earlier_first);
    size_t start = 0;
    int last = count ? taken[0]->last : 0;
    for (size_t i = 1; i <= count; i++) {
        if (i < count && belongs_to(taken[i], taken[i - 1], last)) {
            if (taken[i]->last > last)
                last = taken[i]->last;
            continue;
        }
        if (!push_chain(maker, taken + start, i - start))
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
    ChainMaker maker = {texture, candidates->at, arena, out};
    spz_status status = order && by_bar.told && by_bar.strongest ? SPZ_OK : SPZ_NO_MEMORY;
    size_t count = status == SPZ_OK ? eligible(candidates, order) : 0;
    for (size_t start = 0, end; start < count && status == SPZ_OK; start = end) {
        uint64_t key = sides_pair_key(order[start]->sides);
        for (end = start; end < count && sides_pair_key(order[end]->sides) == key;)
            end++;
        size_t taken = take_best(&by_bar, order + start, end - start);
        status = chains_cut(&maker, order + start, taken);
    }
    if (status == SPZ_OK)
        status = stories_join(&maker, candidates);
    memory_free(by_bar.strongest);
    memory_free(by_bar.told);
    memory_free(order);
    return status;
}
