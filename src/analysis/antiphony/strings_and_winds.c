#include "analysis/antiphony/strings_and_winds.h"
#include "analysis/antiphony/antiphony.h"
#include <string.h>

static const double least_strength = 0.5; /* marginal ones are of no use to anybody */

/* Upper line of what is given in order of time: a note below one that still sounds is not on top. */
typedef struct Skyline {
    GroupSound *sounds;
    size_t count;
    Ticks top_end;
    int top;
} Skyline;

static void rise(Skyline *line, const GroupSound *sound)
{
    if (sound->duration <= 0 || sound->note->midi < 0)
        return;
    if (sound->onset < line->top_end && sound->note->midi < line->top)
        return;
    line->sounds[line->count++] = *sound;
    line->top = sound->note->midi;
    line->top_end = sound->onset + sound->duration;
}

static bool earlier(const GroupSound *a, const GroupSound *b)
{
    return a->onset != b->onset ? a->onset < b->onset : a->note->midi > b->note->midi;
}

static void strings_line(const SectionMap *map, size_t *next, Skyline *line)
{
    for (;;) {
        size_t best = map->group_count;
        for (size_t g = 0; g < map->group_count; g++)
            if (next[g] < map->groups[g].sound_count &&
                (best == map->group_count || earlier(&map->groups[g].sounds[next[g]], &map->groups[best].sounds[next[best]])))
                best = g;
        if (best == map->group_count)
            return;
        rise(line, &map->groups[best].sounds[next[best]++]);
    }
}

static void winds_line(const SectionMap *map, Skyline *line)
{
    for (size_t i = 0; i < map->other_count; i++) {
        spz_family family = section_map_family(map, map->others[i].part);
        if (family == SPZ_FAMILY_WOODWIND || family == SPZ_FAMILY_BRASS)
            rise(line, &map->others[i]);
    }
}

/* A map of two groups, in `arena`. */
static bool two_voices(const SectionMap *map, Arena *arena, SectionMap *out)
{
    size_t sounds = 0;
    for (size_t g = 0; g < map->group_count; g++)
        sounds += map->groups[g].sound_count;
    size_t *next = arena_take(arena, map->group_count, sizeof *next);
    Skyline strings = {.sounds = arena_take(arena, sounds, sizeof *strings.sounds)};
    Skyline winds = {.sounds = arena_take(arena, map->other_count, sizeof *winds.sounds)};
    Group *groups = arena_take(arena, 2, sizeof *groups);
    if (!next || !strings.sounds || !winds.sounds || !groups)
        return false;
    strings_line(map, next, &strings);
    winds_line(map, &winds);
    groups[0] = (Group){.about = {.section = SPZ_STRINGS, .name = spz_section_name(SPZ_STRINGS)}, .sounds = strings.sounds,
                        .sound_count = strings.count};
    groups[1] = (Group){.about = {.section = SPZ_WINDS, .name = spz_section_name(SPZ_WINDS)}, .sounds = winds.sounds,
                        .sound_count = winds.count};
    *out = (SectionMap){.movement = map->movement, .groups = groups, .group_count = 2};
    return true;
}

spz_status detect_winds(Findings *findings, const spz_settings *settings)
{
    (void)settings;
    if (findings->map->group_count == 0 || findings->map->other_count == 0)
        return SPZ_OK;
    Arena arena;
    SectionMap voices;
    arena_init(&arena);
    spz_status status = two_voices(findings->map, &arena, &voices) ? SPZ_OK : SPZ_NO_MEMORY;
    if (status == SPZ_OK) {
        AntiphonySearch search;
        status = antiphony_search_hopeful(&voices, NULL, &search);
        for (size_t i = 0; status == SPZ_OK && i < search.chains.count; i++)
            if (search.chains.at[i].strength >= least_strength)
                status = antiphony_report(findings, &search, &search.chains.at[i]);
        antiphony_search_release(&search);
    }
    arena_release(&arena);
    return status;
}
