#include "analysis/antiphony/chaining/conversations.h"
#include "analysis/melody/bar_lists.h"
#include <math.h>

/* Chosen by trying with weights of works left out, see docs/method.md. */
static const struct {
    int bars;       /* as far apart two answers belong to one conversation */
    double clear;   /* chance from which a match lends others weight */
    double lends;   /* of its log odds, up to ... */
    double most;    /* ... these */
} rule = {.bars = 6, .clear = 0.5, .lends = 0.15, .most = 2};

static bool apart(const Match *one, const Match *other)
{
    return other->onset >= one->end || other->end <= one->onset;
}

/* Chance of the clearest match that the same two have in the bars around; 0 where there is none. */
static double clearest_beside(const CandidateList *candidates, const BarNotes *clear, int bar_count, const Candidate *candidate)
{
    int first = candidate->first > rule.bars ? candidate->first - rule.bars : 0;
    int last = candidate->last + rule.bars < bar_count ? candidate->last + rule.bars : bar_count - 1;
    double clearest = 0;
    uint64_t pair = sides_pair_key(candidate->sides);
    for (int bar = first; bar <= last; bar++)
        for (const BarNote *note = bar_notes_newest(clear, bar); note; note = bar_notes_older(clear, note)) {
            const Candidate *other = &candidates->at[note->index];
            if (other->evidence.chance > clearest && apart(&candidate->match, &other->match) && sides_pair_key(other->sides) == pair)
                clearest = other->evidence.chance;
        }
    return clearest;
}

static bool note_clear(const CandidateList *candidates, BarNotes *clear)
{
    bool ok = true;
    for (size_t i = 0; ok && i < candidates->count; i++)
        if (candidates->at[i].evidence.chance > rule.clear)
            ok = bar_notes_add(clear, candidates->at[i].first, candidates->at[i].last, (uint32_t)i);
    return ok;
}

spz_status conversations_weigh(const Texture *texture, CandidateList *candidates)
{
    int bar_count = (int)texture->map->movement->bar_count;
    double *weighed = memory_get(candidates->count * sizeof *weighed);
    BarNotes clear;
    bool ok = bar_notes_make((size_t)bar_count, &clear) && weighed && note_clear(candidates, &clear);
    for (size_t i = 0; ok && i < candidates->count; i++) {
        double chance = candidates->at[i].evidence.chance, beside = clearest_beside(candidates, &clear, bar_count, &candidates->at[i]);
        double lent = beside > 0 ? rule.lends * fmin(rule.most, chance_log_odds(beside)) : 0;
        weighed[i] = chance >= chains_least_chance ? chance_at_log_odds(chance_log_odds(chance) + lent) : chance;
    }
    for (size_t i = 0; ok && i < candidates->count; i++)
        candidates->at[i].evidence.chance = weighed[i];
    bar_notes_release(&clear);
    memory_free(weighed);
    return ok ? SPZ_OK : SPZ_NO_MEMORY;
}
