#include "analysis/antiphony/matching/turns.h"

static const struct {
    double threshold;   /* quietness below which a note speaks against turn-taking */
    double rested;      /* bonus of notes whose statements begin after a rest in both groups */
    double still;       /* worth of a note that repeats the pitch before */
    double other;       /* worth of a note that moves differently */
    double least_gain;  /* sum of a stretch worth keeping */
    double drop;        /* a stretch is cut where the sum falls by this from its best */
    int forgotten;      /* an answer later than so many lengths of the call is none: the call is no longer in the ear */
    unsigned least_events;
    unsigned canon_events; /* imitation: shared notes at least, and shares that move and move alike */
    double canon_alike, canon_moving;
    float clean, active; /* quietness above which the caller has stepped aside, below which it is as busy as the answer */
    int canon_lags;     /* an imitation is followed this many lags; after that it is a texture */
} rule = {
    .threshold = 0.42, .rested = 0.22, .still = 0.35, .other = 0.5, .least_gain = 0.6, .drop = 0.9, .forgotten = 8, .least_events = 3,
    .canon_events = 5, .canon_alike = 0.75, .canon_moving = 0.5, .canon_lags = 4,
    .clean = 0.85f, .active = 0.35f,
};

static Ticks window_of(const NoteEvent *event)
{
    Ticks sounding = event->end - event->onset, step = event->next - event->onset;
    return step < 2 * sounding ? step : sounding;
}

/* What becomes of the word between two notes that both have: its last and this one. */
static void relate(TurnPair *pair, const NoteEvent *const called[2], const NoteEvent *const answered[2], const Match *run)
{
    int a = event_direction(called[0], called[1]), b = run->mirror * event_direction(answered[0], answered[1]);
    bool alone = called[1]->flags & answered[1]->flags & EVENT_AFTER_REST; /* notes that stand alone may lie where they like */
    pair->begins = pair->rested || called[1]->onset - called[0]->onset >= run->lag;
    pair->moving = a != 0;
    pair->alike = (int8_t)(a == b || alone ? 1 : a == -b ? -1 : 0);
    pair->exact = event_steps(called[0], called[1]) == run->mirror * event_steps(answered[0], answered[1]);
}

const TurnPair *turn_cutter_add(TurnCutter *cutter, const Match *run, uint32_t call, uint32_t answer)
{
    TurnPairs *pairs = &cutter->pairs;
    if (!array_reserve(pairs))
        return NULL;
    const NoteEvent *a = cutter->melodies[run->caller].events, *b = cutter->melodies[run->responder].events;
    TurnPair *pair = &pairs->at[pairs->count++];
    *pair = (TurnPair){.call = call, .answer = answer, .rested = event_is_fresh(&a[call]) && event_is_fresh(&b[answer])};
    if (pairs->count == 1)
        pair->begins = true;
    else
        relate(pair, (const NoteEvent *const[]){&a[pair[-1].call], &a[call]}, (const NoteEvent *const[]){&b[pair[-1].answer], &b[answer]}, run);
    return pair;
}

void turn_cutter_release(TurnCutter *cutter)
{
    memory_free(cutter->first_event);
    memory_free(cutter->quiet);
    array_free(&cutter->pairs);
}

spz_status turn_cutter_make(const Melody *melodies, size_t melody_count, TurnCutter *out)
{
    *out = (TurnCutter){.melodies = melodies, .melody_count = melody_count};
    out->first_event = memory_resize(NULL, melody_count, sizeof *out->first_event);
    for (size_t i = 0; out->first_event && i < melody_count; i++) {
        out->first_event[i] = out->event_count;
        out->event_count += melodies[i].count;
    }
    out->quiet = memory_zeroed(melody_count * out->event_count, sizeof *out->quiet);
    return out->first_event && out->quiet ? SPZ_OK : SPZ_NO_MEMORY;
}

/* How far `melody` stays out of the way of a note of `speaker`. */
static float quiet_under(TurnCutter *cutter, size_t melody, size_t speaker, uint32_t note)
{
    float *known = &cutter->quiet[melody * cutter->event_count + cutter->first_event[speaker] + note];
    if (*known <= 0) {
        const NoteEvent *event = &cutter->melodies[speaker].events[note];
        *known = (float)melody_quietness(&cutter->melodies[melody], event->onset, event->onset + window_of(event));
    }
    return *known;
}

static void weigh_pairs(TurnCutter *cutter, const Match *run)
{
    bool rested = false;
    for (size_t i = 0; i < cutter->pairs.count; i++) {
        TurnPair *pair = &cutter->pairs.at[i];
        pair->yield = quiet_under(cutter, run->caller, run->responder, pair->answer);
        pair->free = quiet_under(cutter, run->responder, run->caller, pair->call);
        rested = pair->begins ? pair->rested : rested;
        double likeness = pair->begins || (pair->alike > 0 && pair->moving) ? 1 : pair->alike > 0 ? rule.still : rule.other;
        double turn = 0.5 * (pair->yield + pair->free) - rule.threshold + (rested ? rule.rested : 0);
        pair->value = (float)(turn > 0 ? turn * likeness : turn);
    }
}

/* A match of the pairs first..last of a run. */
static Match match_of(const Melody *melodies, const Match *run, const TurnPairs *pairs, size_t first, size_t last)
{
    const TurnPair *p = &pairs->at[first], *q = &pairs->at[last];
    const Melody *a = &melodies[run->caller], *b = &melodies[run->responder];
    Match match = {.caller = run->caller, .responder = run->responder, .mirror = run->mirror, .stretch = run->stretch,
                   .lag = b->events[p->answer].onset - a->events[p->call].onset, .call_first = p->call, .call_last = q->call,
                   .answer_first = p->answer, .answer_last = q->answer,
                   .matched = (uint32_t)(last - first + 1), .onset = a->events[p->call].onset,
                   .call_end = a->events[q->call].end, .end = b->events[q->answer].end,
                   .transposition = (int16_t)(b->events[p->answer].midi - a->events[p->call].midi)};
    unsigned early = 0, index = 0;
    for (size_t i = first; i <= last; i++) {
        const TurnPair *pair = &pairs->at[i];
        bool begins = i == first || pair->begins;
        match.statements += begins;
        match.rested += begins && pair->rested;
        index = begins ? 0 : index + 1;
        if (!begins)
            match.spoken += a->events[pair->call].onset - a->events[pairs->at[i - 1].call].onset;
        if (i > first) {
            match.alike += pair->alike > 0;
            match.exact += pair->exact;
            match.moving += pair->moving;
        }
        match.clean += pair->yield > rule.clean;
        match.active += pair->yield < rule.active;
        match.yield += pair->yield;
        match.free += pair->free;
        if (index < 2) {
            match.early_yield += pair->yield;
            match.early_free += pair->free;
            early++;
        }
    }
    match.yield /= (float)match.matched;
    match.free /= (float)match.matched;
    match.early_yield /= (float)early;
    match.early_free /= (float)early;
    match.unmatched = (q->call - p->call + 1 - match.matched) + (q->answer - p->answer + 1 - match.matched);
    return match;
}

static bool keep(const Melody *melodies, const Match *run, const TurnPairs *pairs, size_t first, size_t last, MatchList *out)
{
    if (last - first + 1 < rule.least_events)
        return true;
    Match match = match_of(melodies, run, pairs, first, last);
    const NoteEvent *end = &melodies[match.caller].events[match.call_last];
    Ticks statement = match.spoken / match.statements + (end->end - end->onset);
    bool by_chance = match.mirror < 0 && match.moving < 2 * match.statements; /* one step the other way is no inversion */
    if (match.moving == 0 || by_chance || match.lag > rule.forgotten * statement)
        return true;
    return array_push(out, match);
}

/* Stretches of the largest sum, left to right, each ended where the sum has fallen by `drop`. */
static bool cut_turns(const Melody *melodies, const Match *run, const TurnPairs *pairs, MatchList *out, size_t *found)
{
    size_t first = 0, best_at = 0;
    double sum = 0, best = 0;
    for (size_t i = 0; i <= pairs->count; i++) {
        bool ends = i == pairs->count || sum + pairs->at[i].value < best - rule.drop || sum + pairs->at[i].value <= 0;
        if (!ends) {
            sum += pairs->at[i].value;
            if (sum > best) {
                best = sum;
                best_at = i;
            }
            continue;
        }
        if (best >= rule.least_gain) {
            if (!keep(melodies, run, pairs, first, best_at, out))
                return false;
            ++*found;
            i = best_at; /* what lies behind the best point may begin a stretch of its own */
        }
        first = i + 1;
        sum = best = 0;
    }
    return true;
}

/* The second group takes up a moving line while the first goes on. */
static bool cut_canon(const Melody *melodies, const Match *run, const TurnPairs *pairs, MatchList *out)
{
    size_t last = 0;
    Ticks begin = melodies[run->caller].events[pairs->at[0].call].onset;
    while (last + 1 < pairs->count &&
           melodies[run->caller].events[pairs->at[last + 1].call].onset - begin < rule.canon_lags * run->lag)
        last++;
    if (last + 1 < rule.canon_events || !event_is_fresh(&melodies[run->responder].events[pairs->at[0].answer]))
        return true;
    Match match = match_of(melodies, run, pairs, 0, last);
    if (match.alike < rule.canon_alike * (match.matched - 1) || match.moving < rule.canon_moving * (match.matched - 1))
        return true;
    match.overlapping = true;
    return array_push(out, match);
}

spz_status turns_cut(TurnCutter *cutter, const Match *run, MatchList *out)
{
    size_t found = 0;
    const Melody *melodies = cutter->melodies;
    const TurnPairs *pairs = &cutter->pairs;
    if (pairs->count < rule.least_events)
        return SPZ_OK;
    weigh_pairs(cutter, run);
    if (!cut_turns(melodies, run, pairs, out, &found))
        return SPZ_NO_MEMORY;
    return found > 0 || cut_canon(melodies, run, pairs, out) ? SPZ_OK : SPZ_NO_MEMORY;
}
