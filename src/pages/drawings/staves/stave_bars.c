#include "pages/drawings/staves/stave_bars.h"
#include "support/memory.h"
#include <stdlib.h>
#include <string.h>

static const int bottoms[] = {30, 24, 22, 18}; /* E4, F3, D3, G2 */

/* In the order of the values, the first that fits: plain, dotted, twice dotted, of a triplet; else the longest that has room. */
static Value value_of(Ticks duration, Ticks crotchet)
{
    for (int type = 0; type < 7; type++) {
        Ticks base = duration << type, whole = 4 * crotchet;
        if (base == whole)
            return (Value){type, 0, false};
        if (2 * base == 3 * whole)
            return (Value){type, 1, false};
        if (4 * base == 7 * whole)
            return (Value){type, 2, false};
        if (3 * base == 2 * whole)
            return (Value){type, 0, true};
    }
    int type = 0;
    while (type < 6 && (duration << type) < 4 * crotchet)
        type++;
    return (Value){type, 0, false};
}

bool stave_has_entry(const Stave *stave, const spz_entry *entry)
{
    return stave->group ? stave->index < 63 && (entry->players >> stave->index & 1) : (entry->players & SPZ_WIND_PLAYERS) != 0;
}

static int in_entry(const Stave *stave, const spz_passage *passage, Ticks when)
{
    if (!spz_kind_is_antiphony(passage->kind))
        return when >= passage->onset && when < passage->end ? 1 : 0;
    for (size_t i = 0; i < passage->entry_count; i++) {
        const spz_entry *entry = &passage->entries[i];
        if (stave_has_entry(stave, entry) && when >= entry->onset && when < entry->end)
            return view_answers(passage, entry) ? 2 : 1;
    }
    return 0;
}

static int written_place(const Note *note)
{
    spz_pitch pitch = pitch_written_of(note);
    return pitch.octave * 7 + pitch.step;
}

static void add_to_chord(StaveChord *chord, const Note *note)
{
    int place = written_place(note), at = chord->count;
    for (int i = 0; i < chord->count; i++)
        if (chord->places[i] == place)
            return;
    if (chord->count == CHORD_MOST)
        return;
    for (; at > 0 && chord->places[at - 1] < place; at--) {
        chord->places[at] = chord->places[at - 1];
        chord->notes[at] = chord->notes[at - 1];
    }
    chord->places[at] = place;
    chord->notes[at] = note;
    chord->count++;
}

/* Rests from `from` to `to`, the longest first. */
static bool add_rests(Stave *stave, const Movement *movement, size_t bar, Ticks from, Ticks to)
{
    Ticks crotchet = movement->per_crotchet;
    if (from == 0 && to == movement->bars[bar].length) {
        StaveChord rest = {.bar = bar, .duration = to, .value = {0, 0, false}};
        return array_push(&stave->chords, rest);
    }
    for (int type = 0; type < 6 && from < to; type++) {
        Ticks length = 4 * crotchet >> type;
        while (length > 0 && length <= to - from) {
            StaveChord rest = {.bar = bar, .onset = from, .duration = length, .value = {type, 0, false}};
            if (!array_push(&stave->chords, rest))
                return false;
            from += length;
        }
    }
    if (from < to) { /* what is left of a triplet */
        StaveChord rest = {.bar = bar, .onset = from, .duration = to - from, .value = value_of(to - from, crotchet)};
        return array_push(&stave->chords, rest);
    }
    return true;
}

/* Sounds of the bar, those that go on from before it too. */
static bool fill_bar(const ScoreView *view, const spz_passage *passage, Stave *stave, size_t bar)
{
    const Bar *at = &view->movement->bars[bar];
    Ticks from = at->onset, to = at->onset + at->length, filled = 0;
    size_t i = 0;
    while (i < stave->sound_count && stave->sounds[i].onset + stave->sounds[i].duration <= from)
        i++;
    while (i < stave->sound_count && stave->sounds[i].onset < to) {
        const GroupSound *sound = &stave->sounds[i];
        Ticks onset = sound->onset < from ? from : sound->onset, end = sound->onset + sound->duration;
        StaveChord chord = {.bar = bar, .onset = onset - from};
        if (sound->duration <= 0 || end <= from || sound->note->midi < 0) {
            i++;
            continue;
        }
        Ticks shortest = end, next = to;
        for (; i < stave->sound_count && (stave->sounds[i].onset < from ? from : stave->sounds[i].onset) == onset; i++) {
            const GroupSound *other = &stave->sounds[i];
            Ticks other_end = other->onset + other->duration;
            if (other->duration <= 0 || other_end <= from || other->note->midi < 0)
                continue;
            add_to_chord(&chord, other->note);
            chord.went_on = chord.went_on || other->onset < from;
            shortest = other_end < shortest ? other_end : shortest;
        }
        for (size_t k = i; k < stave->sound_count; k++)
            if (stave->sounds[k].duration > 0) {
                next = stave->sounds[k].onset < next ? stave->sounds[k].onset : next;
                break;
            }
        chord.goes_on = shortest > to;
        Ticks until = shortest < to ? shortest : to;
        until = until > next ? next : until;
        chord.duration = until - onset;
        chord.value = value_of(chord.duration, view->movement->per_crotchet);
        chord.entry = in_entry(stave, passage, onset);
        if (chord.duration <= 0)
            continue;
        if (chord.onset > filled && !add_rests(stave, view->movement, bar, filled, chord.onset))
            return false;
        filled = until - from;
        if (!array_push(&stave->chords, chord))
            return false;
    }
    return filled >= at->length || add_rests(stave, view->movement, bar, filled, at->length);
}

/* Quavers and shorter within one beat share a beam, where no rest comes between. */
static void beam(const Movement *movement, ChordList *chords)
{
    size_t number = 0;
    for (size_t i = 0; i < chords->count;) {
        const StaveChord *first = &chords->at[i];
        Ticks beat = movement->bars[first->bar].beat > 0 ? movement->bars[first->bar].beat : movement->per_crotchet;
        size_t end = i;
        while (end < chords->count && chords->at[end].count > 0 && chords->at[end].value.type >= 3 && chords->at[end].bar == first->bar &&
               chords->at[end].onset / beat == first->onset / beat)
            end++;
        if (end > i + 1) {
            number++;
            for (size_t k = i; k < end; k++)
                chords->at[k].beam = number;
        }
        i = end > i ? end : i + 1;
    }
}

bool stave_fill(const ScoreView *view, const spz_passage *passage, Stave *stave, size_t first, size_t end)
{
    stave->chords.count = 0;
    for (size_t bar = first; bar < end; bar++)
        if (!fill_bar(view, passage, stave, bar))
            return false;
    beam(view->movement, &stave->chords);
    return true;
}

static void choose_clef(Stave *stave, const ScoreView *view, const spz_passage *passage)
{
    spz_section section = stave->group ? stave->group->about.section : SPZ_WINDS;
    const Movement *movement = view->movement;
    long sum = 0, count = 0;
    Ticks from = movement->bars[passage->first].onset, to = movement->bars[passage->last].onset + movement->bars[passage->last].length;
    for (size_t i = stave->group ? group_sound_at(stave->group, from) : 0; i < stave->sound_count && stave->sounds[i].onset < to; i++)
        if (stave->sounds[i].onset >= from && stave->sounds[i].note->midi >= 0) {
            sum += written_place(stave->sounds[i].note);
            count++;
        }
    long mean = count ? sum / count : 30;
    stave->clef = section_is_violin(section) || (section == SPZ_WINDS && mean >= PLACE_MIDDLE_C) || (section != SPZ_VA && mean > 32) || mean > 36 ? 0
                  : section == SPZ_VA                                                                                                            ? 1
                  : section == SPZ_VC && mean > 27                                                                                               ? 2
                                                                                                                                                 : 3;
    stave->bottom = bottoms[stave->clef];
}

/* The wind part that has most notes in the entries of winds. */
static bool find_winds(const ScoreView *view, const spz_passage *passage, Stave *stave)
{
    size_t best = SIZE_MAX, most = 0;
    const SectionMap *map = view->map;
    size_t *counts = memory_zeroed(view->movement->part_count + 1, sizeof *counts); /* by part */
    for (size_t e = 0; counts && e < passage->entry_count; e++)
        if (passage->entries[e].players & SPZ_WIND_PLAYERS)
            for (size_t i = FIRST_FROM(map->others, map->other_count, passage->entries[e].onset); i < map->other_count && map->others[i].onset < passage->entries[e].end; i++)
                counts[map->others[i].part]++;
    for (size_t part = 0; counts && part < view->movement->part_count; part++)
        if (counts[part] > most) {
            most = counts[part];
            best = part;
        }
    memory_free(counts);
    stave->winds = best == SIZE_MAX ? NULL : memory_resize(NULL, map->other_count, sizeof *stave->winds);
    for (size_t i = 0; stave->winds && i < map->other_count; i++)
        if (map->others[i].part == best)
            stave->winds[stave->sound_count++] = map->others[i];
    stave->sounds = stave->winds;
    stave->index = SIZE_MAX;
    return stave->winds != NULL;
}

enum { DIVIDED_MOST = 3 };

/* The topmost of the side's players but for `taken`; a soloist who goes with a section only where nobody else is left. */
static spz_players named_one(const SectionMap *map, const spz_side *side, spz_players taken)
{
    spz_players left = side->players & ~taken, tutti = left;
    for (size_t i = 0; side->group >= 63 && i < map->group_count && i < 63; i++)
        if (map->groups[i].about.solo)
            tutti &= ~((spz_players)1 << i);
    left = side->group < 63 && left >> side->group & 1 ? (spz_players)1 << side->group : tutti ? tutti : left;
    return left & (~left + 1);
}

/* Of each side one, where not all have room: as the passage is told. */
static spz_players two_sides(const SectionMap *map, const spz_passage *passage)
{
    bool told = spz_kind_is_antiphony(passage->kind) && passage->kind != SPZ_SPLIT_LINE;
    const spz_side *sides = told && passage->told.gesture.sides[0].players ? passage->told.gesture.sides : passage->sides;
    spz_players calls = named_one(map, &sides[0], 0);
    return calls | named_one(map, &sides[1], calls);
}

static size_t bits(spz_players players)
{
    size_t count = 0;
    for (; players; players &= players - 1)
        count++;
    return count;
}

size_t staves_of(const ScoreView *view, const spz_passage *passage, Stave *staves, size_t most)
{
    size_t count = 0;
    spz_players all = view_players(passage);
    spz_players sides = two_sides(view->map, passage);
    if (bits(sides) > 1 && bits(all) > most)
        all = sides;
    else if (bits(sides) == 1 && most < bits(all)) /* one body that is divided: its parts */
        most = bits(all) < DIVIDED_MOST ? bits(all) : DIVIDED_MOST;
    if (all & SPZ_WIND_PLAYERS) {
        staves[count] = (Stave){.group = NULL};
        count += find_winds(view, passage, &staves[count]);
    }
    for (size_t i = 0; i < view->map->group_count && i < 63 && count < most; i++)
        if (all >> i & 1) {
            const Group *group = &view->map->groups[i];
            staves[count++] = (Stave){.group = group, .index = i, .sounds = group->sounds, .sound_count = group->sound_count};
        }
    for (size_t i = 0; i < count; i++)
        choose_clef(&staves[i], view, passage);
    return count;
}

void staves_free(Stave *staves, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        array_free(&staves[i].chords);
        memory_free(staves[i].winds);
    }
}
