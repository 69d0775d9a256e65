#include "analysis/antiphony/matching/match.h"

bool match_next_pair(const Melody *melodies, const Match *match, uint32_t *call, uint32_t *answer, const NoteEvent **called,
                     const NoteEvent **answered)
{
    const Melody *a = &melodies[match->caller], *b = &melodies[match->responder];
    while (*call <= match->call_last && *answer <= match->answer_last) {
        const NoteEvent *c = &a->events[*call], *r = &b->events[*answer];
        Ticks due = match_due_after(match, c->onset, r->onset);
        if (due <= 0)
            ++*call;
        if (due >= 0)
            ++*answer;
        if (due == 0) {
            *called = c;
            *answered = r;
            return true;
        }
    }
    return false;
}
