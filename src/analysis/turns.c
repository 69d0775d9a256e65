#include "analysis/turns.h"

static const struct {
    double threshold;   /* quietness below which a tone speaks against turn-taking */
    double rested;      /* bonus of tones whose statements begin after a rest in both groups */
    double still;       /* worth of a tone that repeats the pitch before */
    double other;       /* worth of a tone that moves differently */
    double least_gain;  /* sum of a stretch worth keeping */
    double drop;        /* a stretch is cut where the sum falls by this from its best */
    int forgotten;      /* an answer later than so many lengths of the call is none: the call is no longer in the ear */
    unsigned least_tones;
    unsigned canon_tones; /* imitation: shared tones at least, and shares that move and move alike */
    double canon_alike, canon_moving;
    float clean, active; /* quietness above which the caller has stepped aside, below which it is as busy as the answer */
    int canon_lags;     /* an imitation is followed this many lags; after that it is a texture */
} rule = {
    .threshold = 0.42, .rested = 0.22, .still = 0.35, .other = 0.5, .least_gain = 0.6, .drop = 0.9, .forgotten = 8, .least_tones = 3,
    .canon_tones = 5, .canon_alike = 0.75, .canon_moving = 0.5, .canon_lags = 4,
    .clean = 0.85f, .active = 0.35f,
};

static Ticks window_of(const Tone *tone)
{
    Ticks sounding = tone->end - tone->onset, step = tone->next - tone->onset;
    return step < 2 * sounding ? step : sounding;
}

static void relate(TurnPair *pair, const Tone *called, const Tone *answered, const Tone *last_call, const Tone *last_answer,
                   const Match *run)
{
    bool rests = tone_is_fresh(called) && tone_is_fresh(answered);
    pair->begins = !last_call || rests || called->onset - last_call->onset >= run->lag;
    pair->rested = rests;
    if (!last_call)
        return;
    int a = tone_direction(last_call, called), b = run->mirror * tone_direction(last_answer, answered);
    pair->moving = a != 0;
    bool alone = called->flags & answered->flags & TONE_AFTER_REST; /* notes that stand alone may lie where they like */
    pair->alike = (int8_t)(a == b || alone ? 1 : a == -b ? -1 : 0);
    pair->exact = tone_steps(last_call, called) == run->mirror * tone_steps(last_answer, answered);
}

void turn_cutter_release(TurnCutter *cutter)
{
    memory_give(cutter->first_tone);
    memory_give(cutter->quiet);
    array_free(&cutter->pairs);
}

spz_status turn_cutter_make(const Tune *tunes, size_t tune_count, TurnCutter *out)
{
    *out = (TurnCutter){.tunes = tunes, .tune_count = tune_count};
    out->first_tone = memory_resize(NULL, tune_count, sizeof *out->first_tone);
    for (size_t i = 0; out->first_tone && i < tune_count; i++) {
        out->first_tone[i] = out->tone_count;
        out->tone_count += tunes[i].count;
    }
    out->quiet = memory_zeroed(tune_count * out->tone_count, sizeof *out->quiet);
    return out->first_tone && out->quiet ? SPZ_OK : SPZ_NO_MEMORY;
}

/* How far `tune` stays out of the way of a tone of `speaker`. */
static float quiet_under(TurnCutter *cutter, size_t tune, size_t speaker, const Tone *tone)
{
    size_t place = cutter->first_tone[speaker] + (size_t)(tone - cutter->tunes[speaker].tones);
    float *known = &cutter->quiet[tune * cutter->tone_count + place];
    if (*known <= 0)
        *known = (float)tune_quietness(&cutter->tunes[tune], tone->onset, tone->onset + window_of(tone));
    return *known;
}

static bool collect(TurnCutter *cutter, const Match *run)
{
    const Tune *tunes = cutter->tunes;
    TurnPairs *pairs = &cutter->pairs;
    const Tune *a = &tunes[run->caller], *b = &tunes[run->responder];
    uint32_t call = run->call_first, answer = run->answer_first;
    const Tone *called, *answered, *last_call = NULL, *last_answer = NULL;
    bool rested = false;
    pairs->count = 0;
    while (match_next_pair(tunes, run, &call, &answer, &called, &answered)) {
        if (!array_reserve(pairs))
            return false;
        TurnPair *pair = &pairs->at[pairs->count++]; /* written in its place: copying what was just written stalls */
        *pair = (TurnPair){.call = (uint32_t)(called - a->tones), .answer = (uint32_t)(answered - b->tones)};
        pair->yield = quiet_under(cutter, run->caller, run->responder, answered);
        pair->free = quiet_under(cutter, run->responder, run->caller, called);
        relate(pair, called, answered, last_call, last_answer, run);
        rested = pair->begins ? pair->rested : rested;
        double likeness = pair->begins || (pair->alike > 0 && pair->moving) ? 1 : pair->alike > 0 ? rule.still : rule.other;
        double turn = 0.5 * (pair->yield + pair->free) - rule.threshold + (rested ? rule.rested : 0);
        pair->value = (float)(turn > 0 ? turn * likeness : turn);
        last_call = called;
        last_answer = answered;
    }
    return true;
}

/* A match of the pairs first..last of a run. */
static Match match_of(const Tune *tunes, const Match *run, const TurnPairs *pairs, size_t first, size_t last)
{
    const TurnPair *p = &pairs->at[first], *q = &pairs->at[last];
    const Tune *a = &tunes[run->caller], *b = &tunes[run->responder];
    Match match = {.caller = run->caller, .responder = run->responder, .mirror = run->mirror, .stretch = run->stretch,
                   .lag = b->tones[p->answer].onset - a->tones[p->call].onset, .call_first = p->call, .call_last = q->call,
                   .answer_first = p->answer, .answer_last = q->answer,
                   .matched = (uint32_t)(last - first + 1), .onset = a->tones[p->call].onset,
                   .call_end = a->tones[q->call].end, .end = b->tones[q->answer].end,
                   .transposition = (int16_t)(b->tones[p->answer].midi - a->tones[p->call].midi)};
    unsigned early = 0, index = 0;
    for (size_t i = first; i <= last; i++) {
        const TurnPair *pair = &pairs->at[i];
        bool begins = i == first || pair->begins;
        match.statements += begins;
        match.rested += begins && pair->rested;
        index = begins ? 0 : index + 1;
        if (!begins)
            match.spoken += a->tones[pair->call].onset - a->tones[pairs->at[i - 1].call].onset;
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

static bool keep(const Tune *tunes, const Match *run, const TurnPairs *pairs, size_t first, size_t last, MatchList *out)
{
    if (last - first + 1 < rule.least_tones)
        return true;
    Match match = match_of(tunes, run, pairs, first, last);
    const Tone *end = &tunes[match.caller].tones[match.call_last];
    Ticks statement = match.spoken / match.statements + (end->end - end->onset);
    bool by_chance = match.mirror < 0 && match.moving < 2 * match.statements; /* one step the other way is no inversion */
    if (match.moving == 0 || by_chance || match.lag > rule.forgotten * statement)
        return true;
    return array_push(out, match);
}

/* Stretches of the largest sum, left to right, each ended where the sum has fallen by `drop`. */
static bool cut_turns(const Tune *tunes, const Match *run, const TurnPairs *pairs, MatchList *out, size_t *found)
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
            if (!keep(tunes, run, pairs, first, best_at, out))
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
static bool cut_canon(const Tune *tunes, const Match *run, const TurnPairs *pairs, MatchList *out)
{
    size_t last = 0;
    Ticks begin = tunes[run->caller].tones[pairs->at[0].call].onset;
    while (last + 1 < pairs->count &&
           tunes[run->caller].tones[pairs->at[last + 1].call].onset - begin < rule.canon_lags * run->lag)
        last++;
    Match match = match_of(tunes, run, pairs, 0, last);
    if (match.matched < rule.canon_tones || match.alike < rule.canon_alike * (match.matched - 1) ||
        match.moving < rule.canon_moving * (match.matched - 1))
        return true;
    if (!tone_is_fresh(&tunes[run->responder].tones[match.answer_first]))
        return true;
    match.overlapping = true;
    return array_push(out, match);
}

spz_status turns_cut(TurnCutter *cutter, const Match *run, MatchList *out)
{
    size_t found = 0;
    const Tune *tunes = cutter->tunes;
    const TurnPairs *pairs = &cutter->pairs;
    if (!collect(cutter, run))
        return SPZ_NO_MEMORY;
    if (pairs->count < rule.least_tones)
        return SPZ_OK;
    if (!cut_turns(tunes, run, pairs, out, &found))
        return SPZ_NO_MEMORY;
    return found > 0 || cut_canon(tunes, run, pairs, out) ? SPZ_OK : SPZ_NO_MEMORY;
}
