#include "analysis/antiphony/matching/matches.h"
#include "analysis/antiphony/matching/turns.h"

static const struct {
    int lag_bars;          /* an answer comes within eight bars: a period */
    int lag_crotchets;     /* and within 36 crotchets in slow music with long bars */
    int lookback;          /* recent notes of the same rhythm looked at, over all groups */
    int nearest;           /* calls tried in each group: an answer answers what was said last */
    double both, alike, still, contrary, exact; /* a shared note; and its direction; the same pitch again; and its interval */
    double alone;          /* a note that only one has */
    double drop;           /* how far the sum may fall before the run is given up */
    unsigned least_matched;
    size_t phrase_events, phrase_head; /* a gesture between rests has at most so many notes; of which so many steps must agree */
    unsigned stretched_events; /* an answer in other note values: notes at least */
    double stretched_exact;   /* ... and share of their steps by the same interval */
    double least_same, least_motion; /* shares below which a match is no gesture answered */
} growth = {
    .lag_bars = 8, .lag_crotchets = 36, .lookback = 96, .nearest = 5,
    .both = 0.5, .alike = 0.5, .still = -0.2, .contrary = -0.35, .exact = 0.1,
    .alone = -0.9, .drop = 2.6, .least_matched = 3, .phrase_events = 10, .phrase_head = 3, .least_same = 0.65, .least_motion = 0.2,
    .stretched_events = 5, .stretched_exact = 0.6,
};

enum { BUCKETS = 1 << 13, LAG_GRID = 12 /* lags counted in twelfths of a crotchet: semiquavers and triplets */ };

typedef struct Seed {
    Ticks onset;
    uint32_t melody, event;
    uint32_t older; /* index + 1 of the seed before in the same bucket */
    uint32_t key;
    bool phrase;    /* looked up as a phrase between rests */
} Seed;

typedef struct Finder {
    const Movement *movement;
    const Melody *melodies;
    size_t melody_count;
    ARRAY(Seed) seeds;
    uint32_t newest[BUCKETS]; /* index + 1 */
    Ticks *covered;           /* by caller, responder, lag, straight or upside down: call time up to which this lag is grown */
    size_t lag_count;
    TurnCutter cutter;
    MatchList *out;
} Finder;

/* A step as long as a call of it would be that takes half (stretch 1) or twice (-1) the time. */
static Ticks step_at(Ticks step, int stretch)
{
    return stretch > 0 ? step / 2 : stretch < 0 ? 2 * step : step;
}

/* Rhythm of the next three notes and the direction of their two steps, up to mirroring: what has to agree for a seed. */
static uint32_t gesture_key(const NoteEvent *t, int stretch)
{
    int first = event_direction(t, t + 1), second = event_direction(t + 1, t + 2);
    int sign = first ? first : second;
    if (t[0].flags & t[1].flags & t[2].flags & EVENT_AFTER_REST)
        first = second = 0; /* notes that stand alone: where each lies is free */
    uint64_t h = (uint64_t)step_at(t[1].onset - t[0].onset, stretch) * 0x9E3779B97F4A7C15u;
    h ^= (uint64_t)step_at(t[2].onset - t[1].onset, stretch) * 0xC2B2AE3D27D4EB4Fu;
    h ^= (uint64_t)(first * sign + 1) * 0x165667B19E3779F9u;
    h ^= (uint64_t)(second * sign + 1) * 0x27D4EB2F165667C5u;
    h ^= h >> 29;
    h *= 0xBF58476D1CE4E5B9u;
    return (uint32_t)(h >> 32);
}

/* A short gesture that stands between rests is known by its rhythm, whatever its direction: its notes' steps, all of them.
 * 0 where the note begins none. */
static uint32_t phrase_key(const Melody *melody, size_t i)
{
    const NoteEvent *t = melody->events;
    uint64_t h = 0x165667B19E3779F9u;
    size_t n = 1;
    if (!(t[i].flags & EVENT_AFTER_REST))
        return 0;
    for (; i + n < melody->count && !(t[i + n].flags & EVENT_AFTER_REST); n++) {
        if (n == growth.phrase_events)
            return 0;
        if (n <= growth.phrase_head)
            h = (h ^ (uint64_t)(t[i + n].onset - t[i + n - 1].onset)) * 0x9E3779B97F4A7C15u;
    }
    h ^= h >> 31;
    return n < growth.phrase_head ? 0 : (uint32_t)(h >> 16) | 1u;
}

/* Groups that move together speak with one voice: the highest in the score begins for all. */
static bool led_by_another(const Melody *melody, size_t i)
{
    const NoteEvent *t = &melody->events[i];
    return (t[0].leaders & t[1].leaders & t[2].leaders) != 0;
}

static bool may_begin(const Melody *melody, size_t i)
{
    return i + 2 < melody->count && !led_by_another(melody, i) &&
           (melody->events[i].flags & (EVENT_AFTER_REST | EVENT_ON_BEAT | EVENT_AFTER_LONG)) != 0 &&
           !(melody->events[i].flags & EVENT_DOUBLES);
}

/* What was counted along a run. */
typedef struct Counts {
    uint32_t matched, alike, exact, moving, unmatched;
} Counts;

typedef struct Growth {
    double sum, best;
    Counts now, kept; /* kept: as of the best point, once that is left behind */
    bool at_best;
} Growth;

/* A shared note never lowers the sum (see the table): the best point is left by a lonely note only, and copied only then. */
static void take_pair(Growth *g, const TurnPair *pair)
{
    double gain = growth.both;
    g->now.matched++;
    g->now.moving += pair->moving;
    if (g->now.matched > 1 && pair->alike > 0) {
        g->now.alike++;
        g->now.exact += pair->exact;
        gain += pair->moving ? growth.alike : growth.still;
        gain += pair->exact ? growth.exact : 0;
    } else if (g->now.matched > 1)
        gain += pair->alike < 0 ? growth.contrary : growth.contrary / 2;
    g->sum += gain;
    g->at_best = g->sum >= g->best;
    if (g->at_best)
        g->best = g->sum;
}

static void leave_best(Growth *g)
{
    if (g->at_best)
        g->kept = g->now;
    g->at_best = false;
}

static void take_lonely(Growth *g)
{
    leave_best(g);
    g->sum += growth.alone;
    g->now.unmatched++;
}

/* Grows `run` forward from its first pair of notes until the sum has dropped or either melody ends; what both have is in the cutter then. */
static spz_status grow(Finder *finder, Match *run, Ticks limit_gap)
{
    const Melody *a = &finder->melodies[run->caller], *b = &finder->melodies[run->responder];
    Growth g = {.at_best = true};
    Ticks last_answer = b->events[run->answer_first].onset;
    uint32_t call = run->call_first, answer = run->answer_first;
    finder->cutter.pairs.count = 0;
    while (call < a->count && answer < b->count && g.sum > g.best - growth.drop) {
        Ticks called = a->events[call].onset, answered = b->events[answer].onset, due = match_due_after(run, called, answered);
        Ticks next = due < 0 ? answered + due / 2 : answered; /* of either */
        bool overtaken = due == 0 && called >= answered; /* an answer in shorter notes has caught up with its call */
        if (overtaken || next - last_answer > limit_gap)
            break;
        if (due == 0) {
            const TurnPair *pair = turn_cutter_add(&finder->cutter, run, call, answer);
            if (!pair)
                return SPZ_NO_MEMORY;
            take_pair(&g, pair);
            last_answer = answered;
        } else
            take_lonely(&g);
        call += due <= 0;
        answer += due >= 0;
    }
    leave_best(&g);
    const TurnPairs *pairs = &finder->cutter.pairs;
    finder->cutter.pairs.count = run->matched = g.kept.matched;
    run->alike = g.kept.alike;
    run->exact = g.kept.exact;
    run->moving = g.kept.moving;
    run->unmatched = g.kept.unmatched;
    run->call_last = pairs->at[pairs->count - 1].call;
    run->answer_last = pairs->at[pairs->count - 1].answer;
    return SPZ_OK;
}

static Ticks *covered_at(const Finder *finder, size_t caller, size_t responder, size_t lag_index, bool mirror)
{
    return &finder->covered[((caller * finder->melody_count + responder) * finder->lag_count + lag_index) * 2 + mirror];
}

static Ticks longest_lag(const Finder *finder, const NoteEvent *event)
{
    const Movement *m = finder->movement;
    const Bar *bar = &m->bars[event->bar];
    Ticks by_bars = growth.lag_bars * (bar->nominal > 0 ? bar->nominal : 4 * m->per_crotchet);
    Ticks by_time = growth.lag_crotchets * m->per_crotchet;
    return by_bars < by_time ? by_bars : by_time;
}

/* The answer turns the call upside down when its first step goes the other way. */
static bool mirrored(const NoteEvent *called, const NoteEvent *answered)
{
    for (int i = 0; i < 2; i++) {
        int a = event_direction(called + i, called + i + 1), b = event_direction(answered + i, answered + i + 1);
        if (a != b)
            return a == -b;
    }
    return false;
}

/* An answer at another speed: in a row of steps one way every scale would be one, so it has to turn, and to keep its intervals. */
static bool stretched_gesture(const Finder *finder, const Match *match)
{
    const NoteEvent *events = finder->melodies[match->caller].events;
    bool up = false, down = false;
    for (uint32_t i = match->call_first; i < match->call_last; i++) {
        up = up || event_direction(&events[i], &events[i + 1]) > 0;
        down = down || event_direction(&events[i], &events[i + 1]) < 0;
    }
    return up && down && match->unmatched == 0 && match->matched >= growth.stretched_events &&
           match->alike + 1 == match->matched && match->exact >= growth.stretched_exact * (match->matched - 1);
}

static bool worth_weighing(const Finder *finder, const Match *match)
{
    if (match->stretch && !stretched_gesture(finder, match))
        return false;
    double shared = match->matched, all = 2 * shared + match->unmatched;
    return match->matched >= growth.least_matched && (shared + match->alike) >= growth.least_same * all &&
           match->moving >= growth.least_motion * (shared - 1);
}

static spz_status try_sense(Finder *finder, const Seed *call, const Seed *answer, int stretch, int mirror)
{
    const NoteEvent *called = &finder->melodies[call->melody].events[call->event];
    const NoteEvent *answered = &finder->melodies[answer->melody].events[answer->event];
    Ticks lag = answered->onset - called->onset, unit = finder->movement->per_crotchet;
    if (lag <= 0 || lag * LAG_GRID % unit != 0)
        return SPZ_OK;
    size_t lag_index = (size_t)(lag * LAG_GRID / unit);
    Ticks *covered = covered_at(finder, call->melody, answer->melody, lag_index, mirror < 0);
    if (!stretch && *covered > called->onset)
        return SPZ_OK;
    Match run = {.mirror = (int8_t)mirror, .stretch = (int8_t)stretch, .caller = (uint16_t)call->melody,
                   .responder = (uint16_t)answer->melody, .lag = lag, .call_first = call->event,
                   .answer_first = answer->event, .onset = called->onset, .transposition = (int16_t)(answered->midi - called->midi)};
    Ticks pause = 2 * lag + lag / 4; /* a longer silence in the call's rhythm ends the conversation */
    spz_status status = grow(finder, &run, pause > unit ? pause : unit);
    if (status == SPZ_OK && !stretch)
        *covered = finder->melodies[call->melody].events[run.call_last].onset + 1;
    return status == SPZ_OK && worth_weighing(finder, &run) ? turns_cut(&finder->cutter, &run, finder->out) : status;
}

/* The first step that differs says whether the answer is upside down; a phrase, which is known by its rests, may dip at its beginning only. */
static spz_status try_pair(Finder *finder, const Seed *call, const Seed *answer, int stretch)
{
    bool upside_down = mirrored(&finder->melodies[call->melody].events[call->event], &finder->melodies[answer->melody].events[answer->event]);
    spz_status status = upside_down ? try_sense(finder, call, answer, stretch, -1) : SPZ_OK;
    return status == SPZ_OK && (!upside_down || call->phrase) ? try_sense(finder, call, answer, stretch, 1) : status;
}

/* Players who step out of one section for a moment are not set apart for it: they answer other sections, not each other. */
static bool may_talk(const Finder *finder, uint32_t a, uint32_t b)
{
    const Melody *one = &finder->melodies[a], *other = &finder->melodies[b];
    return a != b && !(one->passing_solo && other->passing_solo && one->group->about.section == other->group->about.section);
}

/* Looks for what the seed may answer among the recent ones of a key. */
static spz_status answer_recent(Finder *finder, const Seed *seed, uint32_t key, int stretch)
{
    const NoteEvent *t = &finder->melodies[seed->melody].events[seed->event];
    Ticks earliest = t->onset - longest_lag(finder, t);
    uint32_t at = finder->newest[key % BUCKETS];
    unsigned char tried[64] = {0};
    for (int looked = 0; at != 0 && looked < growth.lookback; looked++) {
        const Seed *call = &finder->seeds.at[at - 1];
        if (call->onset < earliest)
            break;
        if (call->key == key && may_talk(finder, call->melody, seed->melody) && tried[call->melody % 64]++ < growth.nearest) {
            spz_status status = try_pair(finder, call, seed, stretch);
            if (status != SPZ_OK)
                return status;
        }
        at = call->older;
    }
    return SPZ_OK;
}

static spz_status answer_and_remember(Finder *finder, Seed seed)
{
    spz_status status = answer_recent(finder, &seed, seed.key, 0);
    if (status != SPZ_OK)
        return status;
    uint32_t *newest = &finder->newest[seed.key % BUCKETS];
    seed.older = *newest;
    if (!array_push(&finder->seeds, seed))
        return SPZ_NO_MEMORY;
    *newest = (uint32_t)finder->seeds.count;
    return SPZ_OK;
}

/* What a note may answer is looked up at its own speed and, where it begins afresh, at half and twice its speed. */
static spz_status visit(Finder *finder, size_t melody, uint32_t event)
{
    const NoteEvent *begin = &finder->melodies[melody].events[event];
    Seed seed = {.onset = begin->onset, .melody = (uint32_t)melody, .event = event, .key = gesture_key(begin, 0)};
    spz_status status = answer_and_remember(finder, seed);
    for (int stretch = -1; status == SPZ_OK && event_is_fresh(begin) && stretch <= 1; stretch += 2)
        status = answer_recent(finder, &seed, gesture_key(begin, stretch), stretch);
    seed.key = phrase_key(&finder->melodies[melody], event);
    seed.phrase = true;
    return status == SPZ_OK && seed.key ? answer_and_remember(finder, seed) : status;
}

/* All melodies at once, in time order, so that 'recent' means recent for everybody. */
static spz_status visit_all(Finder *finder, uint32_t *next)
{
    for (size_t best; (best = melody_earliest(finder->melodies, finder->melody_count, next)) < finder->melody_count;) {
        uint32_t event = next[best]++;
        if (!may_begin(&finder->melodies[best], event))
            continue;
        spz_status status = visit(finder, best, event);
        if (status != SPZ_OK)
            return status;
    }
    return SPZ_OK;
}

spz_status matches_find(const Movement *movement, const Melody *melodies, size_t melody_count, MatchList *out)
{
    Finder *finder = memory_zeroed(1, sizeof *finder);
    uint32_t *next = memory_zeroed(melody_count, sizeof *next);
    spz_status status = SPZ_NO_MEMORY;
    if (finder && next) {
        finder->movement = movement;
        finder->melodies = melodies;
        finder->melody_count = melody_count;
        finder->out = out;
        finder->lag_count = (size_t)growth.lag_crotchets * LAG_GRID + 1;
        finder->covered = memory_zeroed(2 * melody_count * melody_count * finder->lag_count, sizeof *finder->covered);
        status = turn_cutter_make(melodies, melody_count, &finder->cutter);
        if (!finder->covered)
            status = SPZ_NO_MEMORY;
        if (status == SPZ_OK)
            status = visit_all(finder, next);
        memory_free(finder->covered);
        array_free(&finder->seeds);
        turn_cutter_release(&finder->cutter);
    }
    memory_free(next);
    memory_free(finder);
    return status;
}
