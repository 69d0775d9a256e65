#include "analysis/antiphony/chaining/evidence.h"
#include "analysis/antiphony/chaining/second_thoughts.h"
#include "analysis/melody/entry_marks.h"
#include "support/bit_counts.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

static const char *const feature_names[FEATURE_COUNT] = {
    "same", "exact", "motion", "rhythm", "yield", "free", "swap", "turns", "notes", "total", "lag_beats", "lag_bars", "rare",
    "front", "doubled", "winds", "alongside", "soft", "speed", "overlap", "regular", "clean", "same_pitch", "gap",
    "single", "pizz", "early", "rested", "canon", "mirror", "quick", "late", "short", "begins", "place", "beside", "still",
    "contrast", "ahead", "again", "caller_before", "responder_before", "caller_around", "responder_around", "counter", "call_top",
    "answer_top", "call_winds", "answer_winds", "awaited", "values", "marked",
};

const char *feature_name(enum Feature feature)
{
    return feature_names[feature];
}

static Ticks beat_length(const Texture *texture, const NoteEvent *event)
{
    const Movement *m = texture->map->movement;
    Ticks beat = m->bars[event->bar].beat;
    return beat > 0 ? beat : m->per_crotchet;
}

typedef struct Sums {
    double doubled, soft, soft_known, pizz, still, equal_lengths;
    Ticks first_length;
    unsigned pairs, called_by_both, answered_by_both;
    struct {
        BitCounts rhythm, parallel, unison; /* of melodies */
    } with[2]; /* the caller, the responder */
} Sums;

static bool strikes(const Melody *melody, const NoteEvent *note)
{
    const NoteEvent *own = melody_note_at(melody, note->onset);
    return own && (own->midi - note->midi) % 12 == 0;
}

static void add_pair(const NoteEvent *called, const NoteEvent *answered, Sums *sums)
{
    sums->still += (called->flags & (EVENT_TREMOLO | EVENT_REPEATED)) != 0;
    sums->pizz += (called->flags & EVENT_PIZZICATO) != 0;
    sums->doubled += 0.5 * ((called->flags & EVENT_DOUBLED) != 0) + 0.5 * ((answered->flags & EVENT_DOUBLED) != 0);
    if (called->dynamic != DYNAMIC_NONE) {
        sums->soft += (DYNAMIC_FFFF - called->dynamic) / (double)(DYNAMIC_FFFF - DYNAMIC_PPPP);
        sums->soft_known += 1;
    }
    Ticks length = called->end - called->onset;
    if (sums->pairs == 0)
        sums->first_length = length;
    sums->equal_lengths += length == sums->first_length;
    sums->pairs++;
    const NoteEvent *notes[] = {called, answered};
    for (int side = 0; side < 2; side++) {
        bit_counts_add(&sums->with[side].rhythm, notes[side]->company);
        bit_counts_add(&sums->with[side].parallel, notes[side]->parallel);
        bit_counts_add(&sums->with[side].unison, notes[side]->unison);
    }
}

/* Notes that caller and responder strike together in unison or octaves: of the call, of the answer. Not counted where `unison` tells that
 * it is less than half. */
static void add_struck_by_both(const Texture *texture, const Match *match, Sums *sums)
{
    const Melody *caller = &texture->melodies[match->caller], *responder = &texture->melodies[match->responder];
    uint64_t half_call = bit_counts_above(&sums->with[0].unison, sums->pairs / 2), half_answer = bit_counts_above(&sums->with[1].unison, sums->pairs / 2);
    if (!(half_call >> match->responder & 1) && !(half_answer >> match->caller & 1))
        return;
    uint32_t call = match->call_first, answer = match->answer_first;
    const NoteEvent *called, *answered;
    while (match_next_pair(texture->melodies, match, &call, &answer, &called, &answered)) {
        sums->called_by_both += strikes(responder, called);
        sums->answered_by_both += strikes(caller, answered);
    }
}

/* Shares of the notes from which on a group is said to play along. */
static const struct {
    double rhythm, parallel, unison;
} along = {.rhythm = 0.7, .parallel = 0.6, .unison = 0.8};

static uint64_t reaching(const BitCounts *melodies, double share, unsigned notes)
{
    return bit_counts_above(melodies, (size_t)ceil(share * notes) - 1);
}

static void playing_along(const Texture *texture, const Match *match, const Sums *sums, Evidence *out)
{
    uint64_t own[] = {(uint64_t)1 << match->caller, (uint64_t)1 << match->responder};
    for (int side = 0; side < 2; side++) {
        out->with[side].rhythm = reaching(&sums->with[side].rhythm, along.rhythm, sums->pairs) & ~own[side];
        out->with[side].parallel = reaching(&sums->with[side].parallel, along.parallel, sums->pairs) & ~own[side];
        out->with[side].unison = reaching(&sums->with[side].unison, along.unison, sums->pairs) & ~own[side];
    }
    uint64_t others = (out->with[0].rhythm | out->with[1].rhythm) & ~(own[0] | own[1]);
    out->at[F_ALONGSIDE] = texture->melody_count > 2 ? __builtin_popcountll(others) / (double)(texture->melody_count - 2) : 0;
}

/* An answer on the same beats is known again more easily. */
static double place_in_bar(const Match *match, Ticks bar, Ticks beat)
{
    return match->lag % bar == 0 ? 1 : 2 * match->lag % bar == 0 ? 0.7 : match->lag % beat == 0 ? 0.5 : 0;
}

static double log2_above(double value, double least)
{
    return log2(value > least ? value : least);
}

enum { VALUES_MOST = 16 }; /* more different note values in one call than a listener tells apart */

static double note_values(const Melody *melody, uint32_t first, uint32_t last)
{
    Ticks values[VALUES_MOST];
    size_t count = 0;
    for (uint32_t i = first; i < last && count < VALUES_MOST; i++) {
        Ticks value = melody->events[i].next - melody->events[i].onset;
        size_t k = 0;
        while (k < count && values[k] != value)
            k++;
        if (k == count)
            values[count++] = value;
    }
    return count ? log2((double)count) : 0;
}

static double silent_before(const Melody *melody, uint32_t event, double beat)
{
    enum { ALL = 4 };
    double silent = event ? (double)(melody->events[event].onset - melody->events[event - 1].end) : INFINITY;
    return fmin(ALL, log2(1 + silent / beat));
}

static void measures_of_form(const Texture *texture, const Match *match, Evidence *out)
{
    const NoteEvent *head = &texture->melodies[match->caller].events[match->call_first];
    double beats = (double)match->lag / (double)beat_length(texture, head);
    double span = (double)(match->call_end - match->onset) / (double)beat_length(texture, head);
    double matched = match->matched, steps = matched > 1 ? matched - 1 : 1;
    out->at[F_SAME] = (matched + match->alike) / (2 * matched + match->unmatched);
    out->at[F_EXACT] = match->exact / steps;
    out->at[F_MOTION] = match->moving / steps;
    out->at[F_TURNS] = log2_above(2.0 * match->statements - 1, 1);
    out->at[F_NOTES] = log2_above(matched / match->statements, 1);
    out->at[F_TOTAL] = log2_above(matched, 1);
    out->at[F_LAG_BEATS] = log2_above(beats, 0.125);
    out->at[F_LAG_BARS] = log2_above((double)match->lag / (double)texture_bar_length(texture, head), 0.25);
    out->at[F_PLACE] = place_in_bar(match, texture_bar_length(texture, head), beat_length(texture, head));
    out->at[F_SPEED] = log2_above(matched / (span > 0 ? span : 1), 0.25);
    out->at[F_SAME_PITCH] = match->transposition % 12 == 0;
    out->at[F_EARLY] = fmin(match->early_yield, match->early_free);
    out->at[F_RESTED] = (double)match->rested / match->statements;
    out->at[F_CANON] = match->overlapping;
    out->at[F_MIRROR] = match->mirror < 0;
    double spoken = (double)match->spoken / match->statements + (double)beat_length(texture, head) / 4;
    out->at[F_GAP] = log2_above((double)match->lag / spoken, 0.125);
    out->at[F_QUICK] = fmax(0, 1 - out->at[F_LAG_BEATS]);
    out->at[F_LATE] = fmax(0, out->at[F_GAP] - 1.5);
    out->at[F_SHORT] = fmax(0, 2 - out->at[F_TOTAL]);
    out->at[F_VALUES] = note_values(&texture->melodies[match->caller], match->call_first, match->call_last);
    out->at[F_AWAITED] = silent_before(&texture->melodies[match->responder], match->answer_first, (double)beat_length(texture, head));
    out->at[F_SINGLE] = match->matched == match->statements;
    double between = match->statements - 1, period = (double)(match->call_end - match->onset) / (double)match->lag;
    out->at[F_REGULAR] = between > 0 ? fmin(1, 2 * between / period) : 0;
}

/* Weights of the features in the log odds of being marked by a reader: what `make fit` prints, see docs/method.md. */
static const double weight_of[FEATURE_COUNT] = {
    [F_SAME] = 7.039, [F_EXACT] = 1.822, [F_MOTION] = 1.516, [F_RHYTHM] = 0.317, [F_YIELD] = -0.396, [F_FREE] = 1.934,
    [F_SWAP] = 1.346, [F_TURNS] = 0.039, [F_NOTES] = 0.360, [F_TOTAL] = 0.016, [F_LAG_BEATS] = -0.313, [F_LAG_BARS] = -0.112,
    [F_RARE] = 0.261, [F_FRONT] = 2.277, [F_DOUBLED] = 0.603, [F_WINDS] = -0.730, [F_ALONGSIDE] = -1.105, [F_SOFT] = -1.245,
    [F_SPEED] = -0.429, [F_OVERLAP] = 0.592, [F_REGULAR] = 1.226, [F_CLEAN] = 1.344, [F_SAME_PITCH] = 0.767, [F_GAP] = -0.518,
    [F_SINGLE] = -0.330, [F_PIZZ] = -0.410, [F_EARLY] = 0.066, [F_RESTED] = 0.347, [F_CANON] = -0.964, [F_MIRROR] = -0.887,
    [F_QUICK] = -0.528, [F_LATE] = 0.216, [F_SHORT] = -1.210, [F_BEGINS] = -0.030, [F_PLACE] = 1.277, [F_BESIDE] = 1.463,
    [F_STILL] = -0.177, [F_CONTRAST] = -0.250, [F_AHEAD] = -0.721, [F_AGAIN] = -0.913, [F_CALLER_BEFORE] = -0.505,
    [F_RESPONDER_BEFORE] = 0.038, [F_CALLER_AROUND] = 0.582, [F_RESPONDER_AROUND] = -0.248, [F_COUNTER] = 0.236,
    [F_CALL_TOP] = 1.141, [F_ANSWER_TOP] = 0.465, [F_CALL_WINDS] = -0.181, [F_ANSWER_WINDS] = 0.082, [F_AWAITED] = 0.077,
    [F_VALUES] = 0.569, [F_MARKED] = 1.230,
};
static const double bias = -14.875;

double feature_weight(enum Feature feature)
{
    return weight_of[feature];
}

/* Passages whose odds of being marked are 2 to 1 or more are called clear: there recall and precision come about even on movements
 * that the weights have not seen (`make fit`). */
static const double clear_odds = 2.0;

double strength_told(double chance)
{
    return chance / (chance + clear_odds * (1 - chance));
}

double chance_log_odds(double chance)
{
    const double surest = 13.8;
    return fmax(-surest, fmin(surest, log(chance / (1 - chance))));
}

double chance_at_log_odds(double log_odds)
{
    return 1 / (1 + exp(-log_odds));
}

static double chance_from(const Evidence *evidence)
{
    double sum = bias + second_thoughts_weight(evidence->thoughts);
    for (int f = 0; f < FEATURE_COUNT; f++)
        sum += weight_of[f] * evidence->at[f];
    return chance_at_log_odds(sum);
}

static void measures_of_turns(const Match *match, Evidence *out)
{
    double n = match->matched ? match->matched : 1;
    out->at[F_YIELD] = match->yield;
    out->at[F_FREE] = match->free;
    out->at[F_SWAP] = fmin(match->yield, match->free);
    out->at[F_CLEAN] = match->clean / n;
    out->at[F_OVERLAP] = match->active / n;
}

static void measures_of_surroundings(const Texture *texture, const RhythmIndex *rhythms, const Match *match, Evidence *out)
{
    (void)rhythms;
    Sums sums;
    memset(&sums, 0, offsetof(Sums, with));
    for (int side = 0; side < 2; side++)
        sums.with[side].rhythm.used = sums.with[side].parallel.used = sums.with[side].unison.used = 0;
    uint32_t call = match->call_first, answer = match->answer_first;
    const NoteEvent *called, *answered;
    while (match_next_pair(texture->melodies, match, &call, &answer, &called, &answered))
        add_pair(called, answered, &sums);
    add_struck_by_both(texture, match, &sums);
    double n = sums.pairs ? sums.pairs : 1;
    playing_along(texture, match, &sums, out);
    out->called_by_both = sums.called_by_both / n;
    out->answered_by_both = sums.answered_by_both / n;
    out->at[F_RHYTHM] = 1 - sums.equal_lengths / n;
    out->at[F_DOUBLED] = sums.doubled / n;
    out->at[F_SOFT] = sums.soft_known > 0 ? sums.soft / sums.soft_known : 0.5;
    out->at[F_PIZZ] = sums.pizz / n;
    out->at[F_STILL] = sums.still / n;
    out->at[F_WINDS] = texture_wind_fullness(texture, match->onset, match->end);
    const NoteEvent *first[] = {&texture->melodies[match->caller].events[match->call_first],
                           &texture->melodies[match->responder].events[match->answer_first]};
    out->at[F_BEGINS] = 0.5 * event_is_fresh(first[0]) + 0.5 * event_is_fresh(first[1]);
    for (int side = 0; side < 2; side++)
        out->at[F_MARKED] += 0.5 * entry_singled_out(texture->map, side ? match->responder : match->caller,
                                                     out->with[side].rhythm | out->with[side].unison, first[side]->onset);
    out->at[F_CONTRAST] = first[0]->dynamic != DYNAMIC_NONE && first[1]->dynamic != DYNAMIC_NONE &&
                          first[0]->dynamic != first[1]->dynamic;
}

enum { BUSY = 8 }; /* notes a beat in the other strings: more than a listener takes for movement of their own */

/* The foreground: what the two sides are beside the other strings. */
static void measures_of_foreground(const Texture *texture, const RhythmIndex *rhythms, const Match *match, Evidence *out)
{
    (void)rhythms;
    uint64_t caller = (uint64_t)1 << match->caller, responder = (uint64_t)1 << match->responder;
    uint64_t sides = out->with[0].rhythm | out->with[1].rhythm | caller | responder;
    Foreground call = texture_foreground(texture, match->caller, sides, match->onset, match->call_end);
    Foreground answer = texture_foreground(texture, match->responder, sides, match->onset + match->lag, match->end);
    out->at[F_FRONT] = 0.5 * call.prominence + 0.5 * answer.prominence;
    double beat = (double)beat_length(texture, &texture->melodies[match->caller].events[match->call_first]);
    double cells = beat / (double)texture->cell;
    out->at[F_CALL_TOP] = call.on_top;
    out->at[F_ANSWER_TOP] = answer.on_top;
    out->at[F_CALL_WINDS] = call.wind_above;
    out->at[F_ANSWER_WINDS] = answer.wind_above;
    out->at[F_BESIDE] = fmin(1, cells * texture_busy_beside(texture, sides, match->onset, match->end) / BUSY);
}

/* Whether call and answer are news. */
static void measures_of_novelty(const Texture *texture, const RhythmIndex *rhythms, const Match *match, Evidence *out)
{
    Novelty novelty;
    Ticks bar = texture_bar_length(texture, &texture->melodies[match->caller].events[match->call_first]);
    novelty_of(texture->melodies, rhythms, match, 8 * bar, &novelty);
    out->at[F_RARE] = novelty.rare;
    out->at[F_AHEAD] = novelty.ahead;
    out->at[F_AGAIN] = novelty.again;
    out->at[F_CALLER_BEFORE] = novelty.before[0];
    out->at[F_RESPONDER_BEFORE] = novelty.before[1];
    out->at[F_CALLER_AROUND] = novelty.around[0];
    out->at[F_RESPONDER_AROUND] = novelty.around[1];
    out->at[F_COUNTER] = novelty.counter;
}

enum { STAGE_MOST = 10 };

/* What can only be known from around a match, each between 0 and 1: by cost, what tells much for little first. */
static const struct {
    void (*measure)(const Texture *, const RhythmIndex *, const Match *, Evidence *);
    size_t count;
    enum Feature of[STAGE_MOST];
} stages[] = {
    {measures_of_surroundings, 10, {F_RHYTHM, F_DOUBLED, F_SOFT, F_PIZZ, F_STILL, F_WINDS, F_ALONGSIDE, F_BEGINS, F_MARKED, F_CONTRAST}},
    {measures_of_foreground, 6, {F_FRONT, F_CALL_TOP, F_ANSWER_TOP, F_CALL_WINDS, F_ANSWER_WINDS, F_BESIDE}},
    {measures_of_novelty, 8, {F_RARE, F_AHEAD, F_AGAIN, F_CALLER_BEFORE, F_RESPONDER_BEFORE, F_CALLER_AROUND, F_RESPONDER_AROUND, F_COUNTER}},
};
enum { STAGES = sizeof stages / sizeof *stages };

bool evidence_weigh(const Texture *texture, const RhythmIndex *rhythms, const Match *match, double least, Evidence *out)
{
    *out = (Evidence){0};
    measures_of_form(texture, match, out);
    measures_of_turns(match, out);
    for (size_t s = 0; s < STAGES; s++)
        for (size_t i = 0; i < stages[s].count; i++) /* the best that it could be */
            out->at[stages[s].of[i]] = weight_of[stages[s].of[i]] > 0 ? 1 : 0;
    out->thoughts = second_thoughts_best;
    for (size_t s = 0; s < STAGES; s++) {
        if (least > 0 && chance_from(out) < least)
            return false;
        for (size_t i = 0; i < stages[s].count; i++)
            out->at[stages[s].of[i]] = 0;
        stages[s].measure(texture, rhythms, match, out);
    }
    out->thoughts = second_thoughts(texture, match, out);
    out->chance = chance_from(out);
    return out->chance >= least;
}
