#include "analysis/melody/voices.h"
#include "spezzato/sections.h"

static bool blows(const SectionMap *map, size_t part)
{
    spz_family family = section_map_family(map, part);
    return family == SPZ_FAMILY_WOODWIND || family == SPZ_FAMILY_BRASS;
}

/* The sounds of a list that begin from `from` on and before `to`. */
static GroupSound *cut(GroupSound *sounds, size_t *count, Ticks from, Ticks to)
{
    size_t first = FIRST_FROM(sounds, *count, from), last = FIRST_FROM(sounds, *count, to);
    *count = last - first;
    return sounds ? sounds + first : NULL;
}

/* Room for the sounds of each wind part, counted first; false when out of memory. */
static bool make_winds(const SectionMap *strings, const GroupSound *others, size_t other_count, Arena *arena, Group **wind_of, SectionMap *out)
{
    size_t parts = strings->movement->part_count;
    size_t *count = arena_take(arena, parts, sizeof *count);
    for (size_t i = 0; count && i < other_count; i++)
        count[others[i].part]++;
    for (size_t p = 0; count && p < parts && out->group_count < VOICES_MOST; p++) {
        if (!count[p] || !blows(strings, p))
            continue;
        Group *wind = wind_of[p] = &out->groups[out->group_count++];
        *wind = (Group){.about = {.section = SPZ_WINDS, .name = strings->movement->parts[p].name},
                        .sounds = arena_take(arena, count[p], sizeof *wind->sounds)};
        if (!wind->sounds)
            return false;
    }
    return count != NULL;
}

spz_status voices_of(const SectionMap *strings, Ticks from, Ticks to, Arena *arena, Voices *out)
{
    size_t parts = strings->movement->part_count, other_count = strings->other_count;
    const GroupSound *others = cut(strings->others, &other_count, from, to);
    Group **wind_of = arena_take(arena, parts, sizeof(Group *));
    *out = (Voices){.map = {.movement = strings->movement, .groups = arena_take(arena, strings->group_count + parts, sizeof(Group))}};
    if (!wind_of || !out->map.groups)
        return SPZ_NO_MEMORY;
    for (size_t g = 0; g < strings->group_count && g < VOICES_MOST; g++) {
        Group *group = &out->map.groups[out->map.group_count++];
        *group = strings->groups[g];
        group->sounds = cut(group->sounds, &group->sound_count, from, to);
    }
    out->string_count = out->map.group_count;
    if (!make_winds(strings, others, other_count, arena, wind_of, &out->map))
        return SPZ_NO_MEMORY;
    for (size_t i = 0; i < other_count; i++) {
        Group *wind = wind_of[others[i].part];
        if (wind)
            wind->sounds[wind->sound_count++] = others[i];
    }
    out->melodies = melodies_of(&out->map, arena);
    return out->melodies ? SPZ_OK : SPZ_NO_MEMORY;
}
