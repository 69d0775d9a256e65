#include "analysis/antiphony/chaining/stories.h"
#include "analysis/melody/bar_lists.h"
#include <stdlib.h>

/* Chosen by trying on the movements at hand, see docs/method.md. */
static const struct {
    double told;         /* a passage of which more than this share of bars a stronger one has too is told by it ... */
    double handed;       /* ... or this share, where one hands the gesture on to the other */
    double statement;    /* share of the shorter of two statements that is heard in both: the same one */
    double on;           /* share of a call that is heard as the answer before: it is handed on */
    double lasting;      /* strength from which a passage taken in lengthens its teller */
    double rest;         /* chance from which the part of a lost passage that its teller leaves out stands by itself */
    double violins;      /* chance from which a match of first and second violins may name a story */
    double violins_like; /* ... of whose notes this share agree */
    int reach;           /* ... that lies in its bars, or in one beside them */
    double violins_statement, violins_bars; /* ... that has this share of a statement in common, and this share of the bars */
} rule = {
    .told = 0.5, .handed = 0.5, .statement = 0.5, .on = 0.5, .lasting = 0.5, .rest = 0.5,
    .violins = 0.3, .violins_like = 0.8, .reach = 1, .violins_statement = 0.7, .violins_bars = 0.8,
};

static int stronger_first(const void *left, const void *right)
{
    const Chain *a = left, *b = right;
    if (a->claim != b->claim)
        return a->claim > b->claim ? -1 : 1;
    if (a->first != b->first)
        return a->first < b->first ? -1 : 1;
    uint64_t ka = sides_pair_key(a->sides), kb = sides_pair_key(b->sides);
    if (ka != kb)
        return ka < kb ? -1 : 1;
    if (a->onset != b->onset)
        return a->onset < b->onset ? -1 : 1;
    return a->end < b->end ? -1 : a->end > b->end;
}

typedef struct Statement { /* the calls, or the answers, of a match */
    Ticks from, to;
    uint64_t melodies;
} Statement;

static Statement calls_of(const Candidate *candidate)
{
    return (Statement){candidate->match.onset, candidate->match.call_end, candidate->sides[0].melodies};
}

static Statement answers_of(const Candidate *candidate)
{
    return (Statement){candidate->match.onset + candidate->match.lag, candidate->match.end, candidate->sides[1].melodies};
}

static Ticks length(Statement statement)
{
    return statement.to - statement.from;
}

static bool in_common(Statement a, Statement b, double share, Ticks of)
{
    Ticks from = a.from > b.from ? a.from : b.from, to = a.to < b.to ? a.to : b.to;
    return (a.melodies & b.melodies) && (double)(to - from) >= share * (double)of;
}

static bool share_statement(const Candidate *a, const Candidate *b, double share)
{
    const Statement of_a[] = {calls_of(a), answers_of(a)}, of_b[] = {calls_of(b), answers_of(b)};
    for (int i = 0; i < 2; i++)
        for (int j = 0; j < 2; j++)
            if (in_common(of_a[i], of_b[j], share, length(of_a[i]) < length(of_b[j]) ? length(of_a[i]) : length(of_b[j])))
                return true;
    return false;
}

/* An answer in `from` is a call in `to`. */
static bool hands_on(const Candidate *base, const Chain *from, const Chain *to)
{
    for (size_t i = 0; i < from->candidate_count; i++)
        for (size_t k = 0; k < to->candidate_count; k++) {
            const Candidate *earlier = &base[from->candidates[i]], *later = &base[to->candidates[k]];
            Statement call = calls_of(later);
            if (earlier->match.onset < later->match.onset && in_common(answers_of(earlier), call, rule.on, length(call)))
                return true;
        }
    return false;
}

static bool shares_any(const Candidate *base, const Candidate *candidate, int bar, const Chain *chain, double share)
{
    for (size_t i = 0; i < chain->candidate_count; i++) {
        const Candidate *other = &base[chain->candidates[i]];
        if (other->first <= bar && bar <= other->last && share_statement(candidate, other, share))
            return true;
    }
    return false;
}

/* Whether both are made of the same statements, in the better part of the bars of `weak`. */
static bool same_statements(const Candidate *base, const Chain *weak, const Chain *strong)
{
    int bars = 0;
    for (int bar = weak->first; bar <= weak->last; bar++)
        for (size_t i = 0; i < weak->candidate_count; i++) {
            const Candidate *candidate = &base[weak->candidates[i]];
            if (candidate->first <= bar && bar <= candidate->last && shares_any(base, candidate, bar, strong, rule.statement)) {
                bars++;
                break;
            }
        }
    return bars >= rule.told * (weak->last - weak->first + 1);
}

static int shared_bars(const Chain *a, const Chain *b)
{
    int first = a->first > b->first ? a->first : b->first, last = a->last < b->last ? a->last : b->last;
    return last >= first ? last - first + 1 : 0;
}

static bool same_story(const Candidate *base, const Chain *weak, const Chain *strong)
{
    if (!(weak->chain_melodies & strong->chain_melodies))
        return false;
    int bars = weak->last - weak->first + 1, shared = shared_bars(weak, strong);
    return shared > rule.told * bars ||
           (shared >= rule.handed * bars && (hands_on(base, strong, weak) || hands_on(base, weak, strong)));
}

static void lengthen(Chain *teller, const Chain *by)
{
    teller->first = by->first < teller->first ? by->first : teller->first;
    teller->last = by->last > teller->last ? by->last : teller->last;
    teller->onset = by->onset < teller->onset ? by->onset : teller->onset;
    teller->end = by->end > teller->end ? by->end : teller->end;
}

static bool take_in(const ChainMaker *maker, const Chain *from, Chain *to)
{
    AbsorbedPair *absorbed = arena_take(maker->arena, 1, sizeof *absorbed);
    if (!absorbed)
        return false;
    *absorbed = (AbsorbedPair){from->candidates, from->candidate_count, to->absorbed};
    if (from->strength >= rule.lasting && (hands_on(maker->base, from, to) || hands_on(maker->base, to, from)))
        lengthen(to, from);
    if (from->strength > to->strength && same_statements(maker->base, from, to))
        to->strength = from->strength;
    to->absorbed = absorbed;
    to->chain_melodies |= from->chain_melodies;
    return true;
}

/* The strongest kept chain that already tells the story of `weak`, NULL when none does. The kept ones stand by strength;
 * `neighbours`: those that touch each bar. */
static Chain *teller_of(const Candidate *base, const Chain *weak, Chain *kept, const BarNotes *neighbours)
{
    Chain *teller = NULL;
    for (int bar = weak->first; bar <= weak->last; bar++)
        for (const BarNote *note = bar_notes_newest(neighbours, bar); note; note = bar_notes_older(neighbours, note)) {
            Chain *strong = &kept[note->index];
            if ((!teller || strong < teller) && same_story(base, weak, strong))
                teller = strong;
        }
    return teller;
}

/* What a lost passage holds outside its teller's bars is a story of its own; added behind all others. */
static spz_status keep_rest(const ChainMaker *maker, const Chain *lost, int first, int last)
{
    Candidate **rest = arena_take(maker->arena, lost->candidate_count, sizeof *rest);
    size_t count = 0;
    for (size_t i = 0; rest && i < lost->candidate_count; i++) {
        Candidate *c = &maker->base[lost->candidates[i]];
        int from = c->first > first ? c->first : first, to = c->last < last ? c->last : last;
        int told = to >= from ? to - from + 1 : 0;
        if (2 * told < c->last - c->first + 1 && c->evidence.chance >= rule.rest)
            rest[count++] = c;
    }
    bool own = count > 0 && count < lost->candidate_count;
    return !rest ? SPZ_NO_MEMORY : own ? chains_cut(maker, rest, count) : SPZ_OK;
}

static spz_status keep_tellers(const ChainMaker *maker, BarNotes *neighbours)
{
    ChainList *chains = maker->out;
    size_t kept = 0;
    for (size_t i = 0; i < chains->count; i++) {
        Chain chain = chains->at[i];
        Chain *teller = teller_of(maker->base, &chain, chains->at, neighbours);
        if (teller ? !take_in(maker, &chain, teller) : !bar_notes_add(neighbours, chain.first, chain.last, (uint32_t)kept))
            return SPZ_NO_MEMORY;
        if (!teller)
            chains->at[kept++] = chain;
        else if (keep_rest(maker, &chain, teller->first, teller->last) != SPZ_OK)
            return SPZ_NO_MEMORY;
    }
    chains->count = kept;
    return SPZ_OK;
}

/* First against second violins of one orchestra. */
static bool of_violins(const Side sides[2])
{
    return sides_are(sides, SPZ_VN1, SPZ_VN2) && sides[0].orchestra == sides[1].orchestra;
}

static bool between_orchestras(const Side sides[2])
{
    return sides[0].orchestra != sides[1].orchestra && sides[0].orchestra && sides[1].orchestra;
}

/* Notes down, by bar, the matches of first and second violins that may name a story. */
static bool note_violins(const CandidateList *candidates, BarNotes *out)
{
    bool ok = true;
    for (size_t i = 0; ok && i < candidates->count; i++) {
        const Candidate *c = &candidates->at[i];
        if (of_violins(c->sides) && c->evidence.chance >= rule.violins && c->evidence.at[F_SAME] >= rule.violins_like)
            ok = bar_notes_add(out, c->first, c->last, (uint32_t)i);
    }
    return ok;
}

/* The violins' matches that are heard in a bar of the chain with a statement of its own: the clearest of all so far in `*clearest`. */
static bool shares_in_bar(const CandidateList *candidates, const BarNotes *violins, int bar, const Chain *chain, const Candidate **clearest)
{
    bool found = false;
    for (const BarNote *note = bar_notes_newest(violins, bar); note; note = bar_notes_older(violins, note)) {
        const Candidate *c = &candidates->at[note->index];
        bool shares = false;
        for (size_t i = 0; !shares && i < chain->candidate_count; i++)
            shares = share_statement(c, &candidates->at[chain->candidates[i]], rule.violins_statement);
        found = found || shares;
        if (shares && (!*clearest || c->evidence.chance > (*clearest)->evidence.chance))
            *clearest = c;
    }
    return found;
}

/* Bars by which the match reaches out of the chain, on one side or the other. */
static int bars_outside(const Candidate *candidate, const Chain *chain)
{
    int before = chain->first - candidate->first, behind = candidate->last - chain->last;
    return before > behind ? before : behind;
}

/* The match after which the chain is named is told in it: its call and its answer belong to the passage. */
static bool name_after(const ChainMaker *maker, const Candidate *candidate, Chain *chain)
{
    uint32_t *index = arena_take(maker->arena, 1, sizeof *index);
    AbsorbedPair *absorbed = arena_take(maker->arena, 1, sizeof *absorbed);
    if (!index || !absorbed)
        return false;
    *index = (uint32_t)(candidate - maker->base);
    *absorbed = (AbsorbedPair){index, 1, chain->absorbed};
    chain->absorbed = absorbed;
    chain->first = candidate->first < chain->first ? candidate->first : chain->first;
    chain->last = candidate->last > chain->last ? candidate->last : chain->last;
    chain->onset = candidate->match.onset < chain->onset ? candidate->match.onset : chain->onset;
    chain->end = candidate->match.end > chain->end ? candidate->match.end : chain->end;
    chain->named_by = candidate;
    chain->sides[0] = candidate->sides[0];
    chain->sides[1] = candidate->sides[1];
    return true;
}

/* The seating turns on the violins: a story in which they answer each other throughout is theirs, whoever else has the gesture. It is told as
 * the clearest of their matches in it goes. */
static bool name_by_violins(const ChainMaker *maker, const CandidateList *candidates, const BarNotes *violins, Chain *chain)
{
    const Candidate *clearest = NULL;
    int bars = 0;
    for (int bar = chain->first; bar <= chain->last; bar++)
        bars += shares_in_bar(candidates, violins, bar, chain, &clearest);
    if (!clearest || bars < rule.violins_bars * (chain->last - chain->first + 1) || bars_outside(clearest, chain) > rule.reach)
        return true;
    return name_after(maker, clearest, chain);
}

static spz_status join(const ChainMaker *maker, const CandidateList *candidates, BarNotes *neighbours, BarNotes *violins)
{
    if (maker->out->count)
        qsort(maker->out->at, maker->out->count, sizeof *maker->out->at, stronger_first);
    spz_status status = keep_tellers(maker, neighbours);
    if (status == SPZ_OK && !note_violins(candidates, violins))
        status = SPZ_NO_MEMORY;
    for (size_t i = 0; status == SPZ_OK && i < maker->out->count; i++)
        if (!of_violins(maker->out->at[i].sides) && !between_orchestras(maker->out->at[i].sides))
            status = name_by_violins(maker, candidates, violins, &maker->out->at[i]) ? SPZ_OK : SPZ_NO_MEMORY;
    return status;
}

spz_status stories_join(const ChainMaker *maker, const CandidateList *candidates)
{
    size_t bars = maker->texture->map->movement->bar_count;
    BarNotes neighbours = {0}, violins = {0};
    bool ok = bar_notes_make(bars, &neighbours) && bar_notes_make(bars, &violins);
    spz_status status = ok ? join(maker, candidates, &neighbours, &violins) : SPZ_NO_MEMORY;
    bar_notes_release(&neighbours);
    bar_notes_release(&violins);
    return status;
}
