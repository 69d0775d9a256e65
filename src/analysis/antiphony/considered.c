#include "analysis/antiphony/considered.h"
#include "analysis/antiphony/antiphony_words.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const struct {
    double clear;     /* the scale of passages.h */
    double told;      /* share of the bars of a match that a stronger one has too: it says the same */
    double telling;   /* log odds by which a matter must differ to be worth a word: a third of the odds up, or a quarter down */
} rule = {.clear = 0.5, .told = 0.5, .telling = 0.3};

/* Features that a musician would take for one matter, and how to say that there is more or less of it. */
typedef struct Matter {
    const char *less, *more;
    enum Feature features[8];
    size_t count;
} Matter;

static const Matter matters[] = {
    {"less alike", "more alike", {F_SAME, F_EXACT, F_MIRROR, F_SAME_PITCH}, 4},
    {"less of a figure (repeated or even notes)", "a figure of its own", {F_MOTION, F_RHYTHM, F_RARE, F_STILL}, 4},
    {"each stays less out of the other's way", "each makes way for the other", {F_YIELD, F_FREE, F_SWAP, F_CLEAN, F_EARLY, F_OVERLAP, F_CANON}, 7},
    {"shorter, or fewer times", "longer, or more often", {F_TURNS, F_NOTES, F_TOTAL, F_SHORT, F_SINGLE, F_REGULAR}, 6},
    {"the answer comes at a less telling distance", "the answer comes at a telling distance", {F_LAG_BEATS, F_LAG_BARS, F_GAP, F_QUICK, F_LATE, F_PLACE}, 6},
    {"less in the foreground", "more in the foreground", {F_FRONT, F_WINDS, F_DOUBLED, F_ALONGSIDE, F_BESIDE}, 5},
    {"its beginnings stand out less", "its beginnings stand out", {F_RESTED, F_BEGINS}, 2},
    {"it sounds less (soft, plucked, quick)", "it sounds more", {F_SOFT, F_PIZZ, F_SPEED, F_CONTRAST}, 4},
};
enum { MATTERS = sizeof matters / sizeof matters[0] };

struct spz_explanation {
    Arena arena;
    spz_considered *at;
    size_t count, more;
};

typedef struct Inquiry {
    const Movement *movement;
    AntiphonySearch *search;
    Arena *arena; /* of the result */
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

static void put_bars(const Movement *movement, int first, int last, Buffer *out)
{
    if (first == last)
        buffer_printf(out, "bar %s", movement->bars[first].number);
    else
        buffer_printf(out, "bars %s-%s", movement->bars[first].number, movement->bars[last].number);
}

static void put_chain(const Inquiry *inquiry, const Chain *chain, Buffer *out)
{
    side_words(&inquiry->search->texture, &chain->sides[0], out);
    buffer_puts(out, " and ");
    side_words(&inquiry->search->texture, &chain->sides[1], out);
    buffer_puts(out, ", ");
    put_bars(inquiry->movement, chain->first, chain->last, out);
}

static void put_reported(const Inquiry *inquiry, const Chain *chain, Buffer *out)
{
    spz_kind kind = chain_kind(&inquiry->search->texture, &inquiry->search->candidates, chain);
    buffer_printf(out, "%s as %s, ", chain->candidate_count > 1 ? "reported with others" : "reported", spz_kind_name(kind));
    put_chain(inquiry, chain, out);
    buffer_printf(out, ", %s", spz_strength_word(chain->strength));
}

static void put_rival(const Inquiry *inquiry, const Candidate *candidate, const Candidate *rival, spz_fate fate, Buffer *out)
{
    buffer_puts(out, fate == SPZ_TOLD ? "left out: the same two answer each other there more clearly " : "left out: much weaker than what the same two have beside it ");
    lag_words(&inquiry->search->texture, rival, out);
    buffer_puts(out, " apart, ");
    put_bars(inquiry->movement, rival->first, rival->last, out);
    buffer_printf(out, ", %.2f against %.2f", strength_told(rival->evidence.chance), strength_told(candidate->evidence.chance));
}

static void put_fate(const Inquiry *inquiry, size_t index, spz_considered *item, Buffer *out)
{
    const Candidate *candidate = candidate_at(inquiry, index);
    const Candidate *rival = candidate->taken ? NULL : rival_of(inquiry, candidate);
    const Chain *teller = candidate->taken ? teller_of(inquiry, index) : NULL;
    if (inquiry->chain_of[index] != SIZE_MAX) {
        item->fate = SPZ_REPORTED;
        put_reported(inquiry, &inquiry->search->chains.at[inquiry->chain_of[index]], out);
    } else if (rival) {
        int shared = shared_bars(candidate->first, candidate->last, rival->first, rival->last);
        item->fate = shared >= rule.told * (candidate->last - candidate->first + 1) ? SPZ_TOLD : SPZ_OVERSHADOWED;
        put_rival(inquiry, candidate, rival, item->fate, out);
    } else if (teller) {
        item->fate = SPZ_RETOLD;
        buffer_puts(out, "left out: the passage of ");
        put_chain(inquiry, teller, out);
        buffer_puts(out, ", tells it already");
    } else {
        item->fate = SPZ_TOO_WEAK;
        buffer_puts(out, "left out: too weak to be listed even as marginal");
    }
}

/* What differs enough from the clear passages, the most telling first; 'less' where `sign` is -1. */
static void put_matters(const Inquiry *inquiry, const Candidate *candidate, int sign, Buffer *out)
{
    bool said[MATTERS] = {false};
    for (;;) {
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
            return;
        said[best] = true;
        buffer_printf(out, "%s%s", out->length ? "; " : "", sign < 0 ? matters[best].less : matters[best].more);
    }
}

/* Takes the text of the buffer into the arena and empties it. */
static const char *settle(const Inquiry *inquiry, Buffer *text)
{
    const char *own = buffer_failed(text) ? NULL : arena_string(inquiry->arena, text->length ? text->text : "");
    buffer_clear(text);
    return own;
}

static bool put_words(const Inquiry *inquiry, size_t index, Buffer *text, spz_considered *item)
{
    const Candidate *candidate = candidate_at(inquiry, index);
    const Texture *texture = &inquiry->search->texture;
    side_words(texture, &candidate->sides[0], text);
    item->caller = settle(inquiry, text);
    side_words(texture, &candidate->sides[1], text);
    item->responder = settle(inquiry, text);
    lag_words(texture, candidate, text);
    item->lag = settle(inquiry, text);
    interval_words(texture, &candidate->match, text);
    item->interval = settle(inquiry, text);
    if (inquiry->clear_count)
        put_matters(inquiry, candidate, 1, text);
    item->for_it = settle(inquiry, text);
    if (inquiry->clear_count)
        put_matters(inquiry, candidate, -1, text);
    item->against_it = settle(inquiry, text);
    put_fate(inquiry, index, item, text);
    buffer_puts(text, candidate->later_link ? "; it counts for less, as its call is itself an answer" : "");
    item->because = settle(inquiry, text);
    return item->caller && item->responder && item->lag && item->interval && item->for_it && item->against_it && item->because;
}

static bool describe(const Inquiry *inquiry, size_t index, spz_considered *item)
{
    const Candidate *candidate = candidate_at(inquiry, index);
    const Match *match = &candidate->match;
    const double *features = candidate->evidence.at;
    *item = (spz_considered){.first = (size_t)candidate->first, .last = (size_t)candidate->last,
                             .first_bar = inquiry->movement->bars[candidate->first].number,
                             .last_bar = inquiry->movement->bars[candidate->last].number, .tones = (int)match->matched,
                             .statements = (int)match->statements, .alike = features[F_SAME], .exact = features[F_EXACT],
                             .caller_aside = match->yield, .responder_aside = match->free, .foreground = features[F_FRONT],
                             .strength = strength_told(candidate->evidence.chance)};
    Buffer text;
    buffer_init(&text);
    bool ok = put_words(inquiry, index, &text, item);
    buffer_free(&text);
    return ok;
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
        for (; out->at && out->count < count && describe(inquiry, places[out->count].index, &out->at[out->count]); out->count++)
            ;
        status = out->at && out->count == count ? SPZ_OK : SPZ_NO_MEMORY;
    }
    memory_free(inquiry->chain_of);
    memory_free(places);
    return status;
}

static bool has_bar(const Movement *movement, const char *bar)
{
    for (size_t i = 0; i < movement->bar_count; i++)
        if (!strcmp(movement->bars[i].number, bar))
            return true;
    return false;
}

spz_status spz_explanation_make(const spz_sections *sections, const char *bar, size_t most, spz_explanation **out)
{
    *out = NULL;
    if (!bar || !has_bar(sections->movement, bar))
        return SPZ_BAD_ARGUMENT;
    spz_explanation *explanation = memory_get(sizeof *explanation);
    if (!explanation)
        return SPZ_NO_MEMORY;
    *explanation = (spz_explanation){.at = NULL};
    arena_init(&explanation->arena);
    spz_status status = SPZ_OK;
    if (sections->group_count >= 2) {
        AntiphonySearch search;
        Inquiry inquiry = {.movement = sections->movement, .search = &search, .arena = &explanation->arena, .bar = bar};
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
