#include "analysis/antiphony/chaining/later_links.h"
#include "analysis/antiphony/chaining/nearer_calls.h"

/* Set by trying on the movements at hand, see docs/method.md. */
static const struct {
    double later;  /* what is left of the chance of a later link */
    double chance; /* of the link before, at least */
    double alike;  /* notes of the link before that agree, at least */
    double same_call; /* share of the shorter of two calls that is in both: the same one */
    double shared; /* share of the call that is heard as the answer before */
} rule = {.later = 0.8, .chance = 0.3, .alike = 0.8, .same_call = 0.5, .shared = 0.4};

/* The call of `later` is the answer of `earlier`, and a third side answers it. */
static bool hands_on(const Candidate *earlier, const Candidate *later)
{
    const Match *a = &earlier->match, *b = &later->match;
    if (a->onset >= b->onset || !(earlier->sides[1].melodies & later->sides[0].melodies) ||
        (earlier->sides[0].melodies & (later->sides[0].melodies | later->sides[1].melodies)))
        return false;
    Ticks from = a->onset + a->lag > b->onset ? a->onset + a->lag : b->onset, to = a->end < b->call_end ? a->end : b->call_end;
    return (double)(to - from) >= rule.shared * (double)(b->call_end - b->onset);
}

static bool between_orchestras(const Candidate *candidate)
{
    int one = candidate->sides[0].orchestra, other = candidate->sides[1].orchestra;
    return one && other && one != other;
}

/* Both answer the same call, `sooner` first: the other comes third. What passes within an orchestra before the other answers does not count. */
static bool answers_sooner(const Candidate *sooner, const Candidate *later)
{
    const Match *a = &sooner->match, *b = &later->match;
    if (between_orchestras(later) && !between_orchestras(sooner))
        return false;
    if (a->lag >= b->lag || !(sooner->sides[0].melodies & later->sides[0].melodies) ||
        (sooner->sides[1].melodies & (later->sides[0].melodies | later->sides[1].melodies)))
        return false;
    Ticks from = a->onset > b->onset ? a->onset : b->onset, to = a->call_end < b->call_end ? a->call_end : b->call_end;
    Ticks one = a->call_end - a->onset, other = b->call_end - b->onset;
    return (double)(to - from) >= rule.same_call * (double)(one < other ? one : other);
}

/* `answers`: those that sound in each bar. */
static bool is_later_link(const CandidateList *candidates, const BarNotes *answers, const Candidate *call)
{
    for (int bar = call->first; bar <= call->last; bar++)
        for (const BarNote *note = bar_notes_newest(answers, bar); note; note = bar_notes_older(answers, note))
            if (hands_on(&candidates->at[note->index], call) || answers_sooner(&candidates->at[note->index], call))
                return true;
    return false;
}

spz_status links_weigh(const Texture *texture, CandidateList *candidates)
{
    const Movement *movement = texture->map->movement;
    BarNotes answers;
    bool ok = bar_notes_make(movement->bar_count, &answers) && note_answers(movement, candidates, rule.chance, rule.alike, &answers);
    for (size_t i = 0; ok && i < candidates->count; i++)
        candidates->at[i].later_link = is_later_link(candidates, &answers, &candidates->at[i]);
    for (size_t i = 0; ok && i < candidates->count; i++)
        if (candidates->at[i].later_link)
            candidates->at[i].evidence.chance *= rule.later;
    bar_notes_release(&answers);
    return ok ? SPZ_OK : SPZ_NO_MEMORY;
}
