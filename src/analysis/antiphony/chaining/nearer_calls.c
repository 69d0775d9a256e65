#include "analysis/antiphony/chaining/nearer_calls.h"

/* Chosen by trying with weights of works left out, see docs/method.md. */
static const struct {
    double shared; /* of the answer, from its first note to the end of its last: as much is explained by the other call too */
    double yields; /* by this share of the distance in log odds the weaker of two explanations falls further behind */
} rule = {.shared = 0.4, .yields = 0.5};

static Ticks answer_begins(const Candidate *candidate)
{
    return candidate->match.onset + candidate->match.lag;
}

static bool explains_sooner(const Candidate *nearer, const Candidate *candidate)
{
    if (nearer == candidate || nearer->match.lag > candidate->match.lag || nearer->alone <= candidate->alone ||
        !(nearer->sides[1].melodies >> candidate->match.responder & 1))
        return false;
    Ticks from = answer_begins(candidate), to = candidate->match.end, length = to - from;
    from = answer_begins(nearer) > from ? answer_begins(nearer) : from;
    to = nearer->match.end < to ? nearer->match.end : to;
    return (double)(to - from) >= rule.shared * (double)length;
}

/* The likeliest nearer call; NULL where there is none. `answers`: those that sound in each bar. */
static const Candidate *nearer_call(const Movement *movement, const CandidateList *candidates, const BarNotes *answers, const Candidate *candidate)
{
    const Candidate *best = NULL;
    for (int bar = movement_bar_at(movement, answer_begins(candidate)); bar <= candidate->last; bar++)
        for (const BarNote *note = bar_notes_newest(answers, bar); note; note = bar_notes_older(answers, note)) {
            const Candidate *other = &candidates->at[note->index];
            if ((!best || other->alone > best->alone) && explains_sooner(other, candidate))
                best = other;
        }
    return best;
}

bool note_answers(const Movement *movement, const CandidateList *candidates, double chance, double alike, BarNotes *answers)
{
    bool ok = true;
    for (size_t i = 0; ok && i < candidates->count; i++) {
        const Candidate *c = &candidates->at[i];
        if (c->evidence.chance >= chance && c->evidence.at[F_SAME] >= alike)
            ok = bar_notes_add(answers, movement_bar_at(movement, answer_begins(c)), c->last, (uint32_t)i);
    }
    return ok;
}

static void yield_to(const Candidate *nearer, Candidate *candidate)
{
    double own = chance_log_odds(candidate->alone), behind = chance_log_odds(nearer->alone) - own;
    candidate->evidence.chance = chance_at_log_odds(own - rule.yields * behind);
}

spz_status nearer_calls_weigh(const Texture *texture, CandidateList *candidates)
{
    const Movement *movement = texture->map->movement;
    BarNotes answers;
    for (size_t i = 0; i < candidates->count; i++)
        candidates->at[i].alone = candidates->at[i].evidence.chance;
    bool ok = bar_notes_make(movement->bar_count, &answers) && note_answers(movement, candidates, chains_least_chance, 0, &answers);
    for (size_t i = 0; ok && i < candidates->count; i++) {
        Candidate *candidate = &candidates->at[i];
        candidate->nearer = nearer_call(movement, candidates, &answers, candidate);
        if (candidate->nearer)
            yield_to(candidate->nearer, candidate);
    }
    bar_notes_release(&answers);
    return ok ? SPZ_OK : SPZ_NO_MEMORY;
}
