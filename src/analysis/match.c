#include "analysis/match.h"

bool match_next_pair(const Tune *tunes, const Match *match, uint32_t *call, uint32_t *answer, const Tone **called,
                     const Tone **answered)
{
    const Tune *a = &tunes[match->caller], *b = &tunes[match->responder];
    while (*call <= match->call_last && *answer <= match->answer_last) {
        const Tone *c = &a->tones[*call], *r = &b->tones[*answer];
        Ticks when = c->onset + match->lag;
        if (when <= r->onset)
            ++*call;
        if (when >= r->onset)
            ++*answer;
        if (when == r->onset) {
            *called = c;
            *answered = r;
            return true;
        }
    }
    return false;
}
