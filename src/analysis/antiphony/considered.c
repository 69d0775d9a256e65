/* The public explanation is made from an AntiphonySearch: what detect_antiphony saw, nothing else.
 *
 * The fate of a match is read off what the search left behind: taken or not, in a chain that stayed or not. What stood in its way is the
 * strongest match taken beside it, or the passage that tells most of its bars. What sets a match off from the clear passages of its
 * movement is the difference of their log odds, summed over features that mean the same to a musician. */
#include "analysis/antiphony/antiphony.h"
#include "analysis/antiphony/telling/chain_facts.h"
#include "analysis/melody/bar_roles.h"
#include "spezzato/explain.h"
#include <stdlib.h>
#include <string.h>

static const struct {
    double clear;     /* the scale of passages.h */
    double told;      /* share of the bars of a match that a stronger one has too: it says the same */
    double telling;   /* log odds by which a matter must differ to be worth a word: a third of the odds up, or a quarter down */
} rule = {.clear = 0.5, .told = 0.5, .telling = 0.3};

/* Features that a musician would take for one matter. */
typedef struct Matter {
    enum Feature features[9];
    size_t count;
} Matter;

static const Matter matters[SPZ_MATTER_COUNT] = {
    [SPZ_ALIKE] = {{F_SAME, F_EXACT, F_MIRROR, F_SAME_PITCH}, 4},
    [SPZ_FIGURE] = {{F_MOTION, F_RHYTHM, F_STILL, F_VALUES}, 4},
    [SPZ_MAKING_WAY] = {{F_YIELD, F_FREE, F_SWAP, F_CLEAN, F_EARLY, F_OVERLAP, F_CANON, F_COUNTER}, 8},
    [SPZ_EXTENT] = {{F_TURNS, F_NOTES, F_TOTAL, F_SHORT, F_SINGLE, F_REGULAR}, 6},
    [SPZ_DISTANCE] = {{F_LAG_BEATS, F_LAG_BARS, F_GAP, F_QUICK, F_LATE, F_PLACE}, 6},
    [SPZ_IN_FRONT] = {{F_FRONT, F_WINDS, F_DOUBLED, F_ALONGSIDE, F_BESIDE, F_CALL_TOP, F_ANSWER_TOP, F_CALL_WINDS, F_ANSWER_WINDS}, 9},
    [SPZ_BEGINNINGS] = {{F_RESTED, F_BEGINS, F_AWAITED, F_MARKED}, 4},
    [SPZ_SOUNDING] = {{F_SOFT, F_PIZZ, F_SPEED, F_CONTRAST}, 4},
    [SPZ_NEWS] = {{F_AHEAD, F_AGAIN, F_CALLER_BEFORE, F_RESPONDER_BEFORE, F_CALLER_AROUND, F_RESPONDER_AROUND, F_RARE}, 7},
};
enum { MATTERS = SPZ_MATTER_COUNT };

struct spz_explanation {
    Arena arena;
    spz_considered *at;
    size_t count, more;
    spz_voice_in_bar *voices;
    size_t voice_count;
};

typedef struct Inquiry {
    const Movement *movement;
    AntiphonySearch *search;
    const char *bar;
    size_t *chain_of;      /* by candidate: its chain, or SIZE_MAX */
    double clear_log_odds[MATTERS]; /* mean over the candidates of clear passages */
    size_t clear_count;
} Inquiry;

static double log_odds(const Evidence *evidence, const Matter *matter)
{
    double sum = 0;
    for (size_t i = 0; i < matter->count; i++)
        sum += feature_weight(matter->features[i]) * evidence->at[matter->features[i]];
    return sum;
}

static const Candidate *candidate_at(const Inquiry *inquiry, size_t index)
{
    return &inquiry->search->candidates.at[index];
}

static void read_chains(Inquiry *inquiry)
{
    const ChainList *chains = &inquiry->search->chains;
    for (size_t i = 0; i < inquiry->search->candidates.count; i++)
        inquiry->chain_of[i] = SIZE_MAX;
    for (size_t c = 0; c < chains->count; c++)
        for (size_t i = 0; i < chains->at[c].candidate_count; i++) {
            uint32_t index = chains->at[c].candidates[i];
            inquiry->chain_of[index] = c;
            if (chains->at[c].strength < rule.clear)
                continue;
            inquiry->clear_count++;
            for (size_t m = 0; m < MATTERS; m++)
                inquiry->clear_log_odds[m] += log_odds(&candidate_at(inquiry, index)->evidence, &matters[m]);
        }
    for (size_t m = 0; m < MATTERS && inquiry->clear_count; m++)
        inquiry->clear_log_odds[m] /= (double)inquiry->clear_count;
}

static bool touches(const Inquiry *inquiry, const Candidate *candidate)
{
    for (int bar = candidate->first; bar <= candidate->last; bar++)
        if (!strcmp(inquiry->movement->bars[bar].number, inquiry->bar))
            return true;
    return false;
}

typedef struct Place {
    double strength;
    size_t index;
    bool reported;
} Place;

static int stronger_first(const void *left, const void *right)
{
    const Place *a = left, *b = right;
    if (a->strength != b->strength)
        return a->strength > b->strength ? -1 : 1;
    return a->index < b->index ? -1 : a->index > b->index;
}

/* The strongest `most` and all that are reported, in order of strength; returns how many. */
static size_t choose(const Inquiry *inquiry, size_t most, Place *places, size_t *more)
{
    size_t count = 0, kept = 0;
    for (size_t i = 0; i < inquiry->search->candidates.count; i++)
        if (touches(inquiry, candidate_at(inquiry, i)))
            places[count++] = (Place){candidate_at(inquiry, i)->evidence.chance, i, inquiry->chain_of[i] != SIZE_MAX};
    if (count)
        qsort(places, count, sizeof *places, stronger_first);
    for (size_t i = 0; i < count; i++)
        if (i < most || places[i].reported)
            places[kept++] = places[i];
    *more = count - kept;
    return kept;
}

static int shared_bars(int first, int last, int other_first, int other_last)
{
    int from = first > other_first ? first : other_first, to = last < other_last ? last : other_last;
    return to >= from ? to - from + 1 : 0;
}

/* The strongest match of the same two that was taken over this one; NULL when there is none. */
static const Candidate *rival_of(const Inquiry *inquiry, const Candidate *candidate)
{
    const Candidate *best = NULL;
    for (size_t i = 0; i < inquiry->search->candidates.count; i++) {
        const Candidate *other = candidate_at(inquiry, i);
        if (!other->taken || other->evidence.chance < candidate->evidence.chance || sides_pair_key(candidate->sides) != sides_pair_key(other->sides) ||
            other->first - chains_beside > candidate->last || other->last + chains_beside < candidate->first)
            continue;
        if (!best || other->evidence.chance > best->evidence.chance)
            best = other;
    }
    return best;
}

/* The passage of another pair to which its story was handed over; NULL when there is none. */
static const Chain *teller_of(const Inquiry *inquiry, size_t index)
{
    for (size_t i = 0; i < inquiry->search->chains.count; i++)
        for (const AbsorbedPair *told = inquiry->search->chains.at[i].absorbed; told; told = told->next)
            for (size_t c = 0; c < told->count; c++)
                if (told->candidates[c] == index)
                    return &inquiry->search->chains.at[i];
    return NULL;
}

static spz_side side_told(const Side *side)
{
    return (spz_side){.section = side->section, .group = side->group, .orchestra = side->orchestra, .players = side->melodies & ~SPZ_WIND_PLAYERS};
}

/* As it is told: its first entry may lie before its first match, and its sides are those of its opening. SPZ_NO_MEMORY. */
static spz_status chain_instead(const Inquiry *inquiry, const Chain *chain, spz_stands_for *out)
{
    const Texture *texture = &inquiry->search->texture;
    const CandidateList *candidates = &inquiry->search->candidates;
    ChainFacts facts;
    spz_status status = chain_facts_make(texture->map, texture, candidates, chain, &facts);
    bool told = status == SPZ_OK && facts.opening.told, elsewhere = status == SPZ_OK && chain_begins_at(chain, &facts) != chain->onset;
    const Side *sides = told ? facts.opening.sides : chain->sides;
    *out = (spz_stands_for){.sides = {side_told(&sides[0]), side_told(&sides[1])}, .first = elsewhere ? facts.entries.at[0].bar : (size_t)chain->first,
                            .last = (size_t)chain->last, .strength = chain->strength, .with_others = chain->candidate_count > 1, .accompanies = chain->accompanies,
                            .kind = chain_kind(texture, candidates, chain)};
    chain_facts_release(&facts);
    return status;
}

static spz_stands_for match_instead(const Inquiry *inquiry, const Candidate *candidate)
{
    return (spz_stands_for){.sides = {side_told(&candidate->sides[0]), side_told(&candidate->sides[1])}, .first = (size_t)candidate->first,
                            .last = (size_t)candidate->last, .strength = strength_told(candidate->evidence.chance),
                            .lag = candidate_lag(&inquiry->search->texture, candidate)};
}

static spz_status find_fate(const Inquiry *inquiry, size_t index, spz_considered *item)
{
    spz_status status = SPZ_OK;
    const Candidate *candidate = candidate_at(inquiry, index);
    const Candidate *rival = candidate->taken ? NULL : rival_of(inquiry, candidate);
    const Chain *teller = candidate->taken ? teller_of(inquiry, index) : NULL;
    item->fate = SPZ_TOO_WEAK;
    if (inquiry->chain_of[index] != SIZE_MAX) {
        item->fate = SPZ_REPORTED;
        status = chain_instead(inquiry, &inquiry->search->chains.at[inquiry->chain_of[index]], &item->instead);
    } else if (rival) {
        int shared = shared_bars(candidate->first, candidate->last, rival->first, rival->last);
        item->fate = shared >= rule.told * (candidate->last - candidate->first + 1) ? SPZ_TOLD : SPZ_OVERSHADOWED;
        item->instead = match_instead(inquiry, rival);
    } else if (teller) {
        item->fate = SPZ_RETOLD;
        status = chain_instead(inquiry, teller, &item->instead);
    }
    return status;
}

/* What differs enough from the clear passages, the most telling first; what there is less of where `sign` is -1. */
static size_t find_matters(const Inquiry *inquiry, const Candidate *candidate, int sign, spz_matter out[MATTERS])
{
    bool said[MATTERS] = {false};
    size_t count = 0;
    while (inquiry->clear_count) {
        size_t best = MATTERS;
        double most = rule.telling;
        for (size_t m = 0; m < MATTERS; m++) {
            double by = sign * (log_odds(&candidate->evidence, &matters[m]) - inquiry->clear_log_odds[m]);
            if (!said[m] && by > most) {
                best = m;
                most = by;
            }
        }
        if (best == MATTERS)
            break;
        said[best] = true;
        out[count++] = (spz_matter)best;
    }
    return count;
}

static spz_status describe(const Inquiry *inquiry, size_t index, spz_considered *item)
{
    const Candidate *candidate = candidate_at(inquiry, index);
    const Match *match = &candidate->match;
    const double *features = candidate->evidence.at;
    *item = (spz_considered){.sides = {side_told(&candidate->sides[0]), side_told(&candidate->sides[1])},
                             .lag = candidate_lag(&inquiry->search->texture, candidate),
                             .change = opening_of_match(&inquiry->search->texture, candidate).answer.change, .first = (size_t)candidate->first,
                             .last = (size_t)candidate->last, .tones = (int)match->matched,
                             .statements = (int)match->statements, .alike = features[F_SAME], .exact = features[F_EXACT],
                             .caller_aside = match->yield, .responder_aside = match->free, .foreground = features[F_FRONT],
                             .strength = strength_told(candidate->evidence.chance), .later_link = candidate->later_link,
                             .thoughts = candidate->evidence.thoughts};
    if (candidate->nearer && candidate->alone >= chains_least_chance) {
        item->answers_nearer = true;
        item->nearer_caller = side_told(&candidate->nearer->sides[0]);
        item->nearer_lag = candidate_lag(&inquiry->search->texture, candidate->nearer);
        item->alone = strength_told(candidate->alone);
    }
    item->more_count = find_matters(inquiry, candidate, 1, item->more);
    item->less_count = find_matters(inquiry, candidate, -1, item->less);
    return find_fate(inquiry, index, item);
}

static spz_status inquire(Inquiry *inquiry, size_t most, spz_explanation *out)
{
    size_t all = inquiry->search->candidates.count;
    Place *places = memory_resize(NULL, all, sizeof *places);
    inquiry->chain_of = memory_resize(NULL, all, sizeof *inquiry->chain_of);
    spz_status status = places && inquiry->chain_of ? SPZ_OK : SPZ_NO_MEMORY;
    if (status == SPZ_OK) {
        read_chains(inquiry);
        size_t count = choose(inquiry, most, places, &out->more);
        out->at = arena_take(&out->arena, count, sizeof *out->at);
        status = out->at ? SPZ_OK : SPZ_NO_MEMORY;
        for (; !status && out->count < count; out->count++)
            status = describe(inquiry, places[out->count].index, &out->at[out->count]);
    }
    memory_free(inquiry->chain_of);
    memory_free(places);
    return status;
}

/* The first bar of that number; -1 for none. */
static int bar_numbered(const Movement *movement, const char *number)
{
    for (size_t i = 0; i < movement->bar_count; i++)
        if (!strcmp(movement->bars[i].number, number))
            return (int)i;
    return -1;
}

/* In the bars around: what lies farther off hardly matters to who has the line. */
static spz_status tell_roles(const SectionMap *map, int bar, spz_explanation *out)
{
    enum { BESIDE = 16 };
    Arena arena;
    Roles roles;
    size_t here = (size_t)bar, last = map->movement->bar_count - 1;
    arena_init(&arena);
    spz_status status = roles_of(map, here > BESIDE ? here - BESIDE : 0, here + BESIDE < last ? here + BESIDE : last, &arena, &roles);
    if (status == SPZ_OK) {
        out->voices = arena_take(&out->arena, roles.voices.map.group_count, sizeof *out->voices);
        status = out->voices ? SPZ_OK : SPZ_NO_MEMORY;
    }
    if (status == SPZ_OK)
        out->voice_count = bar_roles_of(&roles, bar, out->voices);
    arena_release(&arena);
    return status;
}

spz_status spz_explanation_make(const spz_sections *sections, const char *bar, size_t most, spz_explanation **out)
{
    *out = NULL;
    int index = bar ? bar_numbered(sections->movement, bar) : -1;
    if (index < 0)
        return SPZ_BAD_ARGUMENT;
    spz_explanation *explanation = memory_get(sizeof *explanation);
    if (!explanation)
        return SPZ_NO_MEMORY;
    *explanation = (spz_explanation){.at = NULL};
    arena_init(&explanation->arena);
    spz_status status = tell_roles(sections, index, explanation);
    if (status == SPZ_OK && sections->group_count >= 2) {
        AntiphonySearch search;
        Inquiry inquiry = {.movement = sections->movement, .search = &search, .bar = bar};
        status = antiphony_search_make(sections, &search);
        if (status == SPZ_OK)
            status = inquire(&inquiry, most, explanation);
        antiphony_search_release(&search);
    }
    if (status)
        spz_explanation_free(explanation);
    else
        *out = explanation;
    return status;
}

void spz_explanation_free(spz_explanation *explanation)
{
    if (!explanation)
        return;
    arena_release(&explanation->arena);
    memory_free(explanation);
}

size_t spz_explanation_count(const spz_explanation *explanation)
{
    return explanation->count;
}

const spz_considered *spz_explanation_at(const spz_explanation *explanation, size_t index)
{
    return index < explanation->count ? &explanation->at[index] : NULL;
}

size_t spz_explanation_more(const spz_explanation *explanation)
{
    return explanation->more;
}

size_t spz_explanation_voices(const spz_explanation *explanation)
{
    return explanation->voice_count;
}

const spz_voice_in_bar *spz_explanation_voice(const spz_explanation *explanation, size_t index)
{
    return index < explanation->voice_count ? &explanation->voices[index] : NULL;
}
