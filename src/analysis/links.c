#include "analysis/links.h"

/* Set by trying on the movements at hand, see docs/method.md. */
static const struct {
    double later;    /* what is left of the strength of a later link */
    double strength; /* of the link before, at least */
    double alike;    /* tones of the link before that agree, at least */
    double shared;   /* share of the call that is heard as the answer before */
} rule = {.later = 0.8, .strength = 0.3, .alike = 0.8, .shared = 0.4};

/* The answers that sound in each bar, so that a call is held against those of its time only. */
typedef struct AnswerNote {
    uint32_t candidate, older; /* index, and index + 1 of the note before in the same bar */
} AnswerNote;

typedef struct Answers {
    ARRAY(AnswerNote) notes;
    uint32_t *newest; /* by bar: index + 1 */
} Answers;

static bool note_answer(const Movement *movement, const Match *match, uint32_t index, Answers *answers)
{
    int last = movement_bar_at(movement, match->end - 1);
    for (int bar = movement_bar_at(movement, match->onset + match->lag); bar <= last; bar++) {
        AnswerNote note = {index, answers->newest[bar]};
        if (!array_push(&answers->notes, note))
            return false;
        answers->newest[bar] = (uint32_t)answers->notes.count;
    }
    return true;
}

/* The call of `later` is the answer of `earlier`, and a third side answers it. */
static bool hands_on(const Candidate *earlier, const Candidate *later)
{
    const Match *a = &earlier->match, *b = &later->match;
    if (a->onset >= b->onset || !(earlier->sides[1].tunes & later->sides[0].tunes) ||
        (earlier->sides[0].tunes & (later->sides[0].tunes | later->sides[1].tunes)))
        return false;
    Ticks from = a->onset + a->lag > b->onset ? a->onset + a->lag : b->onset, to = a->end < b->call_end ? a->end : b->call_end;
    return (double)(to - from) >= rule.shared * (double)(b->call_end - b->onset);
}

static bool is_later_link(const Movement *movement, const CandidateList *candidates, const Answers *answers, const Candidate *call)
{
    int last = movement_bar_at(movement, call->match.call_end - 1);
    for (int bar = call->first; bar <= last; bar++)
        for (uint32_t at = answers->newest[bar]; at != 0; at = answers->notes.at[at - 1].older)
            if (hands_on(&candidates->at[answers->notes.at[at - 1].candidate], call))
                return true;
    return false;
}

spz_status links_weigh(const Scene *scene, CandidateList *candidates)
{
    const Movement *movement = scene->map->movement;
    Answers answers = {.newest = memory_zeroed(movement->bar_count, sizeof *answers.newest)};
    spz_status status = answers.newest ? SPZ_OK : SPZ_NO_MEMORY;
    for (size_t i = 0; status == SPZ_OK && i < candidates->count; i++) {
        const Candidate *c = &candidates->at[i];
        bool heard = c->evidence.strength >= rule.strength && c->evidence.at[F_SAME] >= rule.alike;
        if (heard && !note_answer(movement, &c->match, (uint32_t)i, &answers))
            status = SPZ_NO_MEMORY;
    }
    for (size_t i = 0; status == SPZ_OK && i < candidates->count; i++)
        candidates->at[i].later_link = is_later_link(movement, candidates, &answers, &candidates->at[i]);
    for (size_t i = 0; status == SPZ_OK && i < candidates->count; i++)
        if (candidates->at[i].later_link)
            candidates->at[i].evidence.strength *= rule.later;
    array_free(&answers.notes);
    memory_give(answers.newest);
    return status;
}
