#include "analysis/antiphony/evidence.h"
#include <math.h>
#include <stdlib.h>

static const char *const feature_names[FEATURE_COUNT] = {
    "same", "exact", "motion", "rhythm", "yield", "free", "swap", "turns", "notes", "total", "lag_beats", "lag_bars", "rare",
    "front", "doubled", "winds", "company", "soft", "speed", "overlap", "regular", "clean", "same_pitch", "gap",
    "single", "pizz", "early", "rested", "canon", "mirror", "quick", "late", "short", "begins", "place", "beside", "still",
    "contrast",
};

const char *feature_name(enum Feature feature)
{
    return feature_names[feature];
}

typedef struct RhythmEntry {
    uint64_t key;
    Ticks onset;
} RhythmEntry;

struct RhythmIndex {
    ARRAY(RhythmEntry) entries; /* sorted by key, then onset */
};

static uint64_t rhythm_of(const NoteEvent *t)
{
    uint64_t a = (uint64_t)(t[1].onset - t[0].onset), b = (uint64_t)(t[2].onset - t[1].onset);
    return a * 0x9E3779B97F4A7C15u ^ b * 0xC2B2AE3D27D4EB4Fu;
}

static int by_key_and_onset(const void *left, const void *right)
{
    const RhythmEntry *a = left, *b = right;
    if (a->key != b->key)
        return a->key < b->key ? -1 : 1;
    return (a->onset > b->onset) - (a->onset < b->onset);
}

void rhythm_index_free(RhythmIndex *index)
{
    if (index)
        array_free(&index->entries);
    memory_free(index);
}

spz_status rhythm_index_make(const Melody *melodies, size_t melody_count, RhythmIndex **out)
{
    *out = NULL;
    RhythmIndex *index = memory_get(sizeof *index);
    if (!index)
        return SPZ_NO_MEMORY;
    *index = (RhythmIndex){0};
    for (size_t t = 0; t < melody_count; t++)
        for (size_t i = 0; i + 2 < melodies[t].count; i++) {
            const NoteEvent *event = &melodies[t].events[i];
            if (!(event->flags & (EVENT_ON_BEAT | EVENT_AFTER_REST)))
                continue;
            RhythmEntry entry = {rhythm_of(event), event->onset};
            if (!array_push(&index->entries, entry)) {
                rhythm_index_free(index);
                return SPZ_NO_MEMORY;
            }
        }
    if (index->entries.count)
        qsort(index->entries.at, index->entries.count, sizeof *index->entries.at, by_key_and_onset);
    *out = index;
    return SPZ_OK;
}

static size_t first_entry(const RhythmIndex *index, uint64_t key, Ticks when)
{
    RhythmEntry wanted = {key, when};
    size_t low = 0, high = index->entries.count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        if (by_key_and_onset(&index->entries.at[middle], &wanted) < 0)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

static double count_between(const RhythmIndex *index, uint64_t key, Ticks from, Ticks to)
{
    return (double)(first_entry(index, key, to) - first_entry(index, key, from));
}

static Ticks bar_length(const Texture *texture, const NoteEvent *event)
{
    const Movement *m = texture->map->movement;
    Ticks nominal = m->bars[event->bar].nominal;
    return nominal > 0 ? nominal : 4 * m->per_crotchet;
}

static Ticks beat_length(const Texture *texture, const NoteEvent *event)
{
    const Movement *m = texture->map->movement;
    Ticks beat = m->bars[event->bar].beat;
    return beat > 0 ? beat : m->per_crotchet;
}

/* How rare the rhythm of the head is in the eight bars before and after the passage. */
static double rarity(const Texture *texture, const RhythmIndex *rhythms, const Match *match)
{
    const Melody *a = &texture->melodies[match->caller];
    if (match->call_first + 2 >= a->count)
        return 1;
    const NoteEvent *head = &a->events[match->call_first];
    Ticks window = 8 * bar_length(texture, head);
    uint64_t key = rhythm_of(head);
    double around = count_between(rhythms, key, match->onset - window, match->onset) +
                    count_between(rhythms, key, match->end, match->end + window);
    return 1 / (1 + around / 16);
}

typedef struct Sums {
    double doubled, soft, soft_known, pizz, still, equal_lengths;
    Ticks first_length;
    unsigned pairs;
    unsigned with_caller[64], with_responder[64];
} Sums;

static void count_company(uint64_t company, unsigned counts[64])
{
    for (; company; company &= company - 1)
        counts[__builtin_ctzll(company)]++;
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
    count_company(called->company, sums->with_caller);
    count_company(answered->company, sums->with_responder);
}

static void playing_parts_of(const Texture *texture, const Match *match, const Sums *sums, Evidence *out)
{
    double need = 0.7 * sums->pairs;
    for (size_t t = 0; t < texture->melody_count && t < 64; t++) {
        if (t != match->caller && sums->with_caller[t] >= need)
            out->with_caller |= (uint64_t)1 << t;
        if (t != match->responder && sums->with_responder[t] >= need)
            out->with_responder |= (uint64_t)1 << t;
    }
    double extra = 0;
    for (size_t t = 0; t < texture->melody_count && t < 64; t++)
        if (t != match->caller && t != match->responder)
            extra += ((out->with_caller >> t) & 1) || ((out->with_responder >> t) & 1);
    out->at[F_ALONGSIDE] = texture->melody_count > 2 ? extra / (double)(texture->melody_count - 2) : 0;
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
    out->at[F_LAG_BARS] = log2_above((double)match->lag / (double)bar_length(texture, head), 0.25);
    out->at[F_PLACE] = place_in_bar(match, bar_length(texture, head), beat_length(texture, head));
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
    out->at[F_SINGLE] = match->matched == match->statements;
    double between = match->statements - 1, period = (double)(match->call_end - match->onset) / (double)match->lag;
    out->at[F_REGULAR] = between > 0 ? fmin(1, 2 * between / period) : 0;
}

/* Weights of the features in the log odds of being marked by a reader: what `make fit` prints, see docs/method.md. */
static const double weight_of[FEATURE_COUNT] = {
    [F_SAME] = 3.459, [F_EXACT] = 1.429, [F_MOTION] = 1.767, [F_RHYTHM] = 0.805, [F_YIELD] = -0.636, [F_FREE] = 2.136,
    [F_SWAP] = 1.237, [F_TURNS] = 0.130, [F_NOTES] = 0.344, [F_TOTAL] = 0.212, [F_LAG_BEATS] = -0.224, [F_LAG_BARS] = -0.187,
    [F_RARE] = -0.020, [F_FRONT] = 3.259, [F_DOUBLED] = 0.647, [F_WINDS] = -1.332, [F_ALONGSIDE] = -0.232, [F_SOFT] = -1.162,
    [F_SPEED] = -0.448, [F_OVERLAP] = 0.464, [F_REGULAR] = 1.258, [F_CLEAN] = 1.059, [F_SAME_PITCH] = 0.355, [F_GAP] = -0.477,
    [F_SINGLE] = -1.625, [F_PIZZ] = -0.057, [F_EARLY] = 0.585, [F_RESTED] = -0.405, [F_CANON] = -1.180, [F_MIRROR] = -0.719,
    [F_QUICK] = -0.112, [F_LATE] = 0.151, [F_SHORT] = -1.603, [F_BEGINS] = 0.245, [F_PLACE] = 0.605, [F_BESIDE] = 1.696,
    [F_STILL] = 0.453, [F_CONTRAST] = -0.520,
};
static const double bias = -11.602;

double feature_weight(enum Feature feature)
{
    return weight_of[feature];
}

/* Passages whose odds of being marked are 3 to 2 or more are called clear: there recall and precision come about even on movements
 * that the weights have not seen (`make fit`). */
static const double clear_odds = 1.5;

double strength_told(double chance)
{
    return chance / (chance + clear_odds * (1 - chance));
}

static double chance_from(const Evidence *evidence)
{
    double sum = bias;
    for (int f = 0; f < FEATURE_COUNT; f++)
        sum += weight_of[f] * evidence->at[f];
    return 1 / (1 + exp(-sum));
}

/* What can only be known from the surroundings of a match; each lies between 0 and 1. */
static const enum Feature of_surroundings[] = {F_RHYTHM, F_RARE, F_FRONT, F_DOUBLED, F_WINDS, F_ALONGSIDE, F_SOFT, F_PIZZ, F_BEGINS,
                                               F_BESIDE, F_STILL, F_CONTRAST};

static void measures_of_turns(const Match *match, Evidence *out)
{
    double n = match->matched ? match->matched : 1;
    out->at[F_YIELD] = match->yield;
    out->at[F_FREE] = match->free;
    out->at[F_SWAP] = fmin(match->yield, match->free);
    out->at[F_CLEAN] = match->clean / n;
    out->at[F_OVERLAP] = match->active / n;
}

bool evidence_may_reach(const Texture *texture, const Match *match, double chance)
{
    Evidence form = {0};
    measures_of_form(texture, match, &form);
    measures_of_turns(match, &form);
    for (size_t i = 0; i < sizeof of_surroundings / sizeof *of_surroundings; i++)
        form.at[of_surroundings[i]] = weight_of[of_surroundings[i]] > 0 ? 1 : 0;
    return chance_from(&form) >= chance;
}

static void measures_of_surroundings(const Texture *texture, const RhythmIndex *rhythms, const Match *match, Evidence *out)
{
    Sums sums = {0};
    uint32_t call = match->call_first, answer = match->answer_first;
    const NoteEvent *called, *answered;
    while (match_next_pair(texture->melodies, match, &call, &answer, &called, &answered))
        add_pair(called, answered, &sums);
    double n = sums.pairs ? sums.pairs : 1;
    playing_parts_of(texture, match, &sums, out);
    out->at[F_RHYTHM] = 1 - sums.equal_lengths / n;
    out->at[F_DOUBLED] = sums.doubled / n;
    out->at[F_SOFT] = sums.soft_known > 0 ? sums.soft / sums.soft_known : 0.5;
    out->at[F_PIZZ] = sums.pizz / n;
    out->at[F_STILL] = sums.still / n;
    out->at[F_RARE] = rarity(texture, rhythms, match);
    out->at[F_WINDS] = texture_wind_fullness(texture, match->onset, match->end);
    const NoteEvent *first[] = {&texture->melodies[match->caller].events[match->call_first],
                           &texture->melodies[match->responder].events[match->answer_first]};
    out->at[F_BEGINS] = 0.5 * event_is_fresh(first[0]) + 0.5 * event_is_fresh(first[1]);
    out->at[F_CONTRAST] = first[0]->dynamic != DYNAMIC_NONE && first[1]->dynamic != DYNAMIC_NONE &&
                          first[0]->dynamic != first[1]->dynamic;
}

enum { BUSY = 8 }; /* notes a beat in the other strings: more than a listener takes for movement of their own */

/* The foreground: what the two sides are beside the other strings. */
static void measures_of_foreground(const Texture *texture, const Match *match, Evidence *out)
{
    uint64_t caller = (uint64_t)1 << match->caller, responder = (uint64_t)1 << match->responder;
    uint64_t sides = out->with_caller | out->with_responder | caller | responder;
    out->at[F_FRONT] = 0.5 * texture_prominence(texture, match->caller, sides, match->onset, match->call_end) +
                       0.5 * texture_prominence(texture, match->responder, sides, match->onset + match->lag, match->end);
    double beat = (double)beat_length(texture, &texture->melodies[match->caller].events[match->call_first]);
    double cells = beat / (double)texture->cell;
    out->at[F_BESIDE] = fmin(1, cells * texture_busy_beside(texture, sides, match->onset, match->end) / BUSY);
}

void evidence_weigh(const Texture *texture, const RhythmIndex *rhythms, const Match *match, Evidence *out)
{
    *out = (Evidence){0};
    measures_of_form(texture, match, out);
    measures_of_turns(match, out);
    measures_of_surroundings(texture, rhythms, match, out);
    measures_of_foreground(texture, match, out);
    out->chance = chance_from(out);
}
