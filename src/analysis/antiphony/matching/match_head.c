#include "analysis/antiphony/matching/match_head.h"

/* Set by hand; the dot is that of common notation. */
static const struct {
    int notes;  /* taken at most */
    int dotted; /* how many times as long as the next note a head is at most */
} rule = {.notes = 2, .dotted = 3};

/* A note can follow its head without a rest, and no head is longer than a dot makes it: what is longer ends another gesture. */
static bool may_follow(const NoteEvent *note)
{
    return !(note->flags & EVENT_AFTER_REST) && note[-1].end - note[-1].onset <= rule.dotted * (note->end - note->onset);
}

/* Do call and answer have the note before as well? By a dot the rhythm tells; else it leads on by the same step. */
static bool has_head(const NoteEvent *called, const NoteEvent *answered, int mirror)
{
    int a = event_direction(called - 1, called), b = mirror * event_direction(answered - 1, answered);
    bool dotted = (called->flags & answered->flags & EVENT_AFTER_LONG) || (called[-1].flags & answered[-1].flags & EVENT_AFTER_LONG);
    return called->onset - called[-1].onset == answered->onset - answered[-1].onset && may_follow(called) && may_follow(answered) &&
           (dotted ? a == b || a == -b : a == b && a != 0);
}

static bool opens_bar(const Movement *movement, const NoteEvent *note)
{
    return movement->bars[note->bar].onset == note->onset;
}

/* A gesture that begins so begins on a beat; one that begins with the bar has its head. */
void match_take_head(const Movement *movement, const Melody *melodies, Match *match)
{
    const NoteEvent *calls = melodies[match->caller].events, *answers = melodies[match->responder].events;
    uint32_t call = match->call_first, answer = match->answer_first;
    for (int i = 0; i < rule.notes && call && answer && !match->stretch; i++) {
        if (opens_bar(movement, &calls[call]) || !has_head(&calls[call], &answers[answer], match->mirror))
            return;
        call--;
        answer--;
        if (calls[call].flags & answers[answer].flags & EVENT_ON_BEAT) {
            match->call_first = call;
            match->answer_first = answer;
            match->onset = calls[call].onset;
        }
    }
}
