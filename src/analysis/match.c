#include "analysis/match.h"

bool match_next_pair(const Tune *tunes, const Match *match, uint32_t *call, uint32_t *answer, const Tone **called,
                     const Tone **answered)
{
    const Tune *a = &tunes[match->caller], *b = &tunes[match->responder];
    while (*call <= match->call_last && *answer <= match->answer_last) {
        const Tone *c = &a->tones[*call], *r = &b->tones[*answer];
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
