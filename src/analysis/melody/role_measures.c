#include "analysis/melody/role_measures.h"
#include "sections/slurs.h"
#include "support/bit_counts.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { NEAR = 2, WIDE = 4 }; /* beats to either side: what is heard as one moment, and as one phrase */
enum { PERIODS = 4 };        /* half a beat, a beat, two beats, a bar */

/* What a voice does in one beat. */
struct RoleCell {
    uint64_t pitches[2];          /* bit p: pitch p */
    float sounds, lengths;        /* of the beat; of the notes that begin, in beats */
    uint16_t onsets, moves, steps, leaps, bound, plucked, tremolo, fresh, shuttles, recurs[PERIODS];
    uint16_t values;              /* bit n: note value n, in half octaves */
    int16_t top;                  /* -1: silent */
    uint8_t dynamic;
    bool marked;
};
typedef RoleCell Cell;

typedef RoleSurvey Survey;

static const char *const names[RM_COUNT] = {"sounds", "busy", "moves", "steps", "broken", "pitches", "recurs", "recurs_bar", "shuttles", "values", "long", "held",
                                            "bound", "plucked", "tremolo", "top", "above", "company", "loud", "marked", "enters",
                                            "violin", "second", "middle", "bass", "brass"};

const char *role_measure_name(enum RoleMeasure measure)
{
    return names[measure];
}

static Ticks beat_of_bar(const Movement *movement, const Bar *bar)
{
    return bar->beat > 0 ? bar->beat : movement->per_crotchet;
}

static bool make_beats(const Movement *movement, size_t first, size_t last, Arena *arena, BeatGrid *out)
{
    size_t count = 0;
    for (size_t b = first; b <= last; b++) {
        const Bar *bar = &movement->bars[b];
        count += (size_t)((bar->length + beat_of_bar(movement, bar) - 1) / beat_of_bar(movement, bar));
    }
    out->onsets = arena_take(arena, count, sizeof *out->onsets);
    out->bars = arena_take(arena, count, sizeof *out->bars);
    if (!out->onsets || !out->bars)
        return false;
    for (size_t b = first; b <= last; b++) {
        const Bar *bar = &movement->bars[b];
        out->end = bar->onset + bar->length;
        for (Ticks at = 0; at < bar->length; at += beat_of_bar(movement, bar)) {
            out->onsets[out->count] = bar->onset + at;
            out->bars[out->count++] = (int32_t)b;
        }
    }
    return true;
}

static Ticks beat_end(const Survey *survey, size_t beat)
{
    return beat + 1 < survey->beats.count ? survey->beats.onsets[beat + 1] : survey->beats.end;
}

static Ticks beat_length(const Survey *survey, size_t beat)
{
    return beat_of_bar(survey->voices->map.movement, &survey->voices->map.movement->bars[survey->beats.bars[beat]]);
}

static Cell *cell_at(const Survey *survey, size_t beat, size_t voice)
{
    return &survey->cells[beat * survey->voices->map.group_count + voice];
}

static unsigned value_bit(double beats)
{
    int step = (int)lround(2 * log2(beats)) + 8;
    return 1u << (step < 0 ? 0 : step > 15 ? 15 : step);
}

static void count(uint16_t *counter, bool one_more)
{
    *counter = (uint16_t)(*counter + one_more);
}

static void add_onset(const Survey *survey, const Melody *melody, size_t index, SlurPlace slur, size_t beat, Cell *cell)
{
    const NoteEvent *event = &melody->events[index];
    double beats = (double)(event->end - event->onset) / (double)beat_length(survey, beat);
    cell->lengths += (float)beats;
    cell->values |= (uint16_t)value_bit(beats);
    cell->pitches[event->midi >> 6 & 1] |= (uint64_t)1 << (event->midi & 63);
    cell->dynamic = event->dynamic;
    count(&cell->onsets, true);
    count(&cell->bound, slur.from || slur.on);
    count(&cell->plucked, event->flags & EVENT_PIZZICATO);
    count(&cell->tremolo, event->flags & EVENT_TREMOLO);
    count(&cell->fresh, event->flags & EVENT_AFTER_REST);
    count(&cell->shuttles, index > 1 && event->midi == event[-2].midi && event->midi != event[-1].midi);
    if (!(event->flags & (EVENT_REPEATED | EVENT_TREMOLO)) && index > 0) {
        int by = abs(event->midi - melody->events[index - 1].midi);
        count(&cell->moves, by > 0);
        count(&cell->steps, by > 0 && by <= 2);
        count(&cell->leaps, by > 5);
    }
}

static void add_recurrence(const Survey *survey, const Melody *melody, size_t index, size_t beat, size_t earlier[PERIODS], Cell *cell)
{
    const NoteEvent *event = &melody->events[index];
    Ticks length = beat_length(survey, beat), bar = survey->voices->map.movement->bars[event->bar].length;
    Ticks periods[PERIODS] = {length / 2, length, 2 * length, bar};
    for (size_t p = 0; p < PERIODS; p++) {
        while (earlier[p] < index && melody->events[earlier[p]].onset < event->onset - periods[p])
            earlier[p]++;
        const NoteEvent *before = &melody->events[earlier[p]];
        count(&cell->recurs[p], earlier[p] < index && before->onset == event->onset - periods[p] && before->midi == event->midi);
    }
}

static void add_sounding(const Survey *survey, const NoteEvent *event, size_t beat, size_t voice)
{
    for (; beat < survey->beats.count && survey->beats.onsets[beat] < event->end; beat++) {
        Ticks from = survey->beats.onsets[beat], to = beat_end(survey, beat);
        Cell *cell = cell_at(survey, beat, voice);
        Ticks first = event->onset > from ? event->onset : from, last = event->end < to ? event->end : to;
        if (to > from)
            cell->sounds += (float)(last - first) / (float)(to - from);
        if (event->midi > cell->top)
            cell->top = event->midi;
    }
}

/* Leaves of the voices asked about those that agree with most of the notes first..last-1. */
static void agree(const NoteEvent *events, size_t first, size_t last, uint64_t *unison, uint64_t *parallel)
{
    BitCounts same, along;
    same.used = along.used = 0;
    for (size_t i = first; i < last; i++) {
        bit_counts_add(&same, events[i].unison & *unison);
        bit_counts_add(&along, events[i].parallel & *parallel);
    }
    *unison = bit_counts_above(&same, (last - first) / 2);
    *parallel = bit_counts_above(&along, (last - first) / 2);
}

/* Who plays the same, in the beat and around it: chords share tones, a unison of a moment is chance. A note held over from before counts where none begins. */
static void meet_others(const Survey *survey, size_t voice)
{
    const Melody *melody = &survey->voices->melodies[voice];
    const NoteEvent *events = melody->events;
    size_t beats = survey->beats.count, first = 0, next = 0, from = 0, to = 0; /* in the beat; around it */
    for (size_t beat = 0; beat < beats; beat++) {
        size_t at = beat * survey->voices->map.group_count + voice, last = beat + NEAR < beats ? beat + NEAR : beats - 1;
        for (first = next; next < melody->count && events[next].onset < beat_end(survey, beat); next++)
            continue;
        while (to < melody->count && events[to].onset < beat_end(survey, last))
            to++;
        while (from < to && events[from].onset < survey->beats.onsets[beat > NEAR ? beat - NEAR : 0])
            from++;
        if (survey->cells[at].top < 0)
            continue;
        size_t own = first == next && first > 0 ? first - 1 : first;
        survey->unison[at] = survey->parallel[at] = UINT64_MAX;
        agree(events, own, next, &survey->unison[at], &survey->parallel[at]);
        if (survey->unison[at] || survey->parallel[at])
            agree(events, from < own ? from : own, to, &survey->unison[at], &survey->parallel[at]);
    }
}

static void survey_voice(const Survey *survey, size_t voice)
{
    const Melody *melody = &survey->voices->melodies[voice];
    const Group *group = melody->group;
    SlurBook book = {.count = 0};
    size_t beat = 0, event = 0, earlier[PERIODS] = {0};
    for (size_t s = 0; s < group->sound_count && event < melody->count; s++) {
        SlurPlace slur = slur_place(&book, group->sounds, group->sound_count, s);
        if (melody->events[event].sound != &group->sounds[s])
            continue;
        while (beat + 1 < survey->beats.count && survey->beats.onsets[beat + 1] <= melody->events[event].onset)
            beat++;
        Cell *cell = cell_at(survey, beat, voice);
        add_onset(survey, melody, event, slur, beat, cell);
        add_recurrence(survey, melody, event, beat, earlier, cell);
        add_sounding(survey, &melody->events[event++], beat, voice);
    }
    meet_others(survey, voice);
}

static void mark_part(const Survey *survey, const Part *part, size_t voice)
{
    size_t beat = 0;
    size_t i = FIRST_FROM(part->directions, part->direction_count, survey->beats.onsets[0]);
    for (; i < part->direction_count && part->directions[i].onset < survey->beats.end; i++) {
        if (part->directions[i].kind != DIRECTION_DYNAMIC && part->directions[i].kind != DIRECTION_WORDS)
            continue;
        while (beat + 1 < survey->beats.count && survey->beats.onsets[beat + 1] <= part->directions[i].onset)
            beat++;
        cell_at(survey, beat, voice)->marked = true;
    }
}

static void mark_voice(const Survey *survey, size_t voice)
{
    const SectionMap *strings = survey->strings;
    const Group *group = &survey->voices->map.groups[voice];
    if (voice >= survey->voices->string_count)
        mark_part(survey, &strings->movement->parts[group->sounds[0].part], voice);
    for (size_t i = 0; i < group->line_count; i++)
        mark_part(survey, &strings->movement->parts[strings->lines[group->lines[i]].part], voice);
}

/* Sums of the cells of a voice around a beat: as one moment, and as one phrase. */
typedef struct Near {
    double sounds, beats;
    unsigned onsets, moves, steps, bound, plucked, tremolo, fresh;
} Near;

typedef struct Wide {
    double lengths;
    unsigned onsets, moves, leaps, shuttles, values, recurs[PERIODS];
    int pitches;
} Wide;

static size_t last_around(const Survey *survey, size_t beat, size_t reach)
{
    return beat + reach < survey->beats.count ? beat + reach : survey->beats.count - 1;
}

static Near look_near(const Survey *survey, size_t beat, size_t voice)
{
    Near out = {0};
    size_t last = last_around(survey, beat, NEAR);
    for (size_t b = beat > NEAR ? beat - NEAR : 0; b <= last; b++) {
        const Cell *cell = cell_at(survey, b, voice);
        out.beats++;
        out.sounds += cell->sounds;
        out.onsets += cell->onsets;
        out.moves += cell->moves;
        out.steps += cell->steps;
        out.bound += cell->bound;
        out.plucked += cell->plucked;
        out.tremolo += cell->tremolo;
        out.fresh += cell->fresh;
    }
    return out;
}

static Wide look_wide(const Survey *survey, size_t beat, size_t voice)
{
    uint64_t pitches[2] = {0, 0};
    Wide out = {0};
    size_t last = last_around(survey, beat, WIDE);
    for (size_t b = beat > WIDE ? beat - WIDE : 0; b <= last; b++) {
        const Cell *cell = cell_at(survey, b, voice);
        out.lengths += cell->lengths;
        out.onsets += cell->onsets;
        out.moves += cell->moves;
        out.leaps += cell->leaps;
        out.shuttles += cell->shuttles;
        out.values |= cell->values;
        for (size_t p = 0; p < PERIODS; p++)
            out.recurs[p] += cell->recurs[p];
        pitches[0] |= cell->pitches[0];
        pitches[1] |= cell->pitches[1];
    }
    out.pitches = __builtin_popcountll(pitches[0]) + __builtin_popcountll(pitches[1]);
    return out;
}

static double share(double part, double whole)
{
    return whole > 0 ? part / whole : 0;
}

static void measures_of_voice(const Survey *survey, size_t beat, size_t voice, float out[RM_COUNT])
{
    memset(out, 0, RM_COUNT * sizeof *out);
    const Near near = look_near(survey, beat, voice);
    if (near.sounds <= 0)
        return;
    const Wide wide = look_wide(survey, beat, voice);
    double short_periods = fmax(wide.recurs[0], fmax(wide.recurs[1], wide.recurs[2]));
    out[RM_SOUNDS] = (float)fmin(1, near.sounds / near.beats);
    out[RM_BUSY] = (float)log2(1 + near.onsets / near.beats);
    out[RM_MOVES] = (float)share(near.moves, near.onsets);
    out[RM_STEPS] = (float)share(near.steps, near.moves);
    out[RM_PITCHES] = (float)log2(1 + wide.pitches);
    out[RM_RECURS] = (float)share(short_periods, wide.onsets);
    out[RM_RECURS_BAR] = (float)share(wide.recurs[3], wide.onsets);
    out[RM_SHUTTLES] = (float)share(wide.shuttles, wide.onsets);
    out[RM_BROKEN] = (float)share(wide.leaps, wide.moves) * fmaxf(out[RM_RECURS], fmaxf(out[RM_RECURS_BAR], out[RM_SHUTTLES]));
    out[RM_VALUES] = (float)log2(1 + __builtin_popcount(wide.values));
    out[RM_LONG] = wide.onsets > 0 ? (float)log2(fmax(0.05, wide.lengths / wide.onsets)) : 0;
    out[RM_HELD] = fmaxf(0, out[RM_LONG] - 1);
    out[RM_BOUND] = (float)share(near.bound, near.onsets);
    out[RM_PLUCKED] = (float)share(near.plucked, near.onsets);
    out[RM_TREMOLO] = (float)share(near.tremolo, near.onsets);
    out[RM_ENTERS] = (float)share(near.fresh, near.beats);
}

static int top_around(const Survey *survey, size_t beat, size_t voice)
{
    int top = -1;
    for (size_t b = beat > 0 ? beat - 1 : 0; b <= beat + 1 && b < survey->beats.count; b++)
        if (cell_at(survey, b, voice)->top > top)
            top = cell_at(survey, b, voice)->top;
    return top;
}

/* Height, loudness and marks beside the other voices of the beat. */
static void measures_beside_others(const Survey *survey, size_t beat, size_t voice, const int tops[VOICES_MOST], float all[VOICES_MOST][RM_COUNT])
{
    double above = 0, others = 0, loud = 0, known = 0, unmarked = 0;
    int highest = -1;
    float *out = all[voice];
    size_t at = beat * survey->voices->map.group_count;
    uint64_t same = survey->unison[at + voice];
    for (size_t v = 0; v < survey->voices->map.group_count; v++) {
        if (v == voice || all[v][RM_SOUNDS] <= 0)
            continue;
        others++;
        unmarked += !cell_at(survey, beat, v)->marked;
        if (cell_at(survey, beat, v)->dynamic) {
            loud += cell_at(survey, beat, v)->dynamic;
            known++;
        }
        if (all[v][RM_MOVES] < 0.3F || (same >> v & 1))
            continue;
        above += tops[v] > tops[voice];
        if (tops[v] > highest)
            highest = tops[v];
    }
    uint64_t company = survey->parallel[at + voice] & ~same;
    int own = cell_at(survey, beat, voice)->dynamic;
    out[RM_TOP] = (float)(1 / (1 + above));
    out[RM_ABOVE] = (float)(highest < 0 ? 0 : fmax(-2, fmin(2, (tops[voice] - highest) / 12.0)));
    out[RM_COMPANY] = (float)share(__builtin_popcountll(company), others);
    out[RM_LOUD] = (float)(own && known > 0 ? fmax(-2, fmin(2, own - loud / known)) : 0);
    out[RM_MARKED] = (float)(cell_at(survey, beat, voice)->marked ? share(unmarked, others) : 0);
}

static void mark_instrument(const Voices *voices, const SectionMap *strings, size_t voice, float out[RM_COUNT])
{
    const Group *group = &voices->map.groups[voice];
    spz_section section = group->about.section;
    if (voice >= voices->string_count)
        out[RM_BRASS] = section_map_family(strings, group->sounds[0].part) == SPZ_FAMILY_BRASS;
    out[RM_VIOLIN] = section == SPZ_VN1 || section == SPZ_VIOLINS;
    out[RM_SECOND] = section == SPZ_VN2 || section == SPZ_VN3;
    out[RM_MIDDLE] = section == SPZ_VA || section == SPZ_VC;
    out[RM_BASS] = section == SPZ_DB;
}

void role_measures_at(const RoleSurvey *survey, size_t beat, float out[VOICES_MOST][RM_COUNT])
{
    int tops[VOICES_MOST];
    size_t count = survey->voices->map.group_count;
    for (size_t v = 0; v < count; v++) {
        measures_of_voice(survey, beat, v, out[v]);
        tops[v] = top_around(survey, beat, v);
    }
    for (size_t v = 0; v < count; v++) {
        if (out[v][RM_SOUNDS] <= 0)
            continue;
        measures_beside_others(survey, beat, v, tops, out);
        mark_instrument(survey->voices, survey->strings, v, out[v]);
    }
}

bool role_sounds_in(const RoleSurvey *survey, size_t beat, size_t voice)
{
    return cell_at(survey, beat, voice)->top >= 0;
}

spz_status role_survey_make(const Voices *voices, const SectionMap *strings, size_t first, size_t last, Arena *arena, RoleSurvey *out)
{
    *out = (RoleSurvey){.voices = voices, .strings = strings};
    if (!make_beats(strings->movement, first, last, arena, &out->beats))
        return SPZ_NO_MEMORY;
    size_t cells = out->beats.count * voices->map.group_count;
    out->cells = arena_take(arena, cells, sizeof *out->cells);
    out->unison = arena_take(arena, cells, sizeof *out->unison);
    out->parallel = arena_take(arena, cells, sizeof *out->parallel);
    if (!out->cells || !out->unison || !out->parallel)
        return SPZ_NO_MEMORY;
    for (size_t i = 0; i < cells; i++)
        out->cells[i].top = -1;
    for (size_t v = 0; v < voices->map.group_count && out->beats.count; v++) {
        survey_voice(out, v);
        mark_voice(out, v);
    }
    return SPZ_OK;
}
