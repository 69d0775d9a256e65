#include "analysis/tune.h"

/* Common practice of listening, graded by ear on scores; the order of the values matters more than their size. */
static const struct {
    double rest, held, long_note, twice, repeated, moving;
} quiet = {
    .rest = 1.0,
    .held = 0.9,      /* a held note leaves the foreground after its onset */
    .long_note = 0.7, /* a new note three times as long as the window: a harmony, not a gesture */
    .twice = 0.3,     /* twice as long: half a harmony */
    .repeated = 0.5, /* repeated pitch or tremolo: accompaniment, but heard */
    .moving = 0.05,
};

static bool on_beat(const Movement *movement, const Tone *tone)
{
    const Bar *bar = &movement->bars[tone->bar];
    Ticks beat = bar->beat > 0 ? bar->beat : movement->per_crotchet;
    return (tone->onset - bar->onset) % beat == 0;
}

static Tone tone_from(const Movement *movement, const GroupSound *sound)
{
    Tone tone = {.onset = sound->onset, .end = sound->onset + sound->duration, .next = movement->length, .sound = sound,
                 .bar = sound->note->bar, .midi = sound->note->midi, .dynamic = sound->note->dynamic};
    if (sound->note->flags & NOTE_TREMOLO)
        tone.flags |= TONE_TREMOLO;
    if (sound->note->flags & NOTE_PIZZICATO)
        tone.flags |= TONE_PIZZICATO;
    if (on_beat(movement, &tone))
        tone.flags |= TONE_ON_BEAT;
    return tone;
}

static void link_to_previous(Tone *tone, Tone *before)
{
    Ticks length = before->end - before->onset;
    before->next = tone->onset;
    if (before->end > tone->onset)
        before->end = tone->onset;
    bool rest = before->end < tone->onset;
    if (rest)
        tone->flags |= TONE_AFTER_REST;
    else if (before->midi == tone->midi)
        tone->flags |= TONE_REPEATED;
    if (length >= 2 * (tone->end - tone->onset))
        tone->flags |= TONE_AFTER_LONG;
}

static bool fill(Tune *tune, const SectionMap *map, Arena *arena)
{
    const Group *group = tune->group;
    tune->tones = arena_take(arena, group->sound_count, sizeof *tune->tones);
    if (!tune->tones)
        return false;
    for (size_t i = 0; i < group->sound_count; i++) {
        const GroupSound *sound = &group->sounds[i];
        if (sound->duration <= 0 || sound->note->midi < 0)
            continue;
        Tone *before = tune->count ? &tune->tones[tune->count - 1] : NULL;
        if (before && before->onset == sound->onset)
            continue; /* sorted from the top: the highest came first */
        Tone tone = tone_from(map->movement, sound);
        if (before)
            link_to_previous(&tone, before);
        else
            tone.flags |= TONE_AFTER_REST;
        tune->tones[tune->count++] = tone;
    }
    return true;
}

/* Basses that double the cellos speak through them: their tones begin nothing of their own. */
static void mark_doubling(Tune *basses, const Tune *cellos)
{
    size_t c = 0;
    for (size_t i = 0; i < basses->count; i++) {
        Tone *tone = &basses->tones[i];
        while (c < cellos->count && cellos->tones[c].onset < tone->onset)
            c++;
        if (c < cellos->count && cellos->tones[c].onset == tone->onset && (cellos->tones[c].midi - tone->midi) % 12 == 0)
            tone->flags |= TONE_DOUBLES;
    }
}

static void mark_basses(const SectionMap *map, Tune *tunes)
{
    for (size_t b = 0; b < map->group_count; b++)
        for (size_t c = 0; c < map->group_count; c++)
            if (map->groups[b].about.section == SPZ_DB && map->groups[c].about.section == SPZ_VC &&
                map->groups[b].about.orchestra == map->groups[c].about.orchestra)
                mark_doubling(&tunes[b], &tunes[c]);
}

static int next_step(const Tune *tune, size_t i)
{
    return i + 1 < tune->count ? tone_direction(&tune->tones[i], &tune->tones[i + 1]) : 0;
}

/* The upper of two that move in parallel speaks for both, unless the lower enters where the upper goes on; a soloist who plays along
 * with a section does not speak for it. */
static bool leads(const Tune *a, size_t i, const Tune *b, size_t j)
{
    const Tone *x = &a->tones[i], *y = &b->tones[j];
    bool soloist = a->group->about.solo && !b->group->about.solo;
    return x->next == y->next && next_step(a, i) == next_step(b, j) && !soloist && !(tone_is_fresh(y) && !tone_is_fresh(x));
}

static void meet(Tune *a, size_t ai, Tune *b, size_t bi)
{
    size_t i = 0, j = 0;
    while (i < a->count && j < b->count) {
        Tone *x = &a->tones[i], *y = &b->tones[j];
        if (x->onset == y->onset && (x->next == y->next || x->end == y->end)) {
            x->company |= (uint64_t)1 << bi;
            y->company |= (uint64_t)1 << ai;
            if (leads(a, i, b, j))
                y->leaders |= (uint64_t)1 << ai;
        }
        Ticks when = x->onset < y->onset ? x->onset : y->onset;
        i += x->onset == when;
        j += y->onset == when;
    }
}

/* Companies are known for the first 64 groups: more have never been seen in one score. */
static void mark_company(const SectionMap *map, Tune *tunes)
{
    for (size_t i = 0; i < map->group_count && i < 64; i++)
        for (size_t j = i + 1; j < map->group_count && j < 64; j++)
            meet(&tunes[i], i, &tunes[j], j);
}

/* Soloists with less than a tenth of the notes of the busiest group step out of their section only for a moment. */
static void mark_passing_solos(const SectionMap *map, Tune *tunes)
{
    size_t most = 0;
    for (size_t i = 0; i < map->group_count; i++)
        if (tunes[i].count > most)
            most = tunes[i].count;
    for (size_t i = 0; i < map->group_count; i++)
        tunes[i].passing_solo = tunes[i].group->about.solo && tunes[i].count * 10 < most;
}

static void mark_doubled(const SectionMap *map, Tune *tune)
{
    size_t other = 0;
    for (size_t i = 0; i < tune->count; i++) {
        Tone *tone = &tune->tones[i];
        while (other < map->other_count && map->others[other].onset < tone->onset)
            other++;
        for (size_t o = other; o < map->other_count && map->others[o].onset == tone->onset; o++)
            if (map->others[o].note->midi >= 0 && (map->others[o].note->midi - tone->midi) % 12 == 0)
                tone->flags |= TONE_DOUBLED;
    }
}

Tune *tunes_of(const SectionMap *map, Arena *arena)
{
    Tune *tunes = arena_take(arena, map->group_count, sizeof *tunes);
    for (size_t i = 0; tunes && i < map->group_count; i++) {
        tunes[i].group = &map->groups[i];
        tunes[i].group_index = i;
        if (!fill(&tunes[i], map, arena))
            return NULL;
    }
    if (tunes) {
        mark_basses(map, tunes);
        mark_company(map, tunes);
        mark_passing_solos(map, tunes);
        for (size_t i = 0; i < map->group_count; i++)
            mark_doubled(map, &tunes[i]);
    }
    return tunes;
}

size_t tune_at(const Tune *tune, Ticks when)
{
    size_t low = 0, high = tune->count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        if (tune->tones[middle].onset < when)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

static double quiet_of_tone(const Tone *tone, Ticks window)
{
    if (tone->next - tone->onset >= 3 * window)
        return quiet.long_note;
    bool trembles = (tone->flags & TONE_TREMOLO) && tone->next - tone->onset > window;
    if (trembles || (tone->flags & TONE_REPEATED))
        return quiet.repeated;
    if (tone->next - tone->onset >= 2 * window)
        return quiet.twice;
    return quiet.moving;
}

double tune_quietness(const Tune *tune, Ticks from, Ticks to)
{
    size_t i = tune_at(tune, from);
    if (i == tune->count || tune->tones[i].onset >= to)
        return i > 0 && tune->tones[i - 1].end > from ? quiet.held : quiet.rest;
    double least = 1.0;
    for (; i < tune->count && tune->tones[i].onset < to; i++) {
        double q = quiet_of_tone(&tune->tones[i], to - from);
        if (q < least)
            least = q;
    }
    return least;
}
